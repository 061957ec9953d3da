package swapworth.listing;

import java.time.LocalDate;
import java.util.BitSet;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.money.Conversion;
import swapworth.money.Money;
import swapworth.money.Rates;
import swapworth.reading.DistanceUnit;
import swapworth.reading.RowProblem;

/**
 * The rows that a model may use, as far as a row by itself can tell, and what is still to be asked of each once all are known: its price
 * in the base currency, and whether its car may be of its year.
 */
final class KeptRows {
    /** The rows, each price still in the currency in which it was typed. */
    final ListingColumns columns = new ListingColumns();
    private final Findings findings;
    private final Rates stated;
    private final Values<Rates> ratesOfFolder;
    /** The price cells as long as they may be asked for, where they are not the plain amount. */
    private Texts priceTexts = new Texts(0);
    /** What is odd about a row, by its place among them. */
    private final Map<Integer, List<RowProblem>> odditiesOf = new HashMap<>();
    /** The rows of which it holds something: most hold nothing, and are not looked up. */
    private final BitSet odd = new BitSet();
    private int mileages;
    private int mileagesInKm;

    /**
     * Begins without rows.
     *
     * @param stated exchange rates, used where the folder of a row has none
     * @param findings where rows are set aside that are not to be used after all
     */
    KeptRows(Rates stated, Findings findings) {
        this.stated = stated;
        this.findings = findings;
        this.ratesOfFolder = new Values<>(stated);
    }

    /** Keeps a row that has a price. */
    void keep(Draft draft, Rates ofFolder) {
        int row = columns.size();
        boolean hasMileage = draft.facts.mileage.isPresent();
        mileages += hasMileage ? 1 : 0;
        mileagesInKm += hasMileage && draft.unit == DistanceUnit.KM ? 1 : 0;
        if (!draft.oddities.isEmpty()) {
            odditiesOf.put(row, draft.oddities);
            odd.set(row);
        }
        if (!draft.asked.isPlain()) {
            priceTexts.set(row, Optional.of(draft.asked.text()));
        }
        ratesOfFolder.set(row, ofFolder);
        columns.add(draft, draft.asked.money().orElseThrow());
    }

    int size() {
        return columns.size();
    }

    /** What is odd about a row is told once it is sure to be used. */
    void tellOddities(int row) {
        if (odd.get(row)) {
            findings.oddities.addAll(odditiesOf.getOrDefault(row, List.of()));
        }
    }

    /** Puts the price of a row into the base currency; the row is set aside where there is no rate. */
    boolean isInBase(int row, Currency base) {
        if (columns.currency(row).equals(base)) {
            return true;
        }
        Money typed = columns.price(row).typed();
        Conversion conversion = inBase(typed, base, columns.seenOn(row), ratesOfFolder.get(row));
        if (conversion instanceof Conversion.Converted converted) {
            columns.setAmount(row, converted.amount().doubleValue());
            return true;
        }
        findings.setAside(columns.origin(row), "price", priceTexts.get(row).orElse(typed.amount().toPlainString()),
                ((Conversion.NoRate) conversion).reason());
        return false;
    }

    private Conversion inBase(Money typed, Currency base, Optional<LocalDate> day, Rates ofFolder) {
        if (day.isEmpty()) {
            return new Conversion.NoRate("the price is in " + typed.currency().getCurrencyCode()
                    + " and the row has no day (seen_on) at which to convert it to " + base.getCurrencyCode());
        }
        Conversion conversion = ofFolder.convert(typed, base, day.get());
        Conversion other = stated.convert(typed, base, day.get());
        return conversion instanceof Conversion.NoRate && other instanceof Conversion.Converted ? other : conversion;
    }

    /** A row without a day was seen on one of the days of the others; its car is set aside where it is of a year after them. */
    boolean isOfYearToCome(int row, Optional<LocalDate> last) {
        if (last.isEmpty() || columns.isDated(row)) {
            return false;
        }
        if (columns.modelYear(row) > last.get().getYear() + 1) {
            findings.setAside(columns.origin(row), "model_year", Integer.toString(columns.modelYear(row)),
                    "the model year lies more than a year after the last day seen, " + last.get());
            return true;
        }
        if (columns.yearRegistered(row) > last.get().getYear()) {
            findings.setAside(columns.origin(row), "first_registered", Integer.toString(columns.yearRegistered(row)),
                    "the first registration lies after the last day seen, " + last.get());
            return true;
        }
        return false;
    }

    /** Prices as they were typed are asked for no more. */
    void letGoOfPriceTexts() {
        priceTexts = new Texts(0);
    }

    /** The unit in which most mileages were written; of rows without one, nothing. */
    Optional<DistanceUnit> mostFrequentUnit() {
        return mileages == 0 ? Optional.empty() : Optional.of(2 * mileagesInKm > mileages ? DistanceUnit.KM : DistanceUnit.MI);
    }
}
