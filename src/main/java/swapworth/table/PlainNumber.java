package swapworth.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;

/**
 * Numbers as machines read them, with at most twelve significant digits or a stated number of places, and no exponent: the same text
 * whatever the machine's language. A million judged rows hold ten million of them, so that their digits are found in whole numbers and
 * written as bytes; division is by multiplication, which the first tier of the compiler would not make of it.
 */
final class PlainNumber {
    /** The most bytes that a whole number, or one that needs no exact arithmetic, takes. */
    static final int ROOM = 32;

    /** Ten to the powers that double numbers hold exactly. */
    private static final double[] POWERS_OF_TEN = {1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
        1e17, 1e18};
    private static final int DIGITS = 12;
    private static final long FEWEST_UNITS = 100_000_000_000L;
    private static final long MOST_UNITS = 1_000_000_000_000L;
    private static final long MILLION = 1_000_000;

    private PlainNumber() {
    }

    /** A finite number as text. */
    static String text(double value) {
        byte[] bytes = new byte[ROOM];
        int end = write(value, bytes, 0);
        return end < 0 ? exact(value) : new String(bytes, 0, end, StandardCharsets.ISO_8859_1);
    }

    /**
     * Writes a finite number.
     *
     * @param to has {@value #ROOM} bytes of room
     * @param at where the number begins
     * @return where it ends; -1, and nothing that counts is written, where only {@link #exact} can tell its digits
     */
    static int write(double value, byte[] to, int at) {
        long whole = (long) value;
        if (whole == value && whole > -MOST_UNITS && whole < MOST_UNITS) {
            return write(whole, to, at);
        }
        double size = Math.abs(value);
        if (!(size >= 1e-6 && size < 1e9)) {
            return -1;
        }
        int before = digitsBeforePoint(size);
        double scaled = size * POWERS_OF_TEN[DIGITS - before];
        long units = (long) scaled;
        double rest = scaled - units;
        if (rest > 0.5) {
            units++;
        }
        // Next to a half the product, which is rounded, does not tell which way to round.
        if (Math.abs(rest - 0.5) <= 1e-3 || units < FEWEST_UNITS || units >= MOST_UNITS) {
            return -1;
        }
        int begin = at;
        if (value < 0) {
            to[begin++] = '-';
        }
        return before > 0 ? withPoint(units, before, to, begin) : behindPoint(units, -before, to, begin);
    }

    /** A finite number rounded to some places behind the point, zeros at the end left out. */
    static String text(double value, int places) {
        byte[] bytes = new byte[ROOM];
        int end = write(value, places, bytes, 0);
        return end < 0 ? exact(value, places) : new String(bytes, 0, end, StandardCharsets.ISO_8859_1);
    }

    /**
     * Writes a finite number rounded to some places behind the point, zeros at the end left out.
     *
     * @param places 2, 4 or 6
     * @param to has {@value #ROOM} bytes of room
     * @param at where the number begins
     * @return where it ends; -1, and nothing that counts is written, where only {@link #exact(double, int)} can tell its digits
     */
    static int write(double value, int places, byte[] to, int at) {
        double scaled = Math.abs(value) * POWERS_OF_TEN[places];
        if (!(scaled < FEWEST_UNITS)) {
            return -1;
        }
        long units = (long) scaled;
        double rest = scaled - units;
        if (Math.abs(rest - 0.5) <= 1e-3) {
            return -1;
        }
        if (rest > 0.5) {
            units++;
        }
        int begin = at;
        if (value < 0 && units > 0) {
            to[begin++] = '-';
        }
        long power = (long) POWERS_OF_TEN[places];
        long whole = units / power;
        int point = write(whole, to, begin);
        int behind = (int) (units - whole * power);
        if (behind == 0) {
            return point;
        }
        to[point] = '.';
        for (int place = point + places - 1; place > point; place -= 2) {
            int next = behind / 100;
            two(behind - 100 * next, to, place);
            behind = next;
        }
        return withoutZeros(to, point + 1 + places);
    }

