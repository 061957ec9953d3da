package swapworth.listing;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntUnaryOperator;
import swapworth.statistics.Ranges;

/**
 * Advertisements, numbered from 0: each the sightings of one id, or one row without an id, with what is compared laid out in columns.
 * Of what may change between sightings the latest known word counts.
 */
final class Advertisements {

    /** The rows of advertisements, those of one together and in the order of their days; where each begins, and where the last ends. */
    record Rows(int[] rows, int[] begin) {

        int count() {
            return begin.length - 1;
        }
    }

    /** Day 0 in years. */
    private static final double FIRST_DAY = 1970;
    private static final double MOST_BY_ROUNDING = 1.1;

    final ListingColumns columns;
    /** The model year; 0 if it is not known. */
    final int[] modelYear;
    /** The year of first registration; 0 if it is not known. */
    final int[] yearRegistered;
    /**
     * When a car was new of which no year is known but an age on its day, in years; where it has no day its age counted back from 0, and
     * so not above 0. Not a number for all others.
     */
    final float[] born;
    /** The number of the trim, 0 for none; of the region likewise. */
    final int[] trim;
    final int[] region;
    /** The numbers of the source, note and options: 0 for none, -1 for a text that no other row shares the number of. */
    final int[] source;
    final int[] note;
    final int[] options;
    /** Mileages; not a number if no row gives one. */
    final double[] firstMiles;
    final double[] lastMiles;
    final double[] firstPrice;
    final double[] lastPrice;
    final boolean[] dated;
    final int[] firstDay;
    final int[] lastDay;
    /** What a shared note is worth, by its number; shared options likewise. */
    final TextPoints notePoints;
    final TextPoints optionPoints;
    private final Rows rows;
    private final int[] members;

    /**
     * The advertisements of all lines, line by line. Rows are gone through in the order in which they are kept: those of a line lie far
     * apart, and to look them up line by line costs several times as much.
     *
     * @param members the places of the advertisements among all, in the order in which they are to be numbered
     */
    Advertisements(ListingColumns columns, Rows rows, int[] members) {
        this.columns = columns;
        this.rows = rows;
        this.members = members;
        int n = members.length;
        modelYear = new int[n];
        yearRegistered = new int[n];
        born = new float[n];
        trim = new int[n];
        region = new int[n];
        source = new int[n];
        note = new int[n];
        options = new int[n];
        firstMiles = new double[n];
        lastMiles = new double[n];
        firstPrice = new double[n];
        lastPrice = new double[n];
        dated = new boolean[n];
        firstDay = new int[n];
        lastDay = new int[n];
        int[] numberOf = new int[n];
        for (int i = 0; i < n; i++) {
            numberOf[members[i]] = i;
        }
        Ranges.each(n, (from, to) -> {
            for (int k = from; k < to; k++) {
                layOut(numberOf[k]);
            }
        });
        notePoints = new TextPoints(this, columns.note, note);
        optionPoints = new TextPoints(this, columns.options, options);
    }

    private void layOut(int i) {
        int first = firstRow(i);
        int last = lastRow(i);
        modelYear[i] = latestYear(columns::modelYear, i);
        yearRegistered[i] = latestYear(columns::yearRegistered, i);
        born[i] = born(i);
        trim[i] = unlessEmpty(columns.trim, latest(columns.trim, i));
        region[i] = unlessEmpty(columns.region, latest(columns.region, i));
        source[i] = columns.source.code(first);
        note[i] = columns.note.code(first);
        options[i] = columns.options.code(rowOfOptions(i));
        miles(i);
        firstPrice[i] = columns.amount(first);
        lastPrice[i] = first == last ? firstPrice[i] : columns.amount(last);
        dated[i] = columns.isDated(first);
        firstDay[i] = dated[i] ? columns.day(first) : 0;
        lastDay[i] = !dated[i] ? 0 : first == last ? firstDay[i] : columns.day(last);
    }

    private Advertisements(Advertisements all, int from, int to) {
        columns = all.columns;
        rows = all.rows;
        members = Arrays.copyOfRange(all.members, from, to);
        modelYear = Arrays.copyOfRange(all.modelYear, from, to);
        yearRegistered = Arrays.copyOfRange(all.yearRegistered, from, to);
        born = Arrays.copyOfRange(all.born, from, to);
        trim = Arrays.copyOfRange(all.trim, from, to);
        region = Arrays.copyOfRange(all.region, from, to);
        source = Arrays.copyOfRange(all.source, from, to);
        note = Arrays.copyOfRange(all.note, from, to);
        options = Arrays.copyOfRange(all.options, from, to);
        firstMiles = Arrays.copyOfRange(all.firstMiles, from, to);
        lastMiles = Arrays.copyOfRange(all.lastMiles, from, to);
        firstPrice = Arrays.copyOfRange(all.firstPrice, from, to);
        lastPrice = Arrays.copyOfRange(all.lastPrice, from, to);
        dated = Arrays.copyOfRange(all.dated, from, to);
        firstDay = Arrays.copyOfRange(all.firstDay, from, to);
        lastDay = Arrays.copyOfRange(all.lastDay, from, to);
        notePoints = all.notePoints;
        optionPoints = all.optionPoints;
    }

