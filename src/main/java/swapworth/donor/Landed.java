package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.market.Answer;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * The landed costs of the cars in play, and the highest bid for each where a target is stated.
 *
 * @param currency the base currency
 * @param costs one for each car that has a price, in the order of the file
 * @param roles what each of these cars is in the undertaking, in the same order
 * @param bids the highest bids for the target, one for each car, with or without a price; empty without a target
 * @param unpriced the cars without a price or a planned bid
 * @param forNobody the fee tables that are for a car which is not in play, with its name
 */
public record Landed(Currency currency, List<LandedCost> costs, List<CandidateCar.Role> roles, List<Bid> bids, List<String> unpriced,
        List<String> forNobody) {

    /**
     * The highest bid for a car.
     *
     * @param car its name
     * @param answer the bid, or why there is none
     * @param shaded the same shaded, for a car of which listings tell
     * @param unshaded why it is not shaded though others bid for it; empty where it is, or nobody does
     * @param there the bid, and the shaded one, in the currency in which the car is bid for, with its rate; empty where that is the base
     *     currency, or there is no bid
     */
    public record Bid(String car, BidAnswer answer, Optional<Shaded> shaded, Optional<String> unshaded, String there) {

        /** Checks that nothing is missing. */
        public Bid {
            requireNonNull(car, "car");
            requireNonNull(answer, "answer");
            requireNonNull(shaded, "shaded");
            requireNonNull(unshaded, "unshaded");
            requireNonNull(there, "there");
        }
    }

    /**
     * A bid for a target that is shaded.
     *
     * @param shading by how much, and why
     * @param answer the highest bid for the shaded target
     */
    public record Shaded(Shading shading, BidAnswer answer) {
    }

    /**
     * The car of a role that costs least at the door: a donor and a recipient are both bought, and not held against each other.
     *
     * @param role the role
     * @param cars how many cars of that role have a price
     * @param cost what the cheapest costs
     */
    public record Least(CandidateCar.Role role, int cars, LandedCost cost) {

        /** Checks that nothing is missing. */
        public Least {
            requireNonNull(role, "role");
            requireNonNull(cost, "cost");
        }
    }

    /** Copies the lists in and checks that each cost has its role. */
    public Landed {
        requireNonNull(currency, "currency");
        costs = List.copyOf(costs);
        roles = List.copyOf(roles);
        if (roles.size() != costs.size()) {
            throw new IllegalArgumentException(roles.size() + " roles for " + costs.size() + " costs");
        }
        bids = List.copyOf(bids);
        unpriced = List.copyOf(unpriced);
        forNobody = List.copyOf(forNobody);
    }

    /**
     * The landed costs of cars.
     *
     * @param cars the cars in play; a finished car and a factory equivalent are not bought and left out
     * @param schedule the fee tables
     * @param target the most to be paid in all for any one of them, where stated
     * @return their costs
     */
    public static Landed of(List<CandidateCar> cars, FeeSchedule schedule, Optional<BigDecimal> target) {
        return of(cars, schedule, target, car -> Optional.empty());
    }

    /**
     * The landed costs of cars, with bids shaded where something is known of what a car is worth.
     *
     * @param cars the cars in play
     * @param schedule the fee tables
     * @param target the most to be paid in all for any one of them, where stated
     * @param shading by how much a bid for a car is shaded, or why the listings tell nothing of that; empty for not at all
     * @return their costs
     */
    public static Landed of(List<CandidateCar> cars, FeeSchedule schedule, Optional<BigDecimal> target,
            Function<CandidateCar, Optional<Answer<Shading>>> shading) {
        List<LandedCost> costs = new ArrayList<>();
        List<CandidateCar.Role> roles = new ArrayList<>();
        List<Bid> bids = new ArrayList<>();
        List<String> unpriced = new ArrayList<>();
        for (CandidateCar car : cars) {
            if (!bought(car)) {
                continue;
            }
            Purchase.of(car, schedule.currency()).ifPresentOrElse(p -> {
                costs.add(LandedCost.of(schedule, p));
                roles.add(car.role());
            }, () -> unpriced.add(car.name()));
            target.ifPresent(most -> {
                Purchase purchase = Purchase.of(car, BigDecimal.ONE);
                BidAnswer answer = HighestBid.of(schedule, purchase, most);
                Optional<Answer<Shading>> asked = shading.apply(car);
                Optional<Shaded> shaded = asked.flatMap(Answer::told).map(s -> new Shaded(s, HighestBid.of(schedule, purchase,
                        Cents.rounded(most.multiply(BigDecimal.valueOf(s.factor()))))));
                Optional<String> unshaded = asked.flatMap(a -> a.match(s -> Optional.empty(), no -> Optional.of(no.reason())));
                bids.add(new Bid(car.name(), answer, shaded, unshaded, there(car, answer, shaded, schedule.currency())));
            });
        }
        return new Landed(schedule.currency(), costs, roles, bids, unpriced,
                schedule.forNobody(cars.stream().map(CandidateCar::name).toList()));
    }

    /**
     * The car that costs least at the door, role by role.
     *
     * @return one for each role that has a priced car, in the order in which the roles first stand
     */
    public List<Least> least() {
        List<Least> least = new ArrayList<>();
        for (CandidateCar.Role role : new LinkedHashSet<>(roles)) {
            List<LandedCost> alike = IntStream.range(0, costs.size()).filter(i -> roles.get(i) == role).mapToObj(costs::get).toList();
            least.add(new Least(role, alike.size(), alike.stream().min(LandedCost.CHEAPEST).orElseThrow()));
        }
        return least;
    }

    private static String there(CandidateCar car, BidAnswer answer, Optional<Shaded> shaded, Currency currency) {
        Function<BidAnswer, String> words = a -> a.match(bid -> Purchase.there(car, bid.bid(), currency), none -> "");
        String full = words.apply(answer);
        String less = shaded.map(Shaded::answer).map(words).orElse("");
        return full + (full.isEmpty() || less.isEmpty() ? "" : "; shaded " + less);
    }

    /**
     * What the costs lack: cars without one, and fees that are charged on nothing.
     *
     * @return one sentence each; none where nothing is lacking
     */
    public List<String> lacking() {
        List<String> lacking = new ArrayList<>();
        if (!unpriced.isEmpty()) {
            lacking.add("Without a price or a planned bid: " + String.join(", ", unpriced) + ".");
        }
        if (!forNobody.isEmpty()) {
            lacking.add("Tables of fees.csv for a car that cars.csv does not have, charged on nothing: " + String.join(", ", forNobody)
                    + ".");
        }
        return lacking;
    }

    /** The cost of a car. */
    Optional<LandedCost> of(String car) {
        return costs.stream().filter(c -> Spelling.name(c.purchase().car()).equals(Spelling.name(car))).findFirst();
    }

    static boolean bought(CandidateCar car) {
        return car.role() != CandidateCar.Role.FINISHED && car.role() != CandidateCar.Role.FACTORY_EQUIVALENT;
    }

    /**
     * The highest bids.
     *
     * @return nothing without a target
     */
    public Optional<Table> bidTable() {
        if (bids.isEmpty()) {
            return Optional.empty();
        }
        boolean abroad = bids.stream().anyMatch(bid -> !bid.there.isEmpty());
        List<Column> columns = new ArrayList<>(List.of(Column.words("car"), Column.number("target", ""), Column.number("highest bid", ""),
                Column.number("landed", ""), Column.number("shading", "%"), Column.number("shaded bid", ""), Column.number("next bid", ""),
                Column.number("next landed", "")));
        if (abroad) {
            columns.add(Column.words("bid in the seller's currency"));
        }
        columns.add(Column.sentences("to look at"));
        Table.Builder table = Table.titled("Highest bid within a target, " + currency.getCurrencyCode())
                .columns(columns.toArray(Column[]::new));
        table.note("Found by search: the landed cost jumps where a fee table steps. The bid is the one before which to stop.");
        table.note("The target is what you would pay in all; it says nothing of what a car is worth. Set none above its value less what"
                + " it still needs.");
        if (bids.stream().anyMatch(bid -> bid.shaded.isPresent())) {
            table.note("Shading: who bids wins most often when his estimate is too high. The target is cut by what such a car is worth "
                    + "less when the bid wins against rival_bidders whose estimates lie rival_spread about its value (assumptions), by "
                    + "draws of the price model.");
        }
        for (Bid one : bids) {
            List<Cell> row = new ArrayList<>(cells(one));
            if (abroad) {
                row.add(Cell.words(one.there));
            }
            List<String> look = new ArrayList<>();
            one.unshaded.ifPresent(why -> look.add("not shaded: " + why));
            look.addAll(one.answer.match(bid -> bid.steps().stream().filter(bid::isNear).map(HighestBid.Step::sentence).toList(),
                    no -> List.of(no.reason())));
            row.add(Cell.words(String.join("; ", look)));
            table.row(row);
        }
        return Optional.of(table.build());
    }

    private static List<Cell> cells(Bid one) {
        Optional<Shaded> less = one.shaded;
        Cell car = Cell.words(one.car);
        return one.answer.match(
                bid -> List.of(car, Cents.cell(bid.target()), Cents.cell(bid.bid()), Cents.cell(bid.landed()),
                        less.map(s -> Cell.number(100 * (s.shading().factor() - 1), 1)).orElse(Cell.BLANK),
                        less.map(s -> s.answer().match(b -> Cents.cell(b.bid()), none -> Cell.words("none"))).orElse(Cell.BLANK),
                        Cents.cell(bid.next()), Cents.cell(bid.nextLanded())),
                none -> List.of(car, Cents.cell(none.target()), Cell.words("none"), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK,
                        Cell.BLANK));
    }

    /**
     * Whether it pays to go and look at each car before it is paid for.
     *
     * @param assumptions how often cars are not as described, and what a mile of the way costs, in the base currency
     * @return one row a car of which the distance is known; empty where it is of none
     */
    public Optional<Table> lookTable(Assumptions assumptions) {
        return GoingToLook.table(this, assumptions);
    }

    /**
     * What a reader looks at: the totals, the highest bids where a target was stated, and every line.
     *
     * @return two or three tables
     */
    public List<Table> tables() {
        return Stream.of(Optional.of(totals()), bidTable(), Optional.of(lines())).flatMap(Optional::stream).toList();
    }

    /**
     * The totals of all cars.
     *
     * @return one row a car, with what its total lacks or leaves open
     */
    public Table totals() {
        Table.Builder table = Table.titled("Landed cost of each car, " + currency.getCurrencyCode())
                .columns(Column.words("car"), Column.number("price or bid", ""),
                Column.number("landed cost", ""), Column.number("more than the bid", "%"), Column.sentences("to look at"));
        for (LandedCost cost : costs) {
            List<String> open = new ArrayList<>(cost.missing());
            open.addAll(cost.questions());
            double bid = cost.purchase().bid().doubleValue();
            table.row(Cell.words(cost.purchase().car()), Cents.cell(cost.purchase().bid()), Cents.cell(cost.total()),
                    Cell.number(100 * (cost.total().doubleValue() / bid - 1), 1), Cell.words(String.join("; ", open)));
        }
        return table.build();
    }

    /**
     * Every line of every cost, and the highest bids where a target was stated: for machines.
     *
     * @return the columns car, line, kind, amount, how
     */
    public Table lines() {
        Table.Builder table = Table.titled("Lines of the landed costs")
                .columns(Column.words("car"), Column.words("line"), Column.words("kind"),
                Column.number("amount", ""), Column.words("how"));
        for (LandedCost cost : costs) {
            for (LandedCost.Line line : cost.lines()) {
                table.row(Cell.words(cost.purchase().car()), Cell.words(line.name()), Cell.words(line.kind().words()),
                        Cents.cell(line.amount()), Cell.words(line.how()));
            }
            table.row(Cell.words(cost.purchase().car()), Cell.words("landed cost"), Cell.BLANK, Cents.cell(cost.total()),
                    Cell.words(String.join("; ", cost.missing())));
        }
        for (Bid one : bids) {
            bidLine(table, one.car, "highest bid", one.answer);
            one.shaded.ifPresent(less -> bidLine(table, one.car, "shaded bid", less.answer()));
        }
        return table.build();
    }

    private static void bidLine(Table.Builder table, String car, String line, BidAnswer answer) {
        Cell amount = answer.match(bid -> Cents.cell(bid.bid()), none -> Cell.BLANK);
        String how = answer.match(bid -> "within " + Cents.cell(bid.target()).shown() + "; landed "
                + Cents.cell(bid.landed()).shown(), NoBid::reason);
        table.row(Cell.words(car), Cell.words(line), Cell.BLANK, amount, Cell.words(how));
    }
}
