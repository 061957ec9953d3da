package swapworth.swap;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Mileage;
import swapworth.market.FairValue;
import swapworth.market.Figures;
import swapworth.market.Range;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** The value of a finished swap as tables. */
final class SwapTables {
    private static final int MOST_PAIRS = 12;
    /** An approach that weighs less moves nothing that a reader would see. */
    private static final double LEAST_WEIGHT = 0.005;

    private final SwapValue value;
    private final Situation s;
    private final Approaches worked;
    private final Reconciled reconciled;

    SwapTables(SwapValue value) {
        this.value = value;
        this.s = value.situation();
        this.worked = value.worked();
        this.reconciled = value.reconciled();
    }

    List<Table> all() {
        List<Table> tables = new ArrayList<>(List.of(result(), approaches(), brackets()));
        tables.addAll(grids());
        tables.add(pairs());
        if (!value.offers().isEmpty()) {
            tables.add(offers());
        }
        seen().ifPresent(tables::add);
        tables.add(narrowing());
        value.selling().ifPresent(tables::add);
        tables.add(sayings());
        tables.add(new Disclosure(s).table());
        return tables;
    }

    List<Table> grids() {
        List<Table> grids = new ArrayList<>();
        grid("From the stock car to the finished car", fromStock()).ifPresent(grids::add);
        grid("From the factory equivalent to the finished car", fromFactory()).ifPresent(grids::add);
        return grids;
    }

    private String day() {
        return s.on.map(d -> " on " + d).orElse("");
    }

    Table result() {
        Table.Builder table = Table.titled("The finished swap '" + s.car.name() + "': the price of this one car" + day() + ", "
                + s.level.words()).columns(Column.words("figure"), Column.number("median", ""), Column.number("80 % range", ""),
                Column.number("95 % range", ""));
        table.note(basis() + ".");
        table.note(held() + ".");
        if (!value.reason().isEmpty()) {
            table.note("The approaches are weighted by you and not by their covariance: " + value.reason() + ".");
        }
        value.statedAgainst().ifPresent(table::note);
        ofLevel().ifPresent(table::note);
        contradictions().forEach(table::note);
        table.row(line("price of this one car", value.draws()));
        table.row(line("middle price of such swaps" + (hasFaults() ? " with these faults" : ""), value.levelDraws()));
        return table.build();
    }

    /** What an owner who sells does not get at this level. */
    private Optional<String> ofLevel() {
        return switch (s.level) {
            case PRIVATE_ASKING, PRIVATE_SOLD -> Optional.empty();
            case TRADE_ASKING, TRADE_SOLD -> Optional.of("At this level a business sells it: one that buys it from you to sell it again"
                    + " pays less, by its work, its risk and its margin, which nothing here tells. Ask one for its price.");
            case AUCTION -> Optional.of("At this level it is the winning bid: the auction's fee for sellers comes off, and a reserve that"
                    + " is not met costs its fee too.");
        };
    }

    /** What the value stands by: approaches, cars, swaps and offers. */
    String basis() {
        long ofLine = ofLine(s.stock);
        return told() + " of 3 approaches, " + ofLine + (ofLine == 1 ? " car" : " cars") + " of the line '" + s.stock.vehicle() + "', "
                + s.model.cars().size() + " in the listings, " + (worked.used.isEmpty() ? "no swap seen" : swapsSeen(worked.used.size()))
                + ", " + value.offers().size() + (value.offers().size() == 1 ? " offer" : " offers") + " for the car itself";
    }

    private static String swapsSeen(long count) {
        return count + (count == 1 ? " swap seen" : " swaps seen");
    }

