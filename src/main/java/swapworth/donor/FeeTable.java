package swapworth.donor;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import swapworth.listing.Keys;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.reading.DistanceUnit;

/** One line of the landed cost: the rows of one table of {@code fees.csv}, its steps in order. */
final class FeeTable {

    /** What the steps of a table count. */
    enum Measure {
        BID(""), MILES(DistanceUnit.MI), KM(DistanceUnit.KM), DAYS(" days");

        /** What stands behind a number of them. */
        final String words;
        /** The unit of distance, where distances are counted. */
        final Optional<DistanceUnit> distance;

        Measure(String words) {
            this.words = words;
            this.distance = Optional.empty();
        }

        Measure(DistanceUnit unit) {
            this.words = " " + unit.many();
            this.distance = Optional.of(unit);
        }
    }

    /** When a table counts at all. */
    enum When { ALWAYS, NON_RUNNER, NO_KEY }

    /** One row. */
    record Tier(Optional<BigDecimal> from, Optional<BigDecimal> to, BigDecimal flat, BigDecimal percent, Optional<BigDecimal> minimum,
            Optional<BigDecimal> maximum, BigDecimal perDay, BigDecimal perDistance, DistanceUnit unit, BigDecimal freeDays,
            Optional<BigDecimal> days) {

        String range(Measure measure) {
            return from.isEmpty() && to.isEmpty() ? "" : to.isEmpty() ? "from " + Cents.text(from.get()) + measure.words
                    : (from.isPresent() ? Cents.text(from.get()) : "up") + " to " + Cents.text(to.get()) + measure.words;
        }
    }

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    final String name;
    final String car;
    final CostKind kind;
    final Measure measure;
    private final Set<Seller> sellers;
    private final When when;
    /** Names of the lines that a percentage is charged on, in lower case; empty for the bid. */
    private final List<String> base;
    private final List<Tier> tiers;

    FeeTable(String name, String car, CostKind kind, Measure measure, Set<Seller> sellers, When when, List<String> base, List<Tier> tiers) {
        this.name = name;
        this.car = car;
        this.kind = kind;
        this.measure = measure;
        this.sellers = Set.copyOf(sellers);
        this.when = when;
        this.base = List.copyOf(base);
        this.tiers = List.copyOf(tiers);
    }

    List<Tier> tiers() {
        return tiers;
    }

    /** Why the steps cannot be used; nothing where each amount has one row. */
    static Optional<String> fault(List<Tier> tiers) {
        for (int i = 0; i < tiers.size(); i++) {
            Tier tier = tiers.get(i);
            if (tier.from().isPresent() && tier.to().isPresent() && tier.from().get().compareTo(tier.to().get()) > 0) {
                return Optional.of("the row " + tier.range(Measure.BID) + " ends before it begins");
            }
            if (i == 0) {
                continue;
            }
            Optional<BigDecimal> end = tiers.get(i - 1).to();
            if (end.isEmpty()) {
                return Optional.of("the row " + tiers.get(i - 1).range(Measure.BID)
                        + " has no end, and another row follows it: they overlap");
            }
            if (tier.from().isEmpty()) {
                continue;
            }
            BigDecimal gap = tier.from().get().subtract(end.get());
            if (gap.signum() < 0) {
                return Optional.of("the rows overlap: one ends at " + Cents.text(end.get()) + ", the next begins at "
                        + Cents.text(tier.from().get()));
            }
            if (gap.compareTo(BigDecimal.ONE) > 0) {
                return Optional.of("the rows leave a gap: one ends at " + Cents.text(end.get()) + ", the next begins at "
                        + Cents.text(tier.from().get()));
            }
        }
        return Optional.empty();
    }

    /** Where the steps are: a row counts from this amount on, or above it where the row before holds the amount itself. */
    record Edge(BigDecimal at, boolean above) {
        boolean passedBy(BigDecimal amount) {
            return above ? amount.compareTo(at) > 0 : amount.compareTo(at) >= 0;
        }
    }

