package swapworth.swap;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.Mileage;
import swapworth.market.FairValue;
import swapworth.market.Figures;
import swapworth.market.Range;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** The value of a finished swap as tables. */
final class SwapTables {
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
        tables.addAll(value.grids());
        tables.add(value.pairs());
        if (!value.offers().isEmpty()) {
            tables.add(offers());
        }
        seen().ifPresent(tables::add);
        tables.add(narrowing());
        value.selling().ifPresent(tables::add);
        value.waysToSell().ifPresent(tables::add);
        tables.add(sayings());
        tables.add(new Disclosure(s).table());
        return tables;
    }

    Table result() {
        Table.Builder table = Table.titled("The finished swap '" + s.car.name() + "': the price of this one car" + s.onDay() + ", "
                + s.level.words()).columns(Column.words("figure"), Column.number("median", ""), Column.number("80 % range", ""),
                Column.number("95 % range", ""));
        table.note(value.basis() + ".");
        table.note(value.held() + ".");
        if (!value.reason().isEmpty()) {
            table.note("The approaches are weighted by you and not by their covariance: " + value.reason() + ".");
        }
        value.statedAgainst().ifPresent(table::note);
        ofLevel().ifPresent(table::note);
        new Contradictions(value).sentences().forEach(table::note);
        table.row(line("price of this one car", value.draws()));
        table.row(line("middle price of such swaps" + (s.hasFaults() ? " with these faults" : ""), value.levelDraws()));
        return table.build();
    }

    /** What an owner who sells does not get at this level. */
    private Optional<String> ofLevel() {
        return switch (s.level) {
            case PRIVATE_ASKING, PRIVATE_SOLD -> Optional.empty();
            case TRADE_ASKING, TRADE_SOLD -> Optional.of("At this level a business sells it: one that buys it from you to sell it again"
                    + " pays less, by its work, its risk and its margin (sell_to_dealer, an assumption). Ask one for its price.");
            case AUCTION -> Optional.of("At this level it is the winning bid: the auction's fee for sellers comes off, and a reserve that"
                    + " is not met costs its fee too.");
        };
    }

    /** The swaps of other people that count in the value. */
    Optional<Table> seen() {
        if (worked.seen.used().isEmpty()) {
            return Optional.empty();
        }
        Table.Builder table = Table.titled("Finished swaps of other people that count in the value").columns(Column.words("line"),
                Column.words("running gear"), Column.words("built by"), Column.number("model year", ""), Column.words("mileage"),
                Column.words("running-gear mileage"), Column.words("price"), Column.words("level of trade"), Column.words("seen on"),
                Column.number("amount", ""));
        for (SeenSwap swap : worked.seen.used()) {
            CarFacts f = swap.facts();
            table.row(Cell.words(f.vehicle()), Cell.words(f.runningGear().orElse("unknown")), Cell.words(swap.builtBy().words()),
                    f.modelYear().isPresent() ? Cell.label(f.modelYear().getAsInt()) : Cell.BLANK,
                    Cell.words(f.mileage().map(Mileage::toString).orElse("unknown")),
                    Cell.words(f.gearMileage().map(Mileage::toString).orElse("unknown")), Cell.words(swap.kind().words()),
                    Cell.words(ComparedSwaps.level(swap).words()), Cell.words(swap.on().map(Object::toString).orElse("")),
                    Figures.money(swap.price()));
        }
        return Optional.of(table.build());
    }

    private static List<Cell> line(String name, double[] draws) {
        double[] sorted = Arrays.stream(draws).sorted().toArray();
        return List.of(Cell.words(name), Figures.money(Quantiles.ofSorted(sorted, 0.5)), words(sorted, 0.80), words(sorted, 0.95));
    }

    private static Cell words(double[] sorted, double probability) {
        return Cell.words(Figures.range(SwapValue.range(sorted, probability)));
    }

    Table approaches() {
        Table.Builder table = Table.titled("The approaches, one quantity: the price of this one car" + s.onDay()).columns(
                Column.words("approach"), Column.number("median", ""), Column.number("80 % range", ""), Column.number("95 % range", ""),
                Column.number("weight", ""), Column.number("middle price held by assumptions", ""), Column.sentences("largest assumption"),
                Column.sentences("remarks"));
        table.note("They share listings and assumptions: that they agree is no evidence as far as they share them. Weights come from the"
                + " covariance of their draws, and from how far they may differ beyond it: about "
                + Cell.format(Figures.percent(reconciled.combination().spread()), 0)
                + " %, by an assumption (swap_approach_spread in the table of assumptions) and what they show.");
        if (s.hasFaults()) {
            table.note("Each approach says what a car without the stated faults is worth; they are taken off the rows below them.");
        }
        for (Approach approach : worked.all()) {
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
            before.addAll(List.of(Figures.share(1), Cell.BLANK, Cell.BLANK, Cell.words(Basis.swapsSeen(worked.alike.count())
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
        Table.Builder table = Table.titled("Beside it: what stands around the value" + s.onDay()).columns(Column.words("figure"),
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
                + " months (assumptions), not counted in money" + Basis.soundParts(s.car));
        worked.byPosition.found.ifPresent(p -> {
            double[] sorted = Arrays.stream(p.position()).sorted().toArray();
            table.note("Position of swaps between stock car (0) and factory equivalent (1): "
                    + Cell.format(Quantiles.ofSorted(sorted, 0.5), 2) + ", 80 % range " + Cell.format(Quantiles.ofSorted(sorted, 0.1), 2)
                    + " to " + Cell.format(Quantiles.ofSorted(sorted, 0.9), 2) + ", by "
                    + (p.swaps() == 0 ? "" : Basis.swapsSeen(p.swaps()) + " of other pairs and ") + "the assumption.");
        });
        worked.seen.leftOut().forEach((name, why) -> table.note("Swap '" + name + "' is not used: " + why + "."));
        return table.build();
    }

    private static void bracket(Table.Builder table, String name, Optional<double[]> draws, String what) {
        List<Cell> cells = new ArrayList<>(draws.map(d -> line(name, d)).orElse(List.of(Cell.words(name), Cell.BLANK,
                Cell.words("cannot tell"), Cell.BLANK)));
        cells.add(Cell.words(what));
        table.row(cells);
    }

    private Table offers() {
        Table.Builder table = Table.titled("What happened when the car was on offer").columns(Column.words("day"), Column.words("what"),
                Column.number("amount", ""), Column.number("days", ""));
        table.note("A refused offer is a bound below what the car is worth to its owner, and a sight of the buyer's side with an error of"
                + " its own. The order of these rows does not matter.");
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
        worked.brackets.factoryAtGear.ifPresent(both -> table.note("The factory equivalent is counted here" + Basis.halfWay(worked) + "."));
        double ask = s.assumption("swap_owners_ask").middle();
        table.row(Cell.words("owners ask about what the factory equivalent costs"), Cell.words("swap_owners_ask"), Cell.number(ask, 2),
                worked.brackets.factoryShared.map(v -> Figures.money(ask * SwapValue.middle(v))).orElse(Cell.BLANK));
        double redo = s.assumption("swap_redo_share").middle();
        table.row(Cell.words("doing the swap again after a crash costs about a third of the first time, since its problems are solved"),
                Cell.words("swap_redo_share"), Cell.number(redo, 2),
                s.car.cost().work().map(w -> Figures.money(redo * Quantiles.median(w.draws(s.count(), s.seedOfCar("work")))))
                        .orElse(Cell.BLANK));
        double inflated = s.assumption("swap_inflated_position").middle();
        table.row(Cell.words("in an inflated market a finished swap costs about what the factory equivalent asks"),
                Cell.words("swap_inflated_position"), Cell.number(inflated, 2), worked.brackets.factoryShared.isEmpty()
                        || worked.brackets.stock.isEmpty()
                        ? Cell.BLANK : Figures.money((1 - inflated) * SwapValue.middle(worked.brackets.stock.get())
                                + inflated * SwapValue.middle(worked.brackets.factoryShared.get())));
        return table.build();
    }
}