    /** By what the price was found, in sentences: a sale of this very car first, then the approaches that told, swaps seen and offers. */
    String howFound() {
        List<OwnOffer> sales = value.offers().stream().filter(o -> o.kind() == OwnOffer.Kind.SOLD).sorted(OwnOffer.ORDER).toList();
        int alike = worked.alike.count();
        int listed = s.model.pricesOfPair(s.finished);
        String sources = String.join("; ", value.weights().entrySet().stream().filter(e -> e.getValue() > 0).map(e -> source(e.getKey())
                + " (weight " + Math.round(100 * e.getValue()) + " %)").toList());
        String first = sales.isEmpty() ? listed + alike > 0 ? "" : "no car like this is in the owner's listings or among the swaps seen. "
                : "this very car was sold, " + String.join(" and ", sales.stream().map(o -> "for " + Cell.format(o.amount(), 0)
                        + o.on().map(d -> " on " + d).orElse("")).toList()) + ", and the range stands by that first. ";
        String seen = listed == 0 ? "" : " Of such cars " + listed + (listed == 1 ? " price is" : " prices are") + " in the listings.";
        if (!worked.used.isEmpty()) {
            long sold = worked.used.stream().filter(swap -> swap.kind() == SeenSwap.Kind.SOLD).count();
            seen += " Beside the listings: " + swapsSeen(worked.used.size()) + " that other people made, " + sold + " of them sold, "
                    + alike + " with this body and this running gear"
                    + (alike == 0 ? "." : ", which count in the result itself.");
        }
        int others = value.offers().size() - sales.size();
        return first + (sales.isEmpty() ? "The price" : "Beside that it") + " is put together from " + sources + "." + seen
                + (others == 0 ? "" : " What happened when this car was on offer, " + others + (others == 1 ? " time" : " times")
                + ", counts too.");
    }

    private String source(Approach.Kind kind) {
        return switch (kind) {
            case BODY_AND_GEAR -> "cars that share its body and cars that share its running gear";
            case COST -> "what the car without its running gear, that gear and the work cost";
            case POSITION -> "where swaps stand between the stock car and the car that the maker sold with such running gear";
        };
    }

    /** The swaps of other people that count in the value. */
    Optional<Table> seen() {
        if (worked.used.isEmpty()) {
            return Optional.empty();
        }
        Table.Builder table = Table.titled("Finished swaps of other people that count in the value").columns(Column.words("line"),
                Column.words("running gear"), Column.words("built by"), Column.number("model year", ""), Column.words("mileage"),
                Column.words("running-gear mileage"), Column.words("price"), Column.words("level of trade"), Column.words("seen on"),
                Column.number("amount", ""));
        for (SeenSwap swap : worked.used) {
            CarFacts f = swap.facts();
            table.row(Cell.words(f.vehicle()), Cell.words(f.runningGear().orElse("unknown")), Cell.words(swap.builtBy().words()),
                    f.modelYear().isPresent() ? Cell.label(f.modelYear().getAsInt()) : Cell.BLANK,
                    Cell.words(f.mileage().map(Mileage::toString).orElse("unknown")),
                    Cell.words(f.gearMileage().map(Mileage::toString).orElse("unknown")), Cell.words(swap.kind().words()),
                    Cell.words(Approaches.level(swap).words()), Cell.words(swap.on().map(Object::toString).orElse("")),
                    Figures.money(swap.price()));
        }
        return Optional.of(table.build());
    }

    /** How much of it is assumption. */
    String held() {
        return "Assumptions hold " + Math.round(100 * value.priorShare()) + " % of what is unsure about the middle price of such swaps"
                + (value.offers().isEmpty() ? "" : " before the offers for this car") + ", the largest part '"
                + value.largestAssumption().assumption() + "' with "
                + Math.round(100 * value.largestAssumption().share()) + " %";
    }

    private long told() {
        return worked.all.stream().filter(Approach.Told.class::isInstance).count();
    }

    private long ofLine(CarFacts facts) {
        return s.model.cars().stream().filter(c -> c.facts().vehicle().equals(facts.vehicle())).count();
    }

    private static List<Cell> line(String name, double[] draws) {
        double[] sorted = Arrays.stream(draws).sorted().toArray();
        return List.of(Cell.words(name), Figures.money(Quantiles.ofSorted(sorted, 0.5)), words(sorted, 0.80), words(sorted, 0.95));
    }