    /** The edges of all rows, and the end of the last. */
    List<Edge> edges() {
        List<Edge> edges = new ArrayList<>();
        for (int i = 0; i < tiers.size(); i++) {
            edges.add(edge(i));
        }
        tiers.get(tiers.size() - 1).to().ifPresent(end -> edges.add(new Edge(end, true)));
        return edges;
    }

    private Edge edge(int i) {
        Optional<BigDecimal> from = tiers.get(i).from();
        if (i == 0) {
            return new Edge(from.orElse(BigDecimal.ZERO), false);
        }
        BigDecimal before = tiers.get(i - 1).to().orElseThrow();
        return from.isPresent() && from.get().compareTo(before) > 0 ? new Edge(from.get(), false) : new Edge(before, true);
    }

    private Optional<Tier> tier(BigDecimal amount) {
        Optional<Tier> found = Optional.empty();
        for (int i = 0; i < tiers.size(); i++) {
            // A first row from 1 on holds what lies below 1 too.
            boolean passed = edge(i).passedBy(amount) || i == 0 && edge(0).at().compareTo(BigDecimal.ONE) <= 0;
            found = passed ? Optional.of(tiers.get(i)) : found;
        }
        boolean beyond = found.isPresent() && found.get() == tiers.get(tiers.size() - 1)
                && found.get().to().map(end -> amount.compareTo(end) > 0).orElse(false);
        return beyond ? Optional.empty() : found;
    }

    /** What the table adds to a purchase. */
    sealed interface Charge permits Line, Unknown {
    }

    /** An amount and how it came about. */
    record Line(BigDecimal amount, String how) implements Charge {
    }

    /** Why there is no amount. */
    record Unknown(String reason) implements Charge {
    }

    /** Why the table adds nothing to a purchase; nothing where it counts. */
    Optional<String> notCharged(Purchase purchase) {
        boolean unsaid = sellers.isEmpty();
        Seller seller = purchase.seller();
        boolean charged = seller == Seller.UNKNOWN || (unsaid
                ? seller == Seller.AUCTION || !kind.auctionOnly() && !(kind == CostKind.TAX && seller == Seller.PRIVATE)
                : sellers.contains(seller));
        if (!charged) {
            return Optional.of("not charged when the seller is " + seller.words() + (unsaid ? " (unless the column seller says so)" : ""));
        }
        PriceIncludes held = purchase.includes();
        if (kind == CostKind.FEE && (held == PriceIncludes.FEES || held == PriceIncludes.BOTH)
                || kind == CostKind.TAX && (held == PriceIncludes.TAX || held == PriceIncludes.BOTH)) {
            return Optional.of("already in the price");
        }
        if (when == When.NON_RUNNER && purchase.runs() == Runs.DRIVES) {
            return Optional.of("it drives");
        }
        if (when == When.NO_KEY && purchase.keys() != Keys.NO) {
            return Optional.of(purchase.keys() == Keys.YES ? "it has keys" : "the row does not say that keys are missing");
        }
        return Optional.empty();
    }

    Charge charge(Purchase purchase, Map<String, BigDecimal> above, double usualDays) {
        Optional<String> why = notCharged(purchase);
        if (why.isPresent()) {
            return new Line(BigDecimal.ZERO, why.get());
        }
        return amount(purchase, above, usualDays);
    }

    private Unknown notKnownHowFar() {
        return new Unknown(name + ": distance_away is blank");
    }

    /** How far away the car stands, without what changing units left behind the sixth decimal. */
    private static BigDecimal away(Purchase purchase, DistanceUnit unit) {
        return BigDecimal.valueOf(unit.fromMiles(purchase.miles().orElseThrow())).setScale(6, RoundingMode.HALF_UP).stripTrailingZeros();
    }

