package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import swapworth.market.Range;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Whether buying now is better than buying some months later. What waiting brings in h months is the fall of the own net purchase cost
 * (what is bought less what its parts bring back, each with its own movement) less the fall of the exit value, draw by draw on the same
 * states of the market. Waiting pays if a month costs less than that, a month.
 *
 * @param currency the base currency
 * @param purchaseNow draws of the net purchase cost now
 * @param exitNow draws of the exit value now
 * @param purchase draws of the net purchase cost after 1, 2, ... months
 * @param exit draws of the exit value after as many months
 * @param remarks what a reader should know of the legs
 * @param from the day from which the months count; empty where none is stated
 * @param standsBy whole sentences without which the answer in short would be misread; empty where there are none
 */
public record NowOrLater(String currency, double[] purchaseNow, double[] exitNow, List<double[]> purchase, List<double[]> exit,
        List<String> remarks, Optional<LocalDate> from, String standsBy) {
    private static final int HALF_A_YEAR = 6;
    private static final double SURE = 0.10;

    /**
     * Something bought or got, and how its price may move.
     *
     * @param name what it is
     * @param now draws of its amount now: what is bought is above 0, what comes back below 0
     * @param factors draws of the factor on it after 1, 2, ... months
     */
    public record Leg(String name, double[] now, List<double[]> factors) {

        /** Copies draws and list in and checks that the draws are as many. */
        public Leg {
            requireNonNull(name, "name");
            now = now.clone();
            factors = copied(factors);
            asMany(now.length, "the factors of '" + name + "'", factors);
        }

        @Override
        public List<double[]> factors() {
            return copied(factors);
        }

        @Override
        public double[] now() {
            return now.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Leg leg && name.equals(leg.name) && Arrays.equals(now, leg.now) && same(factors, leg.factors);
        }

        @Override
        public int hashCode() {
            return name.hashCode() * 31 + Arrays.hashCode(now);
        }

        /** What it is, its amount now with its range, and for how many months it is carried on. */
        @Override
        public String toString() {
            return name + ": now " + DrawFigures.withRange(now) + ", " + factors.size()
                    + (factors.size() == 1 ? " month" : " months") + " ahead";
        }

        /** Draws of its amount after so many months, from 1. */
        double[] after(int months) {
            double[] then = factors.get(months - 1).clone();
            for (int i = 0; i < then.length; i++) {
                then[i] *= now[i];
            }
            return then;
        }
    }

    private static List<double[]> copied(List<double[]> draws) {
        return draws.stream().map(double[]::clone).toList();
    }

    private static boolean same(List<double[]> some, List<double[]> others) {
        return Arrays.deepEquals(some.toArray(), others.toArray());
    }

    private static void asMany(int count, String what, List<double[]> draws) {
        for (int h = 1; h <= draws.size(); h++) {
            DrawFigures.asMany(count, what + " after " + h + (h == 1 ? " month" : " months"), draws.get(h - 1));
        }
    }

    /** Copies draws and lists in and checks that months and draws are as many. */
    public NowOrLater {
        purchaseNow = purchaseNow.clone();
        exitNow = exitNow.clone();
        purchase = copied(purchase);
        exit = copied(exit);
        remarks = List.copyOf(remarks);
        requireNonNull(from, "from");
        requireNonNull(standsBy, "standsBy");
        if (purchase.size() != exit.size()) {
            throw new IllegalArgumentException(purchase.size() + " months of purchase beside " + exit.size() + " of exit");
        }
        DrawFigures.asMany(exitNow.length, "the net purchase cost now", purchaseNow);
        asMany(exitNow.length, "the net purchase cost", purchase);
        asMany(exitNow.length, "the exit value", exit);
    }

    /**
     * The comparison.
     *
     * @param currency the base currency
     * @param bought what is bought, and below 0 what its parts bring back
     * @param exit the exit value
     * @param remarks what a reader should know of the legs
     * @return the comparison for as many months as the legs have factors
     * @throws IllegalArgumentException if legs have different numbers of months or draws
     */
    public static NowOrLater of(String currency, List<Leg> bought, Leg exit, List<String> remarks) {
        int months = exit.factors.size();
        double[] now = new double[exit.now.length];
        List<double[]> purchase = new ArrayList<>();
        List<double[]> out = new ArrayList<>();
        for (int h = 1; h <= months; h++) {
            purchase.add(new double[now.length]);
            out.add(exit.after(h));
        }
        for (Leg leg : bought) {
            if (leg.factors.size() != months) {
                throw new IllegalArgumentException("'" + leg.name + "': " + leg.factors.size() + " months beside the " + months + " of '"
                        + exit.name + "'");
            }
            DrawFigures.asMany(now.length, "'" + leg.name + "' beside '" + exit.name + "'", leg.now);
            now = DrawFigures.minus(now, DrawFigures.times(leg.now, -1));
            for (int h = 1; h <= months; h++) {
                purchase.set(h - 1, DrawFigures.minus(purchase.get(h - 1), DrawFigures.times(leg.after(h), -1)));
            }
        }
        return new NowOrLater(currency, now, exit.now, purchase, out, remarks, Optional.empty(), "");
    }

    /**
     * The same comparison.
     *
     * @param sentences what its answer stands by
     * @return a copy
     */
    NowOrLater standingBy(String sentences) {
        return new NowOrLater(currency, purchaseNow, exitNow, purchase, exit, remarks, from, sentences);
    }

    /**
     * The same comparison.
     *
     * @param day the day from which the months count
     * @return a copy
     */
    public NowOrLater from(LocalDate day) {
        return new NowOrLater(currency, purchaseNow, exitNow, purchase, exit, remarks, Optional.of(day), standsBy);
    }

    @Override
    public List<double[]> purchase() {
        return copied(purchase);
    }

    @Override
    public List<double[]> exit() {
        return copied(exit);
    }

    @Override
    public double[] purchaseNow() {
        return purchaseNow.clone();
    }

    @Override
    public double[] exitNow() {
        return exitNow.clone();
    }

    /**
     * How many months ahead are compared.
     *
     * @return at least 0
     */
    public int months() {
        return purchase.size();
    }

    /**
     * What waiting brings, before what it costs.
     *
     * @param months how long, 1 to {@link #months}
     * @return draws in the base currency
     */
    public double[] gain(int months) {
        int last = place(months);
        return DrawFigures.minus(DrawFigures.minus(purchaseNow, purchase.get(last)), DrawFigures.minus(exitNow, exit.get(last)));
    }

    private int place(int months) {
        if (months < 1 || months > purchase.size()) {
            throw new IllegalArgumentException("months from 1 to " + purchase.size() + " are compared, not " + months);
        }
        return months - 1;
    }

    /**
     * What a month may cost for waiting to pay, by the median.
     *
     * @param months how long
     * @return below 0 where waiting loses before it costs anything
     */
    public double paysBelow(int months) {
        return Quantiles.median(gain(months)) / months;
    }

    /**
     * How often net purchase cost and exit value move the same way.
     *
     * @param months how long
     * @return the share of draws in which both fall or both rise
     */
    public double together(int months) {
        int same = 0;
        int last = place(months);
        for (int i = 0; i < purchaseNow.length; i++) {
            same += (purchase.get(last)[i] - purchaseNow[i]) * (exit.get(last)[i] - exitNow[i]) > 0 ? 1 : 0;
        }
        return same / (double) purchaseNow.length;
    }

    /**
     * The net purchase cost at which to buy whatever happens: in nine draws of ten no month to come does better, its exit value
     * taken into account.
     *
     * @return in the base currency
     */
    public double buyWhateverHappens() {
        double[] best = new double[purchaseNow.length];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        for (int h = 0; h < purchase.size(); h++) {
            for (int i = 0; i < best.length; i++) {
                best[i] = Math.min(best[i], purchase.get(h)[i] - exit.get(h)[i] + exitNow[i]);
            }
        }
        return Quantiles.of(best, SURE);
    }

    /**
     * For how many months to wait at most: the wait that brings most by the median, before what it costs; whoever waits longer waits for
     * less, and what a month costs only shortens it.
     *
     * @return from 1 to {@link #months}; empty where by the median no wait brings anything
     */
    public OptionalInt longestWait() {
        return IntStream.rangeClosed(1, months()).filter(h -> paysBelow(h) > 0).boxed()
                .max(Comparator.comparingDouble((Integer h) -> Quantiles.median(gain(h)))).map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    /**
     * The rule to hold on to while waiting: at which price to buy whatever happens, and on which day at the latest.
     *
     * @return sentences; empty where no month is compared
     */
    public String rule() {
        if (months() == 0) {
            return "";
        }
        String price = "Buy whatever happens at a net purchase cost of " + Cell.format(buyWhateverHappens(), 0)
                + " or less: in nine draws of ten no coming month does better. ";
        OptionalInt longest = longestWait();
        if (longest.isEmpty()) {
            return price + "By the middle no wait brings anything, even before what it costs: nothing in these prices speaks for waiting.";
        }
        int most = longest.getAsInt();
        String wait = most + (most == 1 ? " month" : " months");
        return price + "If the price does not come to that, wait "
                + from.map(day -> "until " + day.plusMonths(most) + " at the latest, " + wait).orElse(wait + " at the latest")
                + ": by the middle that wait brings " + currency + " " + DrawFigures.withRange(gain(most))
                + (most == months() ? ", as far as is looked ahead" : ", and a longer one less")
                + "; what a month costs you makes the day an earlier one.";
    }

    /** How long a wait the answer in short is of. */
    int inShort() {
        return Math.min(HALF_A_YEAR, months());
    }

    /**
     * The answer for half a year, or for as many months as are compared where these are fewer.
     *
     * @return a sentence, and what it stands by; empty where no month is compared
     */
    public String sentence() {
        int wait = inShort();
        if (wait == 0) {
            return "";
        }
        double[] gain = gain(wait);
        Range near = Forecast.range(gain, 0.80);
        return "Waiting " + wait + (wait == 1 ? " month" : " months") + " to buy "
                + (Quantiles.median(gain) < 0 ? "loses " : "brings ") + currency
                + " " + Cell.format(Math.abs(Quantiles.median(gain)), 0) + " before what the wait costs you (80 % range "
                + Cell.format(near.low(), 0) + " to " + Cell.format(near.high(), 0)
                + ", below 0 where it loses): the chance that it brings anything is " + Cell.chanceInWords(DrawFigures.chance(gain)) + "."
                + (standsBy.isEmpty() ? "" : " " + standsBy);
    }

    /**
     * The comparison in figures.
     *
     * @return one row for each number of months
     */
    public List<Table> tables() {
        Table.Builder table = Table.titled("Now or later, " + currency).columns(Column.number("months", ""),
                Column.number("net purchase cost then", currency), Column.number("exit value then", currency),
                Column.number("waiting brings", currency), Column.number("80 % from", currency), Column.number("80 % to", currency),
                Column.number("pays if a month costs less than", currency), Column.number("chance that it brings something", "%"));
        table.note("Now: net purchase cost " + Cell.format(Quantiles.median(purchaseNow), 0) + ", exit value "
                + Cell.format(Quantiles.median(exitNow), 0) + " (medians). Waiting brings what the purchase falls less what the exit value"
                + " falls, draw by draw; every figure is a median of its own, so that columns do not add up to the last unit. Only you know"
                + " what a month costs you.");
        if (months() > 0) {
            int last = months();
            table.note("After " + last + (last == 1 ? " month" : " months") + " both legs have moved the same way in "
                    + Cell.chanceInWords(together(last)) + " of the draws: " + (together(last) > 0.5
                    ? "they usually move together, so that only part of a move is yours." : "as a rule they do not move together."));
            table.note(rule());
        }
        if (!standsBy.isEmpty()) {
            table.note(standsBy);
        }
        remarks.forEach(table::note);
        for (int h = 1; h <= months(); h++) {
            double[] gain = gain(h);
            Range near = Forecast.range(gain, 0.80);
            table.row(Cell.whole(h), Cell.number(Quantiles.median(purchase.get(h - 1)), 0),
                    Cell.number(Quantiles.median(exit.get(h - 1)), 0),
                    Cell.number(Quantiles.median(gain), 0), Cell.number(near.low(), 0), Cell.number(near.high(), 0),
                    paysBelow(h) > 0 ? Cell.number(paysBelow(h), 0) : Cell.words("never"), Cell.chance(DrawFigures.chance(gain)));
        }
        return List.of(table.build());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof NowOrLater choice && currency.equals(choice.currency) && Arrays.equals(purchaseNow, choice.purchaseNow)
                && Arrays.equals(exitNow, choice.exitNow) && same(purchase, choice.purchase) && same(exit, choice.exit)
                && remarks.equals(choice.remarks) && from.equals(choice.from) && standsBy.equals(choice.standsBy);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(purchaseNow) * 31 + Arrays.hashCode(exitNow);
    }

    /** {@link #sentence()}. */
    @Override
    public String toString() {
        return months() == 0 ? "now or later: no month is compared" : sentence();
    }
}
