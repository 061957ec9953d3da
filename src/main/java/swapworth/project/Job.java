package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.project.Entry.Status;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Table;

/**
 * Whether a job that a shop does on a customer's car is worth taking: what the customer pays (rows of the category {@code invoice}) less
 * what the work costs, less a reserve for what must be put right afterwards (assumption {@code warranty_reserve}, a share of what is
 * paid), and with own hours at a rate ({@code own_hour_rate}). All of it draw by draw, invoices to come being drawn apart from the costs;
 * amounts are in the base currency.
 *
 * @param currency the base currency
 * @param on the day of the ledger
 * @param paid what the customer has paid so far, less what went back
 * @param pays m draws of what the customer will have paid when the job is done
 * @param costs m draws of what the work costs in cash when it is done
 * @param reserveShare m draws of the share of what is paid that is kept for what must be put right, from 0 to below 1
 * @param hours m draws of own hours
 * @param rate the stated rate of an hour, in the base currency
 */
public record Job(String currency, LocalDate on, BigDecimal paid, double[] pays, double[] costs, double[] reserveShare, double[] hours,
        double rate) {
    /** How often the least to ask for is enough. */
    private static final double ENOUGH = 0.90;
    private static final double LARGEST_SHARE = 0.95;

    /**
     * Copies the draws in.
     *
     * @throws IllegalArgumentException if they are not as many, or one is no finite number
     */
    public Job {
        requireNonNull(on, "on");
        requireNonNull(paid, "paid");
        pays = pays.clone();
        costs = costs.clone();
        reserveShare = reserveShare.clone();
        hours = hours.clone();
        DrawFigures.asMany(pays.length, "what the customer pays", pays);
        DrawFigures.asMany(pays.length, "what the work costs", costs);
        DrawFigures.asMany(pays.length, "the share of the reserve", reserveShare);
        DrawFigures.asMany(pays.length, "own hours", hours);
    }

    /** The job of a ledger with invoices. */
    static Job of(Forecast forecast) {
        Ledger ledger = forecast.ledger();
        Assumptions assumptions = forecast.options().assumptions();
        BigDecimal paid = ledger.nothing();
        for (Entry invoice : ledger.invoices()) {
            paid = invoice.status() == Status.ACTUAL ? paid.subtract(invoice.cash()) : paid;
        }
        // Of invoices what comes in is below 0.
        double[] pays = DrawFigures.times(RowsToCome.sum(ledger.invoices(), forecast.options()), -1);
        for (int i = 0; i < pays.length; i++) {
            pays[i] += paid.doubleValue();
        }
        double[] share = DrawFigures.shares(assumptions.get("warranty_reserve"), LARGEST_SHARE, pays.length,
                forecast.options().seed() ^ 0x5d0L);
        return new Job(ledger.currency().getCurrencyCode(), ledger.on(), paid, pays, forecast.charged(), share, forecast.hours(),
                assumptions.get("own_hour_rate").middle());
    }

    @Override
    public double[] pays() {
        return pays.clone();
    }

    @Override
    public double[] costs() {
        return costs.clone();
    }

    @Override
    public double[] reserveShare() {
        return reserveShare.clone();
    }

    @Override
    public double[] hours() {
        return hours.clone();
    }

    /**
     * What is kept for what must be put right afterwards.
     *
     * @return m draws in the base currency, at least 0
     */
    public double[] reserve() {
        return each(i -> reserveShare[i] * Math.max(0, pays[i]));
    }

    /**
     * What the job leaves in cash: paid by the customer less costs and reserve.
     *
     * @return m draws in the base currency; below 0 for a loss
     */
    public double[] margin() {
        return DrawFigures.minus(DrawFigures.minus(pays, costs), reserve());
    }

    /**
     * What the job leaves when own hours are paid at the stated rate.
     *
     * @return m draws in the base currency
     */
    public double[] withHours() {
        return DrawFigures.minus(margin(), DrawFigures.times(hours, rate));
    }

    /**
     * What an own hour brings.
     *
     * @return m draws in the base currency an hour; none where there are no hours
     */
    public double[] anHourBrings() {
        double[] margin = margin();
        return Arrays.stream(hours).allMatch(h -> h > 0) ? each(i -> margin[i] / hours[i]) : new double[0];
    }

    /**
     * The least to ask for such a job: (costs + hours at the stated rate) / (1 - share of the reserve), nine times in ten enough.
     *
     * @return in the base currency, at least 0
     */
    public double leastToAsk() {
        return Math.max(0, Quantiles.of(each(i -> (costs[i] + hours[i] * rate) / (1 - reserveShare[i])), ENOUGH));
    }

    private double[] each(IntToDoubleFunction of) {
        return IntStream.range(0, pays.length).mapToDouble(of).toArray();
    }

    /**
     * What the job leaves, and what it should have been quoted at.
     *
     * @return sentences
     */
    public String sentence() {
        double[] brings = anHourBrings();
        return "The job leaves " + currency + " " + DrawFigures.withRange(margin()) + " in cash"
                + (brings.length == 0 ? "; the ledger has no own hours, so that nothing tells what an hour brings"
                        : ", an hour of yours " + DrawFigures.withRange(brings) + "; at " + Cell.format(rate, 2)
                        + " an hour the chance that it was worth taking is " + Cell.chanceInWords(DrawFigures.chance(withHours())))
                + ". Such a job would have to be quoted" + (brings.length == 0 ? ", without your hours," : "") + " at "
                + Cell.format(leastToAsk(), 0) + " or more to be worth it nine times in ten.";
    }

    /**
     * The job in figures.
     *
     * @return what is paid, what it costs, the reserve, and what is left
     */
    public Table table() {
        Table.Builder table = DrawFigures.ranged("What the job leaves, " + currency + ", as of " + on, currency);
        table.note(sentence());
        table.note("So far the customer has paid " + Cell.amount(paid).shown() + ". The car is the customer's: its value is in none of"
                + " this. What money costs until it is paid is not in it, nor tax. Of a tool only the share that its row charges is a cost:"
                + " the rest stays with you. The reserve for what must be put right afterwards is an assumption (warranty_reserve, a share"
                + " of what the customer pays): set it by what your own jobs came back with.");
        DrawFigures.row(table, "the customer pays", pays);
        DrawFigures.row(table, "the work costs in cash", costs);
        DrawFigures.row(table, "kept for what must be put right", reserve());
        DrawFigures.row(table, "left in cash", margin());
        if (anHourBrings().length > 0) {
            DrawFigures.row(table, "left with own hours at " + Cell.format(rate, 2) + " each", withHours());
        }
        return table.build();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Job job && currency.equals(job.currency) && on.equals(job.on) && paid.compareTo(job.paid) == 0
                && Arrays.equals(pays, job.pays) && Arrays.equals(costs, job.costs) && Arrays.equals(reserveShare, job.reserveShare)
                && Arrays.equals(hours, job.hours) && Double.compare(rate, job.rate) == 0;
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(pays) * 31 + Arrays.hashCode(costs);
    }

    /** {@link #sentence()}. */
    @Override
    public String toString() {
        return sentence();
    }
}