    private static Cell words(double[] sorted, double probability) {
        return Cell.words(Figures.range(SwapValue.range(sorted, probability)));
    }

    private static double middle(double[] logs) {
        return Quantiles.median(SwapValue.money(logs));
    }

    /** What does not fit together; shown, not hidden. */
    List<String> contradictions() {
        List<String> found = new ArrayList<>();
        double middle = Quantiles.median(reconciled.soundLevel());
        double whole = Quantiles.median(value.levelDraws());
        String sound = hasFaults() ? "Before its faults are taken off the result lies " : "The result lies ";
        worked.stockValue.map(SwapTables::middle).filter(v -> middle < v)
                .ifPresent(v -> found.add(sound + "below the stock car ("
                + Figures.rounded(v) + "): by these figures the swap took value away."));
        worked.factoryShared.map(SwapTables::middle).filter(v -> middle > v).ifPresent(v -> found.add(sound + "above the factory"
                + " equivalent (" + Figures.rounded(v) + halfWay() + "): nobody pays more for a substitute than for what it stands for, so"
                + " look why."));
        value.takenApartDraws().map(Quantiles::median).filter(v -> whole < v).ifPresent(v -> found.add("Taken apart it would bring more ("
                + Figures.rounded(v) + ") than whole" + soundParts(s.car) + "."));
        List<Approach.Kind> kinds = List.copyOf(worked.logs.keySet());
        for (int a = 0; a < kinds.size(); a++) {
            for (int b = a + 1; b < kinds.size(); b++) {
                double[] gap = Situation.combined((x, y) -> x - y, worked.logs.get(kinds.get(a)), worked.logs.get(kinds.get(b)));
                double mean = Draws.mean(gap);
                if (mean * mean > 4 * Draws.covariance(gap, gap)) {
                    found.add("'" + kinds.get(a).words() + "' and '" + kinds.get(b).words() + "' differ by "
                            + Cell.signed(Figures.percent(mean), 0).shown() + " %, more than their own errors explain.");
                }
            }
        }
        if (worked.alike.count() > 0) {
            double[] miss = worked.alike.miss(reconciled.together());
            if (miss[0] * miss[0] > 4 * miss[1]) {
                found.add("The " + swapsSeen(worked.alike.count()) + " of this body and this running gear tell of a price that is "
                        + Cell.signed(Figures.percent(miss[0]), 0).shown() + " % from what the approaches say, more than their errors"
                        + " explain.");
            }
        }
        if (s.car.cost().losses().stream().anyMatch(SwapCost.Loss::isStated)
                && value.weights().getOrDefault(Approach.Kind.COST, 0.0) < LEAST_WEIGHT) {
            found.add("The listed losses move nothing: they come off the value by cost, which " + (worked.byCost.isEmpty()
                    ? "cannot tell" : "weighs nothing") + ". What of them this one car alone has lost can be stated as a fault, which"
                    + " comes off whatever the approaches say.");
        }
        if (hasFaults() && reconciled.shareHeld() > 0) {
            found.add("The faults take off nearly all or more than all in " + Cell.format(Math.ceil(100 * reconciled.shareHeld()), 0)
                    + " % of the draws; those are held at one twentieth of a sound car.");
        }
        if (!value.offers().isEmpty() && value.drawsLeft() < 0.02 * s.count()) {
            found.add("The offers lie far from all else that is known: only " + Math.round(value.drawsLeft()) + " of " + s.count()
                    + " draws are left, so the figures are rough.");
        }
        return found;
    }

    private boolean hasFaults() {
        return !s.car.statedFaults().isEmpty();
    }

    /** Parts are priced as sound: which of them a fault of the whole car is in, nobody states. */
    static String soundParts(FinishedCar car) {
        return !car.statedFaults().isEmpty() ? "; its parts are taken to have none of its faults" : "";
    }

    /** At what distance the factory equivalent is held against the finished car where its gear has run another one. */
    private String halfWay() {
        return worked.factoryAtGear.isEmpty() ? "" : " at a price between those at chassis and at running-gear mileage, as the finished car"
                + " is (swap_mileage_share)";
    }

