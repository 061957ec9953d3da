package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import swapworth.listing.Airbags;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Runs;
import swapworth.listing.Title;
import swapworth.market.PriceModel;
import swapworth.market.ValueDraws;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RandomNumbers;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What else could be done with a donor, on the same draws: repair and sell it, sell it as it lies, take all of it apart, or use its gear
 * and sell the rest (its highest and best use is the one that leaves most). What is not lawful where the user lives is not a use; ask
 * first.
 *
 * @param car what the donor is called
 * @param uses the uses
 * @param set a pulled drivetrain set in its place, where offers price one and the net cost of the whole donor is known
 * @param reason why the listings do not tell what the whole car sells for, so that these uses are left out; empty where they do
 */
public record DonorUses(String car, List<Use> uses, Optional<PulledSet> set, Optional<String> reason) {

    /** Copies the list in. */
    public DonorUses {
        requireNonNull(car, "car");
        uses = List.copyOf(uses);
    }

    /**
     * One use.
     *
     * @param name what is done
     * @param leaves draws of what it leaves over the landed cost
     * @param how how it is reckoned
     */
    public record Use(String name, double[] leaves, String how) {

        /** Copies the draws in. */
        public Use {
            requireNonNull(name, "name");
            leaves = leaves.clone();
        }

        @Override
        public double[] leaves() {
            return leaves.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Use use && name.equals(use.name) && Arrays.equals(leaves, use.leaves) && how.equals(use.how);
        }

        @Override
        public int hashCode() {
            return (name.hashCode() * 31 + Arrays.hashCode(leaves)) * 31 + how.hashCode();
        }

        /** What is done and the 80 % range of what it leaves. */
        @Override
        public String toString() {
            return name + ": leaves " + Choice.range(leaves);
        }
    }

    /**
     * A drivetrain set that somebody else has pulled.
     *
     * @param cost draws of its price, its freight and what it lacks
     * @param cheaperBy draws of the whole donor's net cost, with the gear that must be replaced, less that
     * @param offers the offers behind the price
     */
    public record PulledSet(double[] cost, double[] cheaperBy, int offers) {

        /** Copies the draws in. */
        public PulledSet {
            cost = cost.clone();
            cheaperBy = cheaperBy.clone();
        }

        @Override
        public double[] cost() {
            return cost.clone();
        }

        @Override
        public double[] cheaperBy() {
            return cheaperBy.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof PulledSet set && Arrays.equals(cost, set.cost) && Arrays.equals(cheaperBy, set.cheaperBy)
                    && offers == set.offers;
        }

        @Override
        public int hashCode() {
            return (Arrays.hashCode(cost) * 31 + Arrays.hashCode(cheaperBy)) * 31 + offers;
        }

        /** The 80 % ranges of its cost and of the difference, and the offers behind them. */
        @Override
        public String toString() {
            return "a pulled set for " + Choice.range(cost) + ", cheaper than the whole donor by " + Choice.range(cheaperBy) + ", by "
                    + offers + (offers == 1 ? " offer" : " offers");
        }
    }

    static DonorUses of(CarOption option, PartOut out, PartOut allSold, Optional<PriceModel> model, PartsMarket parts, MarketState state,
            AssumptionDraws draws) {
        List<Use> uses = new ArrayList<>();
        CarFacts facts = option.car().facts();
        long seed = RandomNumbers.seed(state.seed(), option.car().name());
        out.recovery().filter(r -> !option.gear().parts().isEmpty()).ifPresent(r -> uses.add(new Use("use the gear, sell the rest",
                sum(-option.landed(), out.gearAsFound(), r.net()), "each part of the gear that turns out good at what it sells for as a "
                        + "used part; its worth in the swap is another question" + unpriced(out))));
        // Where no part has a price, taking it apart is not told and does not leave the landed cost alone.
        allSold.recovery().filter(r -> r.pieces() > 0 || allSold.partsUnpriced() == 0).ifPresent(r -> uses.add(
                new Use("take all of it apart and sell it", sum(-option.landed(), r.net()),
                        "recovery with the gear and what is kept sold too" + unpriced(allSold))));
        Optional<String> reason = model.flatMap(m -> m.value(state.soldPrivately(facts)).match(v -> Optional.empty(),
                no -> Optional.of(no.reason())));
        Optional<ValueDraws> values = state.cars().filter(d -> reason.isEmpty());
        if (values.isPresent()) {
            double[] lies = values.get().price(state.soldPrivately(facts), seed);
            uses.add(new Use("sell it as it lies", sum(-option.landed(), lies), "private sold, in its state"));
            CarFacts repaired = facts.toBuilder().damage(Set.of()).runs(Runs.DRIVES).airbags(Airbags.IN_PLACE).mechanical(Condition.SOUND)
                    .title(facts.title() == Title.SALVAGE ? Title.REBUILT : facts.title()).build();
            uses.add(repairAndSell(option, values.get().price(state.soldPrivately(repaired), seed), out.drivetrainToReplace(), draws));
        }
        // Where its left-over parts are not counted its net cost is not known, and nothing stands against it.
        Optional<PulledSet> set = option.parts() ? set(option, parts, state, draws) : Optional.empty();
        return new DonorUses(option.car().name(), uses, set, reason);
    }

