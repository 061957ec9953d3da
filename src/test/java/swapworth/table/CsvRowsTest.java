package swapworth.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Rows written cell by cell as bytes, against java.math, java.time and java.nio.charset. */
class CsvRowsTest {

    private static String cell(double value) {
        return Cell.number(value, 0).exact();
    }

    /** The definition: the exact value, rounded half up to twelve digits, without zeros at its end and without an exponent. */
    private static String defined(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(12)).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    @Test
    void an_empty_cell_after_rows_were_let_go_is_empty() throws IOException {
        CsvRows rows = new CsvRows(10);
        rows.words("Sivrette").end();
        rows.words("Sivrette").end();
        rows.writeTo(OutputStream.nullOutputStream());
        rows.cell(new Cell("", "", Cell.Kind.NUMBER, "")).end();
        assertEquals("\r\n", rows.toString());
    }

    @Test
    void numbers_of_any_size_are_the_exact_value_to_twelve_digits() {
        Random random = new Random(8);
        for (int i = 0; i < 200_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(24) - 10);
            assertEquals(defined(value), cell(value));
        }
        for (int i = 0; i < 20_000; i++) {
            double bits = Double.longBitsToDouble(random.nextLong());
            assertEquals(Double.isFinite(bits) ? defined(bits) : "", cell(bits));
        }
    }

    @Test
    void numbers_around_powers_of_ten_and_next_to_halves_are_too() {
        Random random = new Random(9);
        for (int power = -20; power <= 20; power++) {
            for (int digit = 1; digit < 10; digit++) {
                long bits = Double.doubleToLongBits(Double.parseDouble(digit + "e" + power));
                for (long near = bits - 20; near <= bits + 20; near++) {
                    double value = Double.longBitsToDouble(near);
                    assertEquals(defined(value), cell(value));
                    assertEquals(defined(-value), cell(-value));
                }
            }
        }
        for (int i = 0; i < 100_000; i++) {
            double half = (Math.floor(random.nextDouble() * 1e12) + 0.5) * Math.pow(10, -random.nextInt(18));
            assertEquals(defined(half), cell(half));
        }
    }

    @Test
    void numbers_to_some_places_are_the_exact_value_rounded_half_up() {
        Random random = new Random(11);
        for (int places = 2; places <= 6; places += 2) {
            for (int i = 0; i < 100_000; i++) {
                double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(24) - 8);
                assertEquals(defined(value, places), cell(value, places));
                double half = (random.nextInt(2_000_000) - 1_000_000.5) / Math.pow(10, places);
                assertEquals(defined(half, places), cell(half, places));
                assertEquals(defined(Math.nextUp(half), places), cell(Math.nextUp(half), places));
            }
            for (int i = 0; i < 20_000; i++) {
                double bits = Double.longBitsToDouble(random.nextLong());
                assertEquals(Double.isFinite(bits) ? defined(bits, places) : "", cell(bits, places));
            }
            for (double value : new double[] {0, -0.0, 0.1, -0.001, 0.995, 999_999.999_999_9, 1e9, 1e15}) {
                assertEquals(defined(value, places), cell(value, places));
                assertEquals(defined(value, places), Cell.number(value, 0).exactTo(value, places).exact());
            }
        }
    }

    private static String cell(double value, int places) {
        return new CsvRows(0).number(value, places).toString();
    }

    private static String defined(double value, int places) {
        BigDecimal rounded = new BigDecimal(value).setScale(places, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    @Test
    void whole_numbers_are_written_in_full() {
        Random random = new Random(10);
        for (int i = 0; i < 50_000; i++) {
            long value = random.nextLong() >> random.nextInt(64);
            assertEquals(Long.toString(value), new CsvRows(0).whole(value).toString());
        }
        for (long value : new long[] {0, 9, 10, 99_999, 100_000, 999_999, 1_000_000, 1_000_001, Long.MAX_VALUE, Long.MIN_VALUE}) {
            assertEquals(Long.toString(value), new CsvRows(0).whole(value).toString());
        }
        assertEquals("0", cell(-0.0));
        assertEquals("", cell(Double.NaN));
    }

    @Test
    void days_are_those_of_iso_8601() {
        for (LocalDate day = LocalDate.of(1999, 12, 1); day.getYear() < 2002; day = day.plusDays(1)) {
            assertEquals(day.toString(), new CsvRows(0).day(day).toString());
        }
        for (int year : new int[] {-5, 7, 999, 1000, 9999}) {
            LocalDate day = LocalDate.of(year, 3, 4);
            assertEquals((year < 0 ? "'" : "") + day, new CsvRows(0).day(day).toString());
        }
    }

    @Test
    void words_of_any_script_are_utf_8_and_those_with_separators_are_quoted() throws IOException {
        CsvRows rows = new CsvRows(0).header(List.of(Column.words("file"), Column.number("price", "GBP")));
        for (String words : List.of("plain", "Šelvane, blue", "\uD83D\uDE97", "a \"b\"", "two\nlines", "tilde ~", "x".repeat(5000))) {
            rows.words(words).words("").number(1.5, 2).end();
        }
        rows.words("=1").words("@x").words("-").words("é=").end();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String text = rows.toString();
        rows.writeTo(out);
        assertEquals("file,price\r\nplain,,1.5\r\n\"Šelvane, blue\",,1.5\r\n\uD83D\uDE97,,1.5\r\n\"a \"\"b\"\"\",,1.5\r\n"
                + "\"two\nlines\",,1.5\r\ntilde ~,,1.5\r\n" + "x".repeat(5000) + ",,1.5\r\n'=1,'@x,'-,é=\r\n", text);
        assertEquals(text, out.toString(StandardCharsets.UTF_8));
        assertEquals("", rows.toString(), "what was handed over is forgotten");
    }
}