    Table approaches() {
        Table.Builder table = Table.titled("The approaches, one quantity: the price of this one car" + day()).columns(
                Column.words("approach"), Column.number("median", ""), Column.number("80 % range", ""), Column.number("95 % range", ""),
                Column.number("weight", ""), Column.number("middle price held by assumptions", ""), Column.sentences("largest assumption"),
                Column.sentences("remarks"));
        table.note("They share listings and assumptions: that they agree is no evidence as far as they share them. Weights come from the"
                + " covariance of their draws, and from how far they may differ beyond it: about "
                + Cell.format(Figures.percent(reconciled.combination().spread()), 0)
                + " %, by an assumption (swap_approach_spread in the table of assumptions) and what they show.");
        if (hasFaults()) {
            table.note("Each approach says what a car without the stated faults is worth; they are taken off the rows below them.");
        }
        for (Approach approach : worked.all) {
            List<Cell> cells = new ArrayList<>();
            if (approach instanceof Approach.Told told) {
                cells.addAll(line(told.kind().words(), told.price()));
                cells.add(Figures.share(value.weights().get(told.kind())));
                cells.add(Figures.share(told.priorShare()));
                cells.add(mostAssumed(told.largest()));
                cells.add(Cell.words(String.join("; ", told.remarks())));
            } else if (approach instanceof Approach.Untold no) {
                cells.addAll(List.of(Cell.words(no.kind().words()), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK,
                        Cell.words("cannot tell: " + no.reason() + "; needed: " + no.needed())));
            }
            table.row(cells);
        }
        value.togetherDraws().ifPresent(draws -> {
            List<Cell> before = new ArrayList<>(line("the approaches together", draws));
            before.addAll(List.of(Figures.share(1), Cell.BLANK, Cell.BLANK, Cell.words(swapsSeen(worked.alike.count())
                    + " of this body and this running gear then move it to the row below; the more of them, the further. By what they"
                    + " show single ones scatter " + Cell.format(worked.alike.scatter(), 2) + " times as far as assumed")));
            table.row(before);
        });
        List<Cell> whole = new ArrayList<>(line("reconciled", value.draws()));
        whole.addAll(List.of(worked.alike.count() > 0 ? Cell.BLANK : Figures.share(1), Figures.share(value.priorShare()),
                mostAssumed(value.largestAssumption()), Cell.BLANK));
        table.row(whole);
        return table.build();
    }

    /** On a page it stands below its row, away from its heading. */
    private static Cell mostAssumed(FairValue.HeldBy held) {
        return Cell.words("most assumed: " + held.assumption());
    }

    Table brackets() {
        Table.Builder table = Table.titled("Beside it: what stands around the value" + day()).columns(Column.words("figure"),
                Column.number("median", ""), Column.number("80 % range", ""), Column.number("95 % range", ""),
                        Column.sentences("what it is"));
        table.note("Middle prices of such cars, not of one car. None of them cuts the result off.");
        String chassis = s.finished.mileage().map(Mileage::toString).orElse("unknown distance");
        String gear = s.finished.gearMileage().map(Mileage::toString).orElse(chassis);
        bracket(table, "stock car", value.stockDraws(), "this chassis with " + s.stockGear + ", " + chassis);
        value.addedDraws().ifPresent(draws -> {
            double[] added = Arrays.stream(draws).sorted().toArray();
            table.note("What the change adds to the stock car, draw by draw: " + Figures.rounded(Quantiles.ofSorted(added, 0.5))
                    + ", 80 % range " + Figures.range(SwapValue.range(added, 0.80)) + ", 95 % range "
                    + Figures.range(SwapValue.range(added, 0.95)) + ". What gear and work cost beyond that, less what the removed parts"
                    + " bring, does not come back at a sale.");
        });
        bracket(table, "factory equivalent at chassis mileage", value.factoryAtChassisDraws(), "as the maker sold it, " + chassis);
        bracket(table, "factory equivalent at running-gear mileage", value.factoryAtGearDraws(), "as the maker sold it, " + gear);
        bracket(table, "taken apart", value.takenApartDraws(), "the recipient without an engine, sold privately, by the price"
                + " model, and the gear sold, net of fees, postage and haggling (an assumption); about "
                + Cell.format(s.assumption("swap_take_apart_hours").middle(), 0)
                + " hours and " + Cell.format(s.assumption("swap_take_apart_months").middle(), 0)
                + " months (assumptions), not counted in money" + soundParts(s.car));
        worked.position.ifPresent(p -> {
            double[] sorted = Arrays.stream(p).sorted().toArray();
            table.note("Position of swaps between stock car (0) and factory equivalent (1): "
                    + Cell.format(Quantiles.ofSorted(sorted, 0.5), 2) + ", 80 % range " + Cell.format(Quantiles.ofSorted(sorted, 0.1), 2)
                    + " to " + Cell.format(Quantiles.ofSorted(sorted, 0.9), 2) + ", by "
                    + (worked.swapsByPosition == 0 ? "" : swapsSeen(worked.swapsByPosition) + " of other pairs and ") + "the assumption.");
        });
        worked.leftOut.forEach((name, why) -> table.note("Swap '" + name + "' is not used: " + why + "."));
        return table.build();
    }

