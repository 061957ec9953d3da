package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.assumptions.Assumption;
import swapworth.listing.Days;
import swapworth.listing.PriceKind;
import swapworth.table.Cell;

/** What a reader must know before he relies on an index: what the listings cannot tell apart, and what they lack. */
final class IndexCautions {
    /** Standard deviation of the ages of cars about their dates, years, below which all are of about one model year. */
    private static final double LEAST_SPREAD_OF_AGES = 0.4;
    /** From this chance on a reader is told that dates, or age and distance, may tell nothing. */
    static final double WORTH_SAYING = 0.25;
    private static final int WEEK = 7;
    /** So many times as many asks in the first week as in one of those since are cars that had stood before, and not just come up. */
    private static final int STANDING = 3;

    private final IndexBasis basis;
    private final Encoder encoder;

    IndexCautions(IndexBasis basis) {
        this.basis = basis;
        this.encoder = basis.encoder();
    }

    /** Whole sentences, by the months of the index. */
    List<String> all(List<IndexMonth> months) {
        List<String> sentences = new ArrayList<>();
        datesInDoubt().ifPresent(sentences::add);
        encoder.undated().ifPresent(sentences::add);
        sentences.add(ageing());
        sentences.addAll(new MixOverTime(encoder, basis.posterior(), basis.evidence()).cautions());
        if (!basis.hasSeason()) {
            sentences.add("The listings span less than a year: a season is not told apart from the market, and prices of the summer stand "
                    + "2 to 4 % above the mean of the year in some years");
        }
        thinMonths(months).ifPresent(sentences::add);
        atFirstLook().ifPresent(sentences::add);
        sentences.add("Asking prices follow what is paid with a lag, so that a turn of the last months is shown late and too small, and "
                + "dear cars stay on offer: " + (encoder.setsOnOfferApart()
                ? "cars still on offer at the last look are set apart in the model, the further the longer they have stood, by a step that"
                + " is assumed (still_on_offer) until your rows tell it"
                : "too few of these were looked for again, or have an outcome, to tell those still on offer from those that are gone"));
        return List.copyOf(sentences);
    }

    private Optional<String> datesInDoubt() {
        double chance = basis.datesTellNothing();
        return chance < WORTH_SAYING ? Optional.empty()
                : Optional.of("Are these the days on which the prices were asked? With a chance of " + Cell.chanceInWords(chance)
                + " the prices know nothing of their dates, neither of ageing nor of a market; so far the level of cars of the same "
                + "age is what the assumption says (market_drift), within its spread");
    }

    private String ageing() {
        Assumption slope = basis.assumptions().get("age_slope");
        return areAgesApart() ? "Ageing is told from the difference between model years, as if these differed by age alone; were newer ones"
                + " dearer for other reasons too, by 1 % a year, cars of the same age would have moved by 0.1 % a month less than is shown."
                + " How one and the same car moved needs no such assumption: cars of one model year are seen at several dates"
                : "All dated cars are of about one model year: by these listings ageing and the market cannot be told apart. The index of"
                + " cars of the same age stands by the assumption that a car loses " + -slope.middle()
                + " % a year with age (age_slope, spread " + slope.spread() + "); one and the same car needs no such assumption";
    }

    private static Optional<String> thinMonths(List<IndexMonth> months) {
        long bridged = months.stream().filter(m -> m.support() == IndexMonth.Support.BRIDGED).count();
        long thin = months.stream().filter(m -> m.support() == IndexMonth.Support.THIN).count();
        return bridged + thin == 0 ? Optional.empty()
                : Optional.of("Of each car the last ask counts, on the day from which it stood so, and its sale. Of " + months.size()
                + " months " + bridged + " have no such price and " + thin + " those of fewer than five cars: there the months beside"
                + " them speak");
    }

    /**
     * That a collection of less than a year began with cars that had stood for a time. Nobody knows since when, and of cars that stand the
     * dear ones are left: the first month is shown too high.
     */
    private Optional<String> atFirstLook() {
        LocalDate begin = encoder.begin().orElseThrow();
        double days = basis.days();
        if (basis.hasSeason() || days < 2 * WEEK) {
            return Optional.empty();
        }
        long asks = 0;
        long first = 0;
        for (Evidence e : basis.evidence()) {
            if (e.listing().price().kind() == PriceKind.ASKING && e.subject().on().isPresent()) {
                asks++;
                first += e.subject().on().get().isBefore(begin.plusDays(WEEK)) ? 1 : 0;
            }
        }
        double since = (asks - first) / (days / WEEK - 1);
        return first < IndexMonth.SEEN_FROM || first < STANDING * since ? Optional.empty() : Optional.of(first + " of " + asks
                + " asks are of the first week, " + STANDING + " times as many as of a week since or more: most of these cars"
                + " had stood for a time, and of cars that stand it is the dear ones that stay. Where they were asked 2 % more than cars"
                + " just come up, the movement from the first month on is shown "
                + Cell.format(2 / (days / Days.PER_MONTH), 1) + " % a month too low");
    }

    /** Whether the ages of the cars are more than their dates, so that ageing and the market can be told apart. */
    private boolean areAgesApart() {
        double[] sums = new double[6];
        for (Evidence e : basis.evidence()) {
            if (e.subject().on().isPresent()) {
                double t = -encoder.walk().orElseThrow().monthsBefore(e.subject().on().get()) / 12;
                double age = encoder.measured(e.subject()).age();
                double[] terms = {1, t, age, t * t, t * age, age * age};
                for (int k = 0; k < sums.length; k++) {
                    sums[k] += terms[k];
                }
            }
        }
        double n = sums[0];
        double tt = sums[3] - sums[1] * sums[1] / n;
        double ta = sums[4] - sums[1] * sums[2] / n;
        double aa = sums[5] - sums[2] * sums[2] / n;
        return Math.sqrt(Math.max(0, aa - (tt > 0 ? ta * ta / tt : 0)) / n) > LEAST_SPREAD_OF_AGES;
    }
}