    /** Some of them that follow one another, numbered from 0. */
    Advertisements part(int from, int to) {
        return new Advertisements(this, from, to);
    }

    private static int unlessEmpty(Values<Optional<String>> column, int code) {
        return code == 0 || column.of(code).orElse("").isEmpty() ? 0 : code;
    }

    private int latestYear(IntUnaryOperator yearOfRow, int i) {
        for (int k = rows.begin[members[i] + 1] - 1; k >= rows.begin[members[i]]; k--) {
            int its = yearOfRow.applyAsInt(rows.rows[k]);
            if (its != 0) {
                return its;
            }
        }
        return 0;
    }

    /** A number that is equal for those of one model year, else of one year of registration; these lie below 0. 0 if neither is known. */
    int year(int i) {
        return modelYear[i] != 0 ? modelYear[i] : -yearRegistered[i];
    }

    /**
     * Whether what is known of two years cannot be said of one car: another model year; without that, another year of registration; or
     * a model year and a year of registration that lie more than a year apart. 0 stands for a year that is not known.
     */
    static boolean yearsClash(int modelYear, int registered, int otherModelYear, int otherRegistered) {
        if (modelYear != 0 && otherModelYear != 0) {
            return modelYear != otherModelYear;
        }
        if (registered != 0 && otherRegistered != 0) {
            return registered != otherRegistered;
        }
        return areFar(modelYear, otherRegistered) || areFar(otherModelYear, registered);
    }

    private float born(int i) {
        for (int k = rows.begin[members[i] + 1] - 1; k >= rows.begin[members[i]] && year(i) == 0; k--) {
            int row = rows.rows[k];
            OptionalDouble age = columns.ageYears.get(row);
            if (age.isPresent()) {
                return (float) ((columns.isDated(row) ? FIRST_DAY + columns.day(row) / Days.PER_YEAR : 0) - age.getAsDouble());
            }
        }
        return Float.NaN;
    }

    /** Whether two cars known by their ages alone were new at other times; a year apart is the rounding to whole years. */
    static boolean agesClash(float born, float other) {
        return born > 0 == other > 0 && Math.abs(born - other) > MOST_BY_ROUNDING;
    }

    private static boolean areFar(int modelYear, int registered) {
        return modelYear != 0 && registered != 0 && Math.abs(modelYear - registered) > 1;
    }

    private void miles(int i) {
        double from = Double.NaN;
        double to = Double.NaN;
        for (int k = rows.begin[members[i]]; k < rows.begin[members[i] + 1]; k++) {
            double its = columns.miles(rows.rows[k]);
            if (!Double.isNaN(its)) {
                to = its;
                from = Double.isNaN(from) ? its : from;
            }
        }
        firstMiles[i] = from;
        lastMiles[i] = to;
    }

    int count() {
        return members.length;
    }

    int firstRow(int i) {
        return rows.rows[rows.begin[members[i]]];
    }

    int lastRow(int i) {
        return rows.rows[rows.begin[members[i] + 1] - 1];
    }

    /** The rows of an advertisement, in the order of their days. */
    int[] rows(int i) {
        return Arrays.copyOfRange(rows.rows, rows.begin[members[i]], rows.begin[members[i] + 1]);
    }

    /** The number of the latest known value of a column; 0 if none is known. */
    int latest(Values<?> column, int i) {
        for (int k = rows.begin[members[i] + 1] - 1; k >= rows.begin[members[i]]; k--) {
            int code = column.code(rows.rows[k]);
            if (code != 0) {
                return code;
            }
        }
        return 0;
    }

    /** The latest known measure of a column as a number that is equal for equal measures; 0 if none is known. */
    long latest(Measured column, int i) {
        for (int k = rows.begin[members[i] + 1] - 1; k >= rows.begin[members[i]]; k--) {
            long code = column.code(rows.rows[k]);
            if (code != 0) {
                return code;
            }
        }
        return 0;
    }

    /** The row with the latest known options; the last row if none has any. */
    int rowOfOptions(int i) {
        for (int k = rows.begin[members[i] + 1] - 1; k >= rows.begin[members[i]]; k--) {
            if (columns.options.has(rows.rows[k])) {
                return rows.rows[k];
            }
        }
        return lastRow(i);
    }

    /** The further columns of an advertisement, by name. */
    Map<String, String> further(int i) {
        if (!columns.hasFurther()) {
            return Map.of();
        }
        Map<String, String> all = new HashMap<>();
        for (int k = rows.begin[members[i]]; k < rows.begin[members[i] + 1]; k++) {
            all.putAll(columns.further(rows.rows[k]));
        }
        return all;
    }

    Origin origin(int i) {
        return columns.origin(firstRow(i));
    }
}