    private static void bracket(Table.Builder table, String name, Optional<double[]> draws, String what) {
        List<Cell> cells = new ArrayList<>(draws.map(d -> line(name, d)).orElse(List.of(Cell.words(name), Cell.BLANK,
                Cell.words("cannot tell"), Cell.BLANK)));
        cells.add(Cell.words(what));
        table.row(cells);
    }

    /** A stage between two cars: its name and the log price there. */
    private record Stage(String name, double[] log) {
    }

    private List<Stage> fromStock() {
        List<Stage> stages = new ArrayList<>();
        if (worked.stockValue.isEmpty() || worked.shared.isEmpty()) {
            return stages;
        }
        stages.add(new Stage("stock car", worked.stockValue.get()));
        worked.atChassis.ifPresent(v -> stages.add(new Stage("the running gear of the other line", v)));
        worked.shared.ifPresent(v -> stages.add(new Stage("running-gear mileage: its share of the effect of distance", v)));
        return finish(stages);
    }

    private List<Stage> fromFactory() {
        List<Stage> stages = new ArrayList<>();
        if (worked.factoryAtChassis.isEmpty() || worked.shared.isEmpty()) {
            return stages;
        }
        stages.add(new Stage("factory equivalent at chassis mileage", worked.factoryAtChassis.get()));
        worked.factoryShared.ifPresent(v -> stages.add(new Stage("running-gear mileage: its share of the effect of distance", v)));
        worked.shared.ifPresent(v -> stages.add(new Stage(fromFactoryTo(s.factory.orElseThrow()), v)));
        return finish(stages);
    }

    /** What of the factory equivalent the finished car has otherwise: of the same body, how far the two lines stand apart. */
    private String fromFactoryTo(CarFacts factory) {
        List<String> other = new ArrayList<>();
        if (!s.model.body(factory).equals(s.model.body(s.finished))) {
            other.add("the recipient's body in place of the factory's");
        } else if (!factory.vehicle().equals(s.finished.vehicle())) {
            other.add("the line '" + s.finished.vehicle() + "' in place of '" + factory.vehicle() + "'");
        }
        if (!s.model.runningGear(factory).equals(s.model.runningGear(s.finished))) {
            other.add("this running gear in place of its own");
        }
        return other.isEmpty() ? "what else is stated of this car" : String.join(", and ", other);
    }

