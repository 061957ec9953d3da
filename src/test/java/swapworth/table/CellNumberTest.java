package swapworth.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.MathContext;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The numbers of cells against java.text.DecimalFormat and java.math.BigDecimal, which round the exact value. */
class CellNumberTest {

    private static double any(Random random) {
        double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(18) - 5);
        return switch (random.nextInt(5)) {
            case 0 -> Math.rint(value) + 0.5;
            case 1 -> Math.rint(value * 200) / 200;
            case 2 -> 0.9999999999999 * Math.pow(10, random.nextInt(9));
            default -> value;
        };
    }

    @Test
    void an_exact_amount_shows_all_decimals_that_it_has() {
        assertEquals(new Cell("12,340.50", "12340.50", Cell.Kind.NUMBER, ""), Cell.amount(new BigDecimal("12340.50")));
        assertEquals("-700", Cell.amount(new BigDecimal("-700")).shown());
        assertEquals("1,200", Cell.amount(new BigDecimal("12E2")).shown());
    }

    @Test
    void a_number_that_somebody_stated_shows_the_decimals_that_it_has_and_four_at_most() {
        assertEquals("25", Cell.stated(25).shown());
        assertEquals("0.5", Cell.stated(0.5).shown());
        assertEquals("-1,234.25", Cell.stated(-1_234.25).shown());
        assertEquals("0.3333", Cell.stated(1.0 / 3).shown());
        assertEquals("0.1", Cell.stated(0.1).shown());
        assertEquals("1,000,000", Cell.stated(1e6).shown());
        assertEquals(Cell.BLANK, Cell.stated(Double.POSITIVE_INFINITY));
    }

    @Test
    void shown_numbers_are_those_of_javas_own_format() {
        Random random = new Random(3);
        for (int i = 0; i < 100_000; i++) {
            double value = any(random);
            int decimals = random.nextInt(4);
            DecimalFormat format = new DecimalFormat("#,##0", DecimalFormatSymbols.getInstance(Locale.ROOT));
            format.setMinimumFractionDigits(decimals);
            format.setMaximumFractionDigits(decimals);
            String expected = format.format(value);
            boolean zero = expected.chars().noneMatch(c -> c >= '1' && c <= '9');
            assertEquals(zero ? expected.replace("-", "") : expected, Cell.format(value, decimals), value + " to " + decimals);
        }
    }

    @Test
    void exact_numbers_are_the_value_to_twelve_digits() {
        Random random = new Random(4);
        for (int i = 0; i < 100_000; i++) {
            double value = any(random);
            String exact = Cell.number(value, 0).exact();
            assertEquals(0, new BigDecimal(value).round(new MathContext(12)).compareTo(new BigDecimal(exact)),
                    () -> value + " as " + exact);
        }
        assertEquals("-0.5", Cell.number(-0.5, 1).exact());
        assertEquals("0.1", Cell.number(0.1, 1).exact());
        assertEquals("1250", Cell.number(1250, 1).exact());
        assertEquals("0", Cell.number(-0.0, 1).exact());
    }

    @Test
    void a_number_that_rounds_to_zero_has_no_sign() {
        assertEquals("0.0", Cell.format(-0.04, 1));
        assertEquals("0", Cell.format(-0.5, 0));
        assertEquals("-1", Cell.format(-0.51, 0));
        assertEquals("1,234,567.9", Cell.format(1_234_567.85, 1));
        assertEquals("12,345,678,901,234,567,168.00", Cell.format(1.2345678901234567e19, 2));
    }
}
