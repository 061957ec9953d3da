package swapworth.statistics;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Reads the plain CSV files of reference data; no cell of theirs holds a comma. */
public final class Reference {
    private final List<String> header;
    private final List<String[]> rows;

    private Reference(List<String> header, List<String[]> rows) {
        this.header = header;
        this.rows = rows;
    }

    public static Reference read(String path) {
        try (var in = Reference.class.getResourceAsStream("/reference/" + path)) {
            if (in == null) {
                throw new IllegalArgumentException("no reference data at " + path);
            }
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().map(l -> l.replace("\"", "")).toList();
            List<String[]> rows = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                rows.add(line.split(",", -1));
            }
            return new Reference(Arrays.asList(lines.get(0).split(",")), rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public int rows() {
        return rows.size();
    }

    public String text(int row, String column) {
        return rows.get(row)[header.indexOf(column)];
    }

    public double number(int row, String column) {
        return Double.parseDouble(text(row, column));
    }

    public double[] numbers(String column) {
        double[] numbers = new double[rows()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = number(i, column);
        }
        return numbers;
    }

    /** The rows in which a column has the stated text. */
    public Reference where(String column, String text) {
        int at = header.indexOf(column);
        return new Reference(header, rows.stream().filter(r -> r[at].equals(text)).toList());
    }

    /** Digits of agreement: the negative common logarithm of the relative error, at most 16. */
    public static double digits(double found, double expected) {
        return found == expected ? 16 : Math.min(16, -Math.log10(Math.abs(found - expected) / Math.abs(expected)));
    }
}