    private Charge amount(Purchase purchase, Map<String, BigDecimal> above, double usualDays) {
        if (measure.distance.isPresent() && purchase.miles().isEmpty()) {
            return notKnownHowFar();
        }
        Optional<BigDecimal> stated = tiers.stream().flatMap(tier -> tier.days().stream()).findFirst();
        BigDecimal days = stated.orElse(BigDecimal.valueOf(usualDays));
        BigDecimal counted = measure.distance.isPresent() ? away(purchase, measure.distance.get()) : measure == Measure.DAYS
                ? days : purchase.bid();
        Optional<Tier> found = tier(counted);
        if (found.isEmpty()) {
            return new Unknown(name + ": no row holds " + Cents.text(counted) + measure.words);
        }
        Tier tier = found.get();
        if (tier.perDistance().signum() > 0 && purchase.miles().isEmpty()) {
            return notKnownHowFar();
        }
        List<Line> parts = new ArrayList<>();
        if (tier.flat().signum() > 0) {
            parts.add(new Line(tier.flat(), Cents.text(tier.flat())));
        }
        if (tier.percent().signum() > 0) {
            parts.add(percentage(tier, purchase, above));
        }
        if (tier.perDistance().signum() > 0) {
            parts.add(byDistance(tier, away(purchase, tier.unit())));
        }
        if (tier.perDay().signum() > 0) {
            parts.add(byDays(tier, days, stated.isEmpty() ? " (days_until_collected, assumed)" : ""));
        }
        Line line = withinLimits(tier, parts);
        String range = tier.range(measure);
        return new Line(line.amount(), line.how() + (range.isEmpty() || tiers.size() == 1 ? "" : ", row " + range)
                + (line.amount().signum() > 0 ? countedThough(purchase) : ""));
    }

    private Line percentage(Tier tier, Purchase purchase, Map<String, BigDecimal> above) {
        BigDecimal on = base.isEmpty() ? purchase.bid()
                : base.stream().map(line -> above.getOrDefault(line, BigDecimal.ZERO)).reduce(BigDecimal.ZERO, BigDecimal::add);
        return new Line(on.multiply(tier.percent()).divide(HUNDRED), tier.percent().stripTrailingZeros().toPlainString() + " % of "
                + (base.isEmpty() ? "the bid" : Cents.text(Cents.rounded(on)) + " (" + String.join(", ", base) + ")"));
    }

    private static Line byDistance(Tier tier, BigDecimal distance) {
        return new Line(tier.perDistance().multiply(distance), tier.perDistance().toPlainString() + " a " + tier.unit().one() + " for "
                + Cents.text(distance) + " " + tier.unit().many());
    }

    private static Line byDays(Tier tier, BigDecimal days, String whose) {
        BigDecimal paid = days.subtract(tier.freeDays()).max(BigDecimal.ZERO);
        return new Line(tier.perDay().multiply(paid), Cents.text(tier.perDay()) + " a day for " + Cents.text(paid)
                + (paid.compareTo(BigDecimal.ONE) == 0 ? " day" : " days")
                + (tier.freeDays().signum() > 0 ? " after " + Cents.text(tier.freeDays()) + " free" : "") + whose);
    }

    /** The sum of what a row charges, but at least its minimum and at most its maximum. */
    private static Line withinLimits(Tier tier, List<Line> parts) {
        BigDecimal sum = parts.stream().map(Line::amount).reduce(BigDecimal.ZERO, BigDecimal::add);
        String how = parts.isEmpty() ? "nothing" : parts.stream().map(Line::how).collect(Collectors.joining(" and "));
        Optional<BigDecimal> least = tier.minimum().filter(amount -> sum.compareTo(amount) < 0);
        Optional<BigDecimal> most = tier.maximum().filter(amount -> sum.compareTo(amount) > 0);
        return least.map(amount -> new Line(amount, "the minimum, " + Cents.text(amount) + (parts.isEmpty() ? "" : ", for " + how)))
                .or(() -> most.map(amount -> new Line(amount, "the most, " + Cents.text(amount) + ", for " + how)))
                .orElseGet(() -> new Line(sum, how));
    }

    /** Why it counts though the row leaves open whether it does. */
    private String countedThough(Purchase purchase) {
        return (purchase.seller() == Seller.UNKNOWN && (kind.auctionOnly() || kind == CostKind.TAX)
                ? "; counted because the row does not say who sells" : "")
                + (when == When.NON_RUNNER && purchase.runs() == Runs.UNKNOWN
                ? "; counted because the row does not say that it drives" : "");
    }
}
