package swapworth.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * The names of rows beside a plot, in as many lines as they take. A name that takes more lines than a row can have loses its middle and
 * gets the number of its row, so that no two rows look alike. Not for sharing between threads.
 */
final class RowNames {
    private static final int MOST_LINES = 6;

    private final int most;
    private final List<List<String>> rows = new ArrayList<>();

    /** Names in lines of at most so many characters. */
    RowNames(int most) {
        this.most = most;
    }

    /** The next row, from the top; its figure, which may be empty, is never cut. */
    void add(String name, String figure) {
        List<String> lines = lines(name, figure);
        String numbered = rows.size() + 1 + ". ";
        for (int room = MOST_LINES * most; lines.size() > MOST_LINES; room -= 4) {
            lines = lines(numbered + withoutMiddle(name, room - numbered.length() - figure.length()), figure);
        }
        rows.add(lines);
    }

    /** The lines of each row. */
    List<List<String>> rows() {
        return rows;
    }

    /** The length of the longest line. */
    int longest() {
        return rows.stream().flatMap(List::stream).mapToInt(String::length).max().orElse(0);
    }

    /** The lines of the row that has most. */
    int mostLines() {
        return rows.stream().mapToInt(List::size).max().orElse(0);
    }

    private List<String> lines(String name, String figure) {
        List<String> lines = broken(name, most);
        String line = lines.remove(lines.size() - 1);
        if (figure.isEmpty() || line.length() + 2 + figure.length() <= most) {
            lines.add(figure.isEmpty() ? line : line + "  " + figure);
        } else {
            lines.add(line);
            lines.add(figure);
        }
        return lines;
    }

    /** A text in lines of at most so many characters, broken between words where these are not longer than a line; at least one line. */
    static List<String> broken(String text, int most) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ")) {
            String rest = word;
            if (!line.isEmpty() && line.length() + 1 + rest.length() > most) {
                lines.add(line);
                line = "";
            }
            while (rest.length() > most) {
                int end = Character.isHighSurrogate(rest.charAt(most - 1)) ? most - 1 : most;
                lines.add(rest.substring(0, end));
                rest = rest.substring(end);
            }
            line = line.isEmpty() ? rest : line + " " + rest;
        }
        lines.add(line);
        return lines;
    }

    private static String withoutMiddle(String name, int length) {
        int head = Math.max(1, length * 3 / 5);
        int from = name.length() - Math.max(0, length - head - 1);
        boolean headSplits = Character.isHighSurrogate(name.charAt(head - 1));
        boolean tailSplits = from < name.length() && Character.isLowSurrogate(name.charAt(from));
        return name.substring(0, headSplits ? head - 1 : head) + "…" + name.substring(tailSplits ? from + 1 : from);
    }
}