    /**
     * The use of a car that is repaired and sold.
     *
     * @param repaired its price once it is repaired, draw by draw
     * @param gear what another engine and gearbox cost where they turn out bad, draw by draw
     */
    private static Use repairAndSell(CarOption option, double[] repaired, double[] gear, AssumptionDraws draws) {
        CarFacts facts = option.car().facts();
        // A blank damage is unknown, not none: one zone is then taken.
        int zones = facts.damage().map(Set::size).orElse(1);
        double[] share = draws.share("repair_zone");
        double[] airbags = draws.share("repair_airbags");
        boolean fired = facts.airbags() == Airbags.FIRED || facts.airbags() == Airbags.GONE;
        double[] left = new double[repaired.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = repaired[i] * (1 - Math.min(1, zones * share[i] + (fired ? airbags[i] : 0))) - gear[i];
        }
        return new Use("repair and sell it", sum(-option.landed(), left), "as if undamaged"
                + (facts.title() == Title.SALVAGE ? ", rebuilt title" : "") + (zones == 0 ? "" : ", less repairs of " + zones
                + (zones > 1 ? " damaged zones" : " damaged zone")
                + " (assumption repair_zone" + (facts.damage().isEmpty() ? ", damage unknown" : "") + ")")
                + (fired ? ", airbags (repair_airbags)" : "")
                + " and another engine and gearbox where they turn out bad; hours not priced");
    }

    private static String unpriced(PartOut out) {
        int count = out.partsUnpriced();
        return count == 0 ? "" : "; " + count + (count == 1 ? " more part has no price and is" : " more parts have no price and are")
                + " not in it";
    }

    private static double[] sum(double constant, double[]... terms) {
        double[] sum = new double[terms[0].length];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = constant;
            for (double[] term : terms) {
                sum[i] += term[i];
            }
        }
        return sum;
    }

    private static Optional<PulledSet> set(CarOption option, PartsMarket parts, MarketState state, AssumptionDraws draws) {
        PartKind kind = PartCatalogue.get().kind("drivetrain set").orElseThrow();
        long seed = RandomNumbers.seed(state.seed(), option.car().name() + "/pulled set");
        return parts.draws(state.count(), state.seed()).sold(PiecePrices.wanted(option.car(), kind), seed).map(price -> {
            double[] freight = draws.size("postage_set");
            double[] missing = draws.share("set_missing");
            double[] net = option.withGear();
            double[] cost = new double[price.length];
            double[] cheaper = new double[price.length];
            for (int i = 0; i < cost.length; i++) {
                cost[i] = StrictMath.exp(price[i]) * (1 + missing[i]) + freight[i];
                cheaper[i] = net[i] - cost[i];
            }
            return new PulledSet(cost, cheaper, parts.offersOf(kind));
        });
    }

    /**
     * The uses side by side.
     *
     * @param currency of all amounts
     * @return one row a use, with how often it leaves most
     */
    public Table table(String currency) {
        Table.Builder table = Table.titled("What else could be done with " + car + ", " + currency).columns(Column.words("use"),
                Column.number("leaves, median", ""), Column.words("80 % range"), Column.number("leaves most", "% of draws"),
                Column.sentences("how"));
        table.note("What each use leaves over the landed cost. All uses are worked out on the same states of the market: the share of"
                + " draws says how often each leaves most.");
        reason.ifPresent(why -> table.note("What it sells for whole, as it lies or repaired, the listings cannot tell: " + why + "."));
        set.ifPresent(s -> table.note("A pulled drivetrain set in its place (" + s.offers()
                + (s.offers() == 1 ? " offer): " : " offers): ") + Choice.range(s.cost())
                + " with freight and what it lacks; the whole donor's net cost, with gear to replace, is " + Choice.range(s.cheaperBy())
                + " more (below 0: less), and the donor also takes room and hours."));
        double[] most = uses.isEmpty() ? new double[0] : Draws.shareHighest(uses.stream().map(use -> use.leaves).toList());
        for (int u = 0; u < most.length; u++) {
            Use use = uses.get(u);
            table.row(Cell.words(use.name()), Cell.number(Quantiles.of(use.leaves, 0.5), 0), Cell.words(Choice.range(use.leaves)),
                    Cell.chance(most[u]), Cell.words(use.how()));
        }
        return table.build();
    }
}
