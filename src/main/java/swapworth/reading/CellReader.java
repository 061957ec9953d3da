package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.Optional;
import swapworth.money.Money;

/**
 * Reads the text of single cells by stated conventions. Each method is a function of its text alone; what is ambiguous under the
 * conventions is refused with a question. The rules stand on the page of this package.
 */
public final class CellReader {

    private static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);

    private final Conventions conventions;
    private final char separator;

    /**
     * A reader for one file.
     *
     * @param conventions how the user writes numbers, dates and money
     * @param separator what separates the cells of the file: where it is a comma or a tab, {@code 12,500} groups thousands
     */
    public CellReader(Conventions conventions, char separator) {
        this.conventions = requireNonNull(conventions, "conventions");
        this.separator = separator;
    }

    /**
     * The conventions that this reader follows.
     *
     * @return as given
     */
    public Conventions conventions() {
        return conventions;
    }

    /**
     * A plain number, such as a year or a count.
     *
     * @param text the cell
     * @return the number exactly as typed; blank for nothing or a sign of not knowing; refused for anything else
     */
    public Parsed<BigDecimal> number(String text) {
        String stripped = Spelling.stripped(text);
        if (Spelling.isBlank(stripped)) {
            return Parsed.blank();
        }
        NumberText found = NumberText.of(stripped, conventions.decimalMark(), separator);
        if (found.value instanceof Parsed.Understood && !(found.before + found.after).isEmpty()) {
            return Parsed.refused("this is no number", "write the digits alone");
        }
        return found.value;
    }

    /**
     * A number that may carry a unit which adds nothing, such as {@code 88 kW} in a column of kilowatts.
     *
     * @param text the cell
     * @param unit the unit of the column
     * @return as for a number
     */
    public Parsed<BigDecimal> number(String text, String unit) {
        String stripped = Spelling.stripped(text);
        int cut = stripped.length() - unit.length();
        boolean carries = cut > 0 && stripped.regionMatches(true, cut, unit, 0, unit.length());
        return number(carries ? stripped.substring(0, cut) : stripped);
    }

    /**
     * A distance.
     *
     * @param text the cell, for instance {@code 85,000 km}, {@code 85k mi} or {@code 85000}
     * @return the number and, if the cell names it, the unit
     */
    public Parsed<Quantity> distance(String text) {
        long whole = NumberText.whole(text);
        if (whole >= 0) {
            return Parsed.understood(new Quantity(BigDecimal.valueOf(whole), Optional.empty()));
        }
        String stripped = Spelling.stripped(text);
        if (Spelling.isBlank(stripped)) {
            return Parsed.blank();
        }
        NumberText found = NumberText.of(stripped, conventions.decimalMark(), separator);
        if (!(found.value instanceof Parsed.Understood<BigDecimal> number)) {
            return found.value.map(value -> new Quantity(value, Optional.empty()));
        }
        if (NumberText.isGroupTakenForDecimals(number.value())) {
            return Parsed.refused("by the stated decimal mark this is " + number.value().toPlainString()
                    + ", and no distance of a car is told to three decimals",
                    "is " + number.value().unscaledValue() + " meant? Write it without a mark");
        }
        boolean about = !found.before.isEmpty() && isAbout(found.before);
        if (!about && !found.before.isEmpty()) {
            return Parsed.refused("this is no distance", "write the number first, then mi or km");
        }
        Optional<DistanceUnit> unit = Optional.empty();
        boolean thousands = isThousandsOfKm(found.after);
        if (!found.after.isEmpty()) {
            unit = thousands ? Optional.of(DistanceUnit.KM) : DistanceUnit.named(found.after);
            if (unit.isEmpty()) {
                return Parsed.refused("'" + Spelling.shortened(found.after, 20) + "' is no unit of distance",
                        "is it mi or km? Write the number in full, such as 165000 km");
            }
        }
        Quantity quantity = new Quantity(thousands ? number.value().multiply(THOUSAND) : number.value(), unit);
        return about ? Parsed.understood(quantity, "the row calls the distance approximate") : Parsed.understood(quantity);
    }

    /**
     * An amount of money, never negative signs guessed away: the amount keeps its sign.
     *
     * @param text the cell, for instance {@code 12500}, {@code EUR 12500}, {@code $30,000 OBO}, {@code 8.500,- €}
     * @param column the currency that the header or a currency column states, which an amount without its own is in
     * @return the amount in the currency of the cell, else of the column, else of the conventions, else US dollars
     */
    public Parsed<Money> money(String text, Optional<Currency> column) {
        return money(text, column, Optional.empty());
    }

    /**
     * The same where somebody knows the currency of amounts of which neither cell nor column says it.
     *
     * @param text the cell
     * @param column the currency that the header or a currency column states
     * @param otherwise the currency of an amount of which both are silent
     * @return the amount in the currency of the cell, else of the column, else in that one, else of the conventions, else US dollars
     */
    public Parsed<Money> money(String text, Optional<Currency> column, Optional<Currency> otherwise) {
        String stripped = Spelling.stripped(text);
        if (Spelling.isBlank(stripped)) {
            return Parsed.blank();
        }
        return MoneyText.read(stripped, column, column.or(() -> otherwise), conventions, separator);
    }

    /**
     * A day.
     *
     * @param text the cell: an ISO date, an ISO date with a time (the time is dropped), {@code 3 Apr 2024}, or digits in an order
     *        that is stated or the only one possible
     * @return the day
     */
    public Parsed<LocalDate> date(String text) {
        return DateText.read(text, conventions.dateOrder(), DateText.Detail.DAY);
    }

    /**
     * A day, a month or a year, as papers of first registration give it; a month stands for its 15th, a year for its 1 July.
     *
     * @param text the cell, for instance {@code 2015-03-20}, {@code 2015-03}, {@code 03/2015} or {@code 2015}
     * @return the day, with a remark if it stands for a month or a year
     */
    public Parsed<LocalDate> dayMonthOrYear(String text) {
        return DateText.read(text, conventions.dateOrder(), DateText.Detail.MONTH_OR_YEAR);
    }

    /**
     * Yes or no.
     *
     * @param text the cell: {@code yes}, {@code y}, {@code true}, {@code x}, {@code 1}, or {@code no}, {@code n}, {@code false},
     *        {@code 0}, in any case
     * @return whether it says yes
     */
    public static Parsed<Boolean> yesOrNo(String text) {
        if (Spelling.isBlank(text)) {
            return Parsed.blank();
        }
        return switch (Spelling.key(text)) {
            case "yes", "y", "true", "x", "1" -> Parsed.understood(true);
            case "no", "n", "false", "0" -> Parsed.understood(false);
            default -> Parsed.refused("this is neither yes nor no", "is it yes or no?");
        };
    }

    private static boolean isThousandsOfKm(String unit) {
        return switch (Spelling.key(unit)) {
            case "tkm", "tsd km", "tsd. km" -> true;
            default -> false;
        };
    }

    static boolean isAbout(String before) {
        return switch (Spelling.key(before)) {
            case "~", "\u2248", "ca", "ca.", "circa", "about", "approx", "approx.", "approximately" -> true;
            default -> false;
        };
    }
}
