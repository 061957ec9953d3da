package swapworth.market;

import java.time.LocalDate;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.IntStream;
import swapworth.listing.Days;
import swapworth.market.Measures.Measured;
import swapworth.statistics.PriorBlock.Role;

/** The terms of the market in time: its drift and that of each line, its steps from month to month, and the season. */
final class TimeTerms {
    /** Days that listings must span before a season is asked of them. */
    static final int A_YEAR = 360;
    /** The name of the term that holds how prices without a date stand to the last day seen. */
    static final String UNDATED = "day not stated";

    private TimeTerms() {
    }

    /**
     * Adds the terms, where prices are of days that lie apart.
     *
     * @param offer what came of each price on offer, which is told from what the market did meanwhile
     */
    static void addTo(ModelTerms terms, Stock stock, OfferTime offer) {
        if (stock.end().isEmpty()) {
            return;
        }
        LocalDate begin = stock.begin().orElseThrow();
        LocalDate end = stock.end().get();
        Terms.Walk months = new Terms.Walk("steps of the market from month to month", terms.assumptions(), begin, end);
        if (months.months() == 0) {
            return;
        }
        Terms.Prior drift = Terms.Prior.of(terms.assumptions(), "market_drift");
        ToDoubleBiFunction<Subject, Measured> time = (s, m) -> s.on().isPresent() ? -months.monthsBefore(s.on().get()) : 0;
        Term ofAll = terms.add(new Terms.Measure("drift of the market", Group.TIME, "% per month", drift, time));
        terms.add(months);
        Terms.Levels lines = new Terms.Levels("how far the drifts of lines differ", Group.TIME,
                Terms.Prior.secondary(terms.assumed("spread_line_drifts")), terms.seen(), LevelWords::line, time);
        if (lines.varied()) {
            terms.parts(ofAll, terms.add(lines));
        }
        if (stock.undated() > 0) {
            // The market may stand anywhere on such a day that it can have moved to between the first day seen and the last.
            terms.add(new Terms.Measure(UNDATED, Group.TIME, "%",
                    new Terms.Prior(0, months.change(Math.hypot(drift.mean(), drift.sd())), Role.PRIMARY),
                    (s, m) -> s.on().isEmpty() ? 1 : 0));
            // Days spread evenly lie about their middle, half a step from the last one, with a standard deviation of a step over root 3.
            terms.gap(UNDATED, 1 / Math.sqrt(3), s -> s.on().isEmpty(), "");
        }
        offer.addTo(terms);
        if (end.toEpochDay() - begin.toEpochDay() >= A_YEAR) {
            seasonal(terms, "season, winter against summer", Math.PI / 2, end);
            seasonal(terms, "season, spring against autumn", 0, end);
        }
    }

    /** One part of a wave through the year, zero on the last day seen, so that levels are stated as of that day. */
    private static void seasonal(ModelTerms terms, String name, double ahead, LocalDate end) {
        double[] wave = IntStream.rangeClosed(0, 366).mapToDouble(day -> StrictMath.sin(2 * Math.PI * day / Days.PER_YEAR + ahead))
                .toArray();
        double atEnd = wave[end.getDayOfYear()];
        terms.add(new Terms.Measure(name, Group.SEASON, "", new Terms.Prior(0, terms.assumed("spread_season"), Role.PRIMARY),
                (s, m) -> s.on().isPresent() ? wave[s.on().get().getDayOfYear()] - atEnd : 0));
    }
}