    private List<Stage> finish(List<Stage> stages) {
        List<String> own = new ArrayList<>();
        worked.builder.ifPresent(f -> own.add("built by " + s.car.builtBy().words()));
        if (worked.swapsByPair > 0) {
            own.add("what swaps seen tell");
        }
        if (!own.isEmpty()) {
            stages.add(new Stage(String.join(", and ", own), worked.logs.get(Approach.Kind.BODY_AND_GEAR)));
        }
        stages.add(new Stage(worked.logs.size() == 1 ? "what one approach alone may miss" : "the other approaches", reconciled.together()));
        if (worked.alike.count() > 0) {
            stages.add(new Stage("swaps of this body and running gear that were seen", reconciled.draws()));
        }
        if (hasFaults()) {
            stages.add(new Stage("known faults, as the owner states", reconciled.withFaults(reconciled.draws())));
        }
        stages.add(new Stage("this one car, and offers for it", Situation.map(value.draws(), StrictMath::log)));
        return stages;
    }

    private static Optional<Table> grid(String title, List<Stage> stages) {
        if (stages.isEmpty()) {
            return Optional.empty();
        }
        Table.Builder table = Table.titled(title).columns(Column.words("step"), Column.number("factor", ""),
                Column.number("80 % range of the factor", ""), Column.number("in money", ""), Column.number("price after it", ""));
        table.note("Each step is the ratio of two medians, so that the factors multiply out to the value.");
        double before = StrictMath.exp(Quantiles.median(stages.get(0).log()));
        table.row(Cell.words(stages.get(0).name()), Cell.BLANK, Cell.BLANK, Cell.BLANK, Figures.money(before));
        for (int k = 1; k < stages.size(); k++) {
            double after = StrictMath.exp(Quantiles.median(stages.get(k).log()));
            double[] ratio = Situation.combined((a, b) -> StrictMath.exp(a - b), stages.get(k).log(), stages.get(k - 1).log());
            table.row(Cell.words(stages.get(k).name()), Cell.number(after / before, 3),
                    Cell.words(Cell.format(Quantiles.of(ratio, 0.1), 3) + " to " + Cell.format(Quantiles.of(ratio, 0.9), 3)),
                    Cell.signed(Math.rint(after - before), 0), Figures.money(after));
            before = after;
        }
        return Optional.of(table.build());
    }

    Table pairs() {
        TreeMap<String, List<CarFacts>> forms = new TreeMap<>();
        TreeSet<String> gears = new TreeSet<>(Set.of(s.model.runningGear(s.finished)));
        TreeSet<String> bodies = new TreeSet<>(Set.of(s.model.body(s.finished)));
        for (Car car : s.model.cars()) {
            String body = s.model.body(car.facts());
            String gear = s.model.runningGear(car.facts());
            bodies.add(body);
            gears.add(gear);
            CarFacts form = s.finished.inFormOf(car.facts());
            forms.computeIfAbsent(body, b -> new ArrayList<>()).add(form);
            forms.computeIfAbsent(body + "\n" + gear, b -> new ArrayList<>()).add(form);
        }
        List<String> shown = gears.stream().limit(MOST_PAIRS).toList();
        List<Column> columns = new ArrayList<>(List.of(Column.words("body")));
        shown.forEach(g -> columns.add(Column.number(g, "")));
        Table.Builder table = Table.titled("Bodies and running gears: the fair value of such a car" + day() + ", and how many cars show it")
                .columns(columns.toArray(Column[]::new));
        table.note("Year, distance, title and condition are those of the finished car, the trim is that of most such cars, the work the"
                + " maker's. A pair that was never seen is"
                + " marked"
                + " unseen: its value follows from cars that have the one or the other, and how far a pair departs from the sum of the two"
                + " is an assumption (spread_pairs). The pair of the finished car is marked by *.");
        for (String body : bodies.stream().limit(MOST_PAIRS).toList()) {
            List<Cell> cells = new ArrayList<>(List.of(Cell.words(body)));
            for (String gear : shown) {
                boolean own = body.equals(s.model.body(s.finished)) && gear.equals(s.model.runningGear(s.finished));
                List<CarFacts> seen = forms.getOrDefault(body + "\n" + gear, List.of());
                List<CarFacts> like = seen.isEmpty() ? forms.getOrDefault(body, List.of()) : seen;
                CarFacts facts = own || like.isEmpty() ? s.finished : pair(Situation.usual(like), gear);
                String value = s.model.value(s.subject(facts)).match(v -> Figures.rounded(v.median()), c -> "cannot tell");
                int cars = seen.size();
                cells.add(Cell.words((own ? "* " : "") + value + (cars == 0 ? ", unseen" : ", " + cars + (cars == 1 ? " car" : " cars"))));
            }
            table.row(cells);
        }
        return table.build();
    }