    /** A finite number rounded to some places behind the point by exact arithmetic. */
    static String exact(double value, int places) {
        BigDecimal rounded = new BigDecimal(value).setScale(places, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    /** A finite number by exact arithmetic. */
    static String exact(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(DIGITS)).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
    }

    /** Writes a whole number; returns where it ends. */
    static int write(long value, byte[] to, int at) {
        if (value < 0 || value >= MOST_UNITS) {
            return value == Long.MIN_VALUE || value >= 0 ? plainly(value, to, at) : negative(value, to, at);
        }
        int end = at + digits(value);
        int place = end;
        long left = value;
        while (left >= MILLION) {
            long next = left / MILLION;
            place -= 6;
            six((int) (left - next * MILLION), to, place);
            left = next;
        }
        int small = (int) left;
        while (small >= 10) {
            int next = tenth(small);
            to[--place] = (byte) ('0' + small - 10 * next);
            small = next;
        }
        to[--place] = (byte) ('0' + small);
        return end;
    }

    private static int negative(long value, byte[] to, int at) {
        to[at] = '-';
        return write(-value, to, at + 1);
    }

    private static int plainly(long value, byte[] to, int at) {
        byte[] text = Long.toString(value).getBytes(StandardCharsets.ISO_8859_1);
        System.arraycopy(text, 0, to, at, text.length);
        return at + text.length;
    }

    private static int digits(long value) {
        int digits = 1;
        for (long power = 10; value >= power; power *= 10) {
            digits++;
        }
        return digits;
    }

    /** The digits before the point; of a number below 0.1 the zeros right behind the point, as a negative number. */
    private static int digitsBeforePoint(double size) {
        int digits = 0;
        if (size >= 1) {
            for (double power = 1; size >= power; power *= 10) {
                digits++;
            }
            return digits;
        }
        return size >= 0.1 ? 0 : size >= 0.01 ? -1 : size >= 1e-3 ? -2 : size >= 1e-4 ? -3 : size >= 1e-5 ? -4 : -5;
    }

    /** Twelve digits with a point behind some of them, zeros at the end left out. */
    private static int withPoint(long units, int before, byte[] to, int at) {
        twelve(units, to, at + 1);
        for (int k = 0; k < before; k++) {
            to[at + k] = to[at + k + 1];
        }
        to[at + before] = '.';
        int end = withoutZeros(to, at + DIGITS + 1);
        return to[end - 1] == '.' ? end - 1 : end;
    }

    private static int behindPoint(long units, int zeros, byte[] to, int at) {
        to[at] = '0';
        to[at + 1] = '.';
        int begin = at + 2;
        for (int k = 0; k < zeros; k++) {
            to[begin++] = '0';
        }
        twelve(units, to, begin);
        return withoutZeros(to, begin + DIGITS);
    }

    private static int withoutZeros(byte[] to, int end) {
        int last = end;
        while (to[last - 1] == '0') {
            last--;
        }
        return last;
    }

    private static void twelve(long units, byte[] to, int at) {
        int upper = (int) (units / MILLION);
        six(upper, to, at);
        six((int) (units - upper * MILLION), to, at + 6);
    }

    /** A number below a million as six digits. */
    private static void six(int number, byte[] to, int at) {
        int upper = (int) (number * 3_518_437_209L >>> 45);
        int lower = number - 10_000 * upper;
        int middle = (int) (lower * 1_374_389_535L >>> 37);
        two(upper, to, at);
        two(middle, to, at + 2);
        two(lower - 100 * middle, to, at + 4);
    }

    /** A number below a hundred as two digits. */
    static void two(int number, byte[] to, int at) {
        int tens = number * 103 >>> 10;
        to[at] = (byte) ('0' + tens);
        to[at + 1] = (byte) ('0' + number - 10 * tens);
    }

    /** A tenth, rounded down, of a number below a million. */
    private static int tenth(int number) {
        return (int) (number * 3_435_973_837L >>> 35);
    }
}
