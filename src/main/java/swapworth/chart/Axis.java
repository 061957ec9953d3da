package swapworth.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import swapworth.listing.Days;
import swapworth.table.Cell;

/**
 * An axis: its ends, chosen on purpose, and its ticks with the words beside them. Ends and ticks are in units of the axis:
 * logarithms to base 10 on a logarithmic one, days since 1970-01-01 on one of dates.
 *
 * @param scale how values become places
 * @param min the low end, below {@code max}
 * @param max the high end
 * @param ticks the ticks, ascending
 * @param labels the words of each tick
 */
record Axis(ValueScale scale, double min, double max, double[] ticks, List<String> labels) {

    private static final String[] MONTHS = {"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    private static final int[] MONTH_STEPS = {1, 2, 3, 6, 12};
    private static final double[] FIRST_DIGITS = {1, 2, 5, 3, 7, 1.5};
    private static final double PAD = 0.04;

    /** The place of a value: NaN where it has none. */
    double at(double value) {
        if (!Extent.isDrawable(value)) {
            return Double.NaN;
        }
        return scale == ValueScale.LINEAR ? value : value > 0 ? Math.log10(value) : Double.NaN;
    }

    /** A place below the low end, for a value that is no higher than zero. */
    double belowAll(double value) {
        return scale == ValueScale.LINEAR ? value : min - (max - min);
    }

    double[] at(double[] values) {
        double[] places = new double[values.length];
        for (int i = 0; i < places.length; i++) {
            places[i] = at(values[i]);
        }
        return places;
    }

    boolean holds(double place) {
        return place >= min && place <= max;
    }

    /** The place, or the end of the axis that is nearest to it, a little inside, so that a mark there shows whole. */
    double clamp(double place) {
        double inset = 0.012 * (max - min);
        return place < min ? min + inset : place > max ? max - inset : place;
    }

    /** How far along the axis, 0 to 1. */
    double fraction(double place) {
        return (place - min) / (max - min);
    }

    /** An axis for values from {@code low} to {@code high}. */
    static Axis of(ValueScale scale, double low, double high, int mostTicks) {
        return scale == ValueScale.LOGARITHMIC && low > 0 ? logarithmic(low, high, mostTicks) : linear(low, high, mostTicks);
    }

    /**
     * A linear axis. It begins at zero when the lowest value is under a third of the highest, for then the empty part costs
     * little and lengths can be compared; otherwise it gets a small margin on both sides.
     */
    private static Axis linear(double low, double high, int mostTicks) {
        return low >= 0 && low < high / 3 ? between(0, high * (1 + PAD), mostTicks) : withMargins(low, high, mostTicks);
    }

    /** A linear axis with a small margin on both sides, a large one if all is in one place. */
    static Axis withMargins(double low, double high, int mostTicks) {
        boolean apart = high - low > 1e-9 * Math.max(Math.abs(low), Math.abs(high));
        double room = apart ? PAD * (high - low) : low == 0 ? 1 : Math.abs(low) * 0.1;
        return between(low - room, high + room, mostTicks);
    }

    /** A linear axis with these very ends. */
    static Axis between(double min, double max, int mostTicks) {
        double step = niceStep((max - min) / mostTicks);
        int decimals = (int) Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
        List<String> labels = new ArrayList<>();
        double[] ticks = multiples(min, max, step);
        for (double tick : ticks) {
            labels.add(Cell.format(tick, decimals));
        }
        return new Axis(ValueScale.LINEAR, min, max, ticks, labels);
    }

    private static double[] multiples(double min, double max, double step) {
        long first = (long) Math.ceil(min / step - 1e-9);
        long last = (long) Math.floor(max / step + 1e-9);
        double[] ticks = new double[(int) (last - first + 1)];
        for (int i = 0; i < ticks.length; i++) {
            ticks[i] = (first + i) * step;
        }
        return ticks;
    }

    /** The smallest of 1, 2, 5 times a power of ten that is no smaller than this. */
    private static double niceStep(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        double digit = least / power;
        return power * (digit <= 1 + 1e-9 ? 1 : digit <= 2 + 1e-9 ? 2 : digit <= 5 + 1e-9 ? 5 : 10);
    }

    private static Axis logarithmic(double low, double high, int mostTicks) {
        double room = Math.max(0.02, PAD * Math.log10(high / low));
        double min = Math.log10(low) - room;
        double max = Math.log10(high) + room;
        double gap = (max - min) / (mostTicks * 1.4);
        TreeMap<Double, String> ticks = new TreeMap<>();
        if (max - min > 0.5) {
            // The rounder digits first, so that a crowded axis keeps them.
            for (double digit : FIRST_DIGITS) {
                for (int power = (int) Math.floor(max); power >= (int) Math.floor(min); power--) {
                    double place = Math.log10(digit) + power;
                    if (place >= min && place <= max && hasRoom(ticks, place, gap)) {
                        int decimals = Math.max(0, digit == Math.rint(digit) ? -power : 1 - power);
                        ticks.put(place, Cell.format(digit * Math.pow(10, power), decimals));
                    }
                }
            }
        } else {
            Axis even = linear(low, high, mostTicks);
            for (int i = 0; i < even.ticks.length; i++) {
                double place = Math.log10(even.ticks[i]);
                if (place >= min && place <= max && hasRoom(ticks, place, gap)) {
                    ticks.put(place, even.labels.get(i));
                }
            }
        }
        double[] places = new double[ticks.size()];
        int n = 0;
        for (double place : ticks.keySet()) {
            places[n++] = place;
        }
        return new Axis(ValueScale.LOGARITHMIC, min, max, places, List.copyOf(ticks.values()));
    }

    private static boolean hasRoom(TreeMap<Double, String> ticks, double place, double gap) {
        Double below = ticks.floorKey(place);
        Double above = ticks.ceilingKey(place);
        return (below == null || place - below >= gap) && (above == null || above - place >= gap);
    }

    /** An axis of dates, ticked at firsts of months, or at days when it spans less than two months. */
    static Axis dates(LocalDate first, LocalDate last, int mostTicks) {
        double min = first.toEpochDay();
        double max = last.toEpochDay();
        if (min == max) {
            min -= 3;
            max += 3;
        } else {
            double room = 0.015 * (max - min);
            min -= room;
            max += room;
        }
        return max - min < 62 ? days(min, max, mostTicks) : months(min, max, mostTicks);
    }

    private static Axis days(double min, double max, int mostTicks) {
        double step = Math.max(1, niceStep((max - min) / mostTicks));
        double[] ticks = multiples(min, max, step);
        List<String> labels = new ArrayList<>();
        for (double tick : ticks) {
            LocalDate day = LocalDate.ofEpochDay((long) tick);
            labels.add(day.getDayOfMonth() + " " + MONTHS[day.getMonthValue() - 1]
                    + (labels.isEmpty() ? " " + day.getYear() : ""));
        }
        return new Axis(ValueScale.LINEAR, min, max, ticks, labels);
    }

    private static Axis months(double min, double max, int mostTicks) {
        int step = monthStep((max - min) / Days.PER_MONTH / mostTicks);
        LocalDate first = LocalDate.ofEpochDay((long) Math.ceil(min));
        long count = first.getYear() * 12L + first.getMonthValue() - (first.getDayOfMonth() == 1 ? 1 : 0);
        Places ticks = new Places();
        List<String> labels = new ArrayList<>();
        for (count = Math.floorDiv(count + step - 1, step) * step;; count += step) {
            LocalDate month = LocalDate.of((int) Math.floorDiv(count, 12L), (int) Math.floorMod(count, 12L) + 1, 1);
            if (month.toEpochDay() > max) {
                return new Axis(ValueScale.LINEAR, min, max, ticks.x(), labels);
            }
            boolean withYear = labels.isEmpty() || month.getMonthValue() == 1;
            labels.add(step >= 12 ? Integer.toString(month.getYear())
                    : MONTHS[month.getMonthValue() - 1] + (withYear ? " " + month.getYear() : ""));
            ticks.add(month.toEpochDay(), 0);
        }
    }

    /** The round number of months that is no less than this. */
    private static int monthStep(double least) {
        for (int step : MONTH_STEPS) {
            if (step >= least) {
                return step;
            }
        }
        return 12 * (int) Math.round(niceStep(Math.max(1, least / 12)));
    }

    /** An axis of rows, the first on top; their names stand beside the plot. */
    static Axis rows(int rows) {
        return new Axis(ValueScale.LINEAR, -0.5, rows - 0.5, new double[0], List.of());
    }
}