    /** A car with a running gear that may be another line's. */
    private CarFacts pair(CarFacts line, String gear) {
        return s.model.runningGear(line).equals(gear) ? line : Situation.changed(line.withoutGear(), b -> b.runningGear(gear));
    }

    private Table offers() {
        Table.Builder table = Table.titled("What happened when the car was on offer").columns(Column.words("day"), Column.words("what"),
                Column.number("amount", ""), Column.number("days", ""));
        table.note("A refused offer is a bound below what the car is worth to its owner, and a sight of the buyer's side with an error of"
                + " its"
                + " own. The order of these rows does not matter.");
        value.ownersValueAbove().ifPresent(v -> table.note("To its owner the car is worth more than " + Figures.rounded(v) + "."));
        Range before = SwapValue.range(Arrays.stream(reconciled.priceBeforeOffers()).sorted().toArray(), 0.80);
        table.note("80 % range without these rows: " + Figures.range(before) + "; with them: " + Figures.range(value.range(0.80)) + ".");
        for (OwnOffer offer : value.offers().stream().sorted(OwnOffer.ORDER).toList()) {
            table.row(Cell.words(offer.on().map(Object::toString).orElse("")), Cell.words(offer.kind().words()),
                    Figures.money(offer.amount()), offer.days() > 0 ? Cell.number(offer.days(), 0) : Cell.BLANK);
        }
        return table.build();
    }

    Table narrowing() {
        Table.Builder table = Table.titled("What would narrow it most").columns(Column.sentences("three more rows of"),
                Column.number("would take away of the variance of the middle price", ""));
        table.note("Rows of the year and in the state of the finished car that state what its row states (" + Missing.asStated(s.finished)
                + "); a row that leaves some of it open helps less.");
        for (Missing.Gain gain : Missing.gains(value)) {
            table.row(Cell.words(gain.row()), Figures.share(gain.share()));
        }
        return table.build();
    }

    /** What is said of swaps, as the user's assumptions. */
    private Table sayings() {
        Table.Builder table = Table.titled("What is said of swaps: assumptions of yours, not facts").columns(Column.sentences("saying"),
                Column.words("assumption"), Column.number("figure", ""), Column.number("in money", ""));
        table.note("Common practice, no source. They do not enter the value; change them in assumptions.csv.");
        worked.factoryAtGear.ifPresent(both -> table.note("The factory equivalent is counted here" + halfWay() + "."));
        double ask = s.assumption("swap_owners_ask").middle();
        table.row(Cell.words("owners ask about what the factory equivalent costs"), Cell.words("swap_owners_ask"), Cell.number(ask, 2),
                worked.factoryShared.map(v -> Figures.money(ask * middle(v))).orElse(Cell.BLANK));
        double redo = s.assumption("swap_redo_share").middle();
        table.row(Cell.words("doing the swap again after a crash costs about a third of the first time, since its problems are solved"),
                Cell.words("swap_redo_share"), Cell.number(redo, 2),
                s.car.cost().work().map(w -> Figures.money(redo * Quantiles.median(w.draws(s.count(), s.seedOfCar("work")))))
                        .orElse(Cell.BLANK));
        double inflated = s.assumption("swap_inflated_position").middle();
        table.row(Cell.words("in an inflated market a finished swap costs about what the factory equivalent asks"),
                Cell.words("swap_inflated_position"), Cell.number(inflated, 2), worked.factoryShared.isEmpty()
                        || worked.stockValue.isEmpty()
                        ? Cell.BLANK : Figures.money((1 - inflated) * middle(worked.stockValue.get())
                                + inflated * middle(worked.factoryShared.get())));
        return table.build();
    }
}
