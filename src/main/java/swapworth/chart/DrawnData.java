package swapworth.chart;

import java.util.ArrayList;
import java.util.List;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** Collects the table behind a picture: columns of words, then columns of numbers. Columns without any entry are left out. */
final class DrawnData {
    private final String title;
    private final List<String> words;
    private final List<String> numbers;
    private final List<String[]> wordRows = new ArrayList<>();
    private final List<double[]> numberRows = new ArrayList<>();

    /**
     * Begins.
     *
     * @param title title of the chart
     * @param words heads of the columns of words
     * @param numbers heads of the columns of numbers, each with its unit after the last comma, if it has one
     */
    DrawnData(String title, List<String> words, List<String> numbers) {
        this.title = title;
        this.words = words;
        this.numbers = numbers;
    }

    /** Of points in groups, each with a note of its own where it has one. */
    static DrawnData ofPoints(String title, List<String> numbers) {
        return new DrawnData(title, List.of("drawn as", "note"), numbers);
    }

    /** One of the points of a group. */
    void point(String group, List<String> labels, int place, double... values) {
        row(new String[] {group, labels.isEmpty() ? "" : labels.get(place)}, values);
    }

    void row(String[] texts, double... values) {
        wordRows.add(texts);
        numberRows.add(values);
    }

    Table table() {
        Table.Builder table = Table.titled(title + ": the numbers");
        List<Integer> keptWords = new ArrayList<>();
        for (int c = 0; c < words.size(); c++) {
            if (hasWords(c)) {
                keptWords.add(c);
                table.columns(Column.words(words.get(c)));
            }
        }
        List<Integer> keptNumbers = new ArrayList<>();
        int[] decimals = new int[numbers.size()];
        for (int c = 0; c < numbers.size(); c++) {
            if (hasNumbers(c)) {
                keptNumbers.add(c);
                decimals[c] = decimals(c);
                table.columns(column(numbers.get(c)));
            }
        }
        for (int r = 0; r < numberRows.size(); r++) {
            List<Cell> cells = new ArrayList<>(keptWords.size() + keptNumbers.size());
            for (int c : keptWords) {
                cells.add(Cell.words(wordRows.get(r)[c]));
            }
            for (int c : keptNumbers) {
                cells.add(Cell.number(numberRows.get(r)[c], decimals[c]));
            }
            table.row(cells);
        }
        return table.build();
    }

    private boolean hasWords(int column) {
        for (String[] row : wordRows) {
            if (!row[column].isEmpty()) {
                return true;
            }
        }
        return false;
    }

    private boolean hasNumbers(int column) {
        for (double[] row : numberRows) {
            if (Double.isFinite(row[column])) {
                return true;
            }
        }
        return false;
    }

    private static Column column(String head) {
        int comma = head.lastIndexOf(", ");
        return comma < 0 ? Column.number(head, "") : Column.number(head.substring(0, comma), head.substring(comma + 2));
    }

    /** None for whole numbers and large ones; else what shows three digits of the largest. */
    private int decimals(int column) {
        double largest = 0;
        boolean whole = true;
        for (double[] row : numberRows) {
            if (Double.isFinite(row[column])) {
                largest = Math.max(largest, Math.abs(row[column]));
                whole &= row[column] == Math.rint(row[column]);
            }
        }
        return whole ? 0 : decimalsFor(largest);
    }

    /** A number in a sentence, with about three digits. */
    static String number(double value) {
        if (!Double.isFinite(value)) {
            return "unknown";
        }
        return Cell.format(value, value == Math.rint(value) ? 0 : decimalsFor(Math.abs(value)));
    }

    private static int decimalsFor(double size) {
        return size >= 1000 ? 0 : size >= 100 ? 1 : (int) Math.min(6, 2 - Math.floor(Math.log10(Math.max(size, 1e-4))));
    }
}
