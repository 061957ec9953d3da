package swapworth.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** The figures of a bench as tables. */
final class ScoreTables {
    private static final String AVERAGED = "all lines";

    private ScoreTables() {
    }

    private static Cell shown(Scores.Mean m, int decimals) {
        return Double.isFinite(m.mean()) ? Cell.words(Cell.format(m.mean(), decimals)
                + (Double.isFinite(m.error()) ? " ± " + Cell.format(m.error(), decimals) : "")) : Cell.BLANK;
    }

    private static Column column(String label, String unit) {
        return new Column(label, unit, Column.words(label).key(), Column.Align.RIGHT, Column.Rank.IN_PLACE);
    }

    /** Every figure of every method, averaged over lines. */
    static Table averages(Scores scores) {
        Table.Builder table = Table.titled("Averaged over lines, ± standard error over sets").note(
                "Ratios are to least squares on age and mileage: per set, then averaged over sets, then over lines.");
        table.columns(column("n", ""), Column.words("method"), column("ratio of median error", ""),
                column("ratio of log error", ""));
        for (Figure f : Figure.values()) {
            table.columns(f == Figure.MEDIAN_ERROR || f == Figure.LOG_ERROR ? column(f.label(), f.unit())
                    : Column.number(f.label(), f.unit()));
        }
        for (int size : scores.sizes()) {
            for (Method m : Method.values()) {
                List<Cell> row = new ArrayList<>(List.of(Cell.label(size), Cell.words(m.words()),
                        shown(scores.overLines(size, s -> s.ratio(Figure.MEDIAN_ERROR, m, Method.SQUARES)), 3),
                        shown(scores.overLines(size, s -> s.ratio(Figure.LOG_ERROR, m, Method.SQUARES)), 3)));
                for (Figure f : Figure.values()) {
                    Scores.Mean mean = scores.overLines(size, s -> s.of(m, f));
                    row.add(f == Figure.MEDIAN_ERROR || f == Figure.LOG_ERROR ? shown(mean, f.decimals())
                            : Cell.number(mean.mean(), f.decimals()));
                }
                table.row(row);
            }
        }
        return table.build();
    }

    /** Ours over the strongest reference and over the median, pair by pair. */
    static Table against(Scores scores) {
        Table.Builder table = Table.titled("Ours over others, averaged over lines, paired").columns(column("n", ""),
                Column.words("figure"), Column.words("strongest reference"), column("over it", ""), column("over squares", ""),
                column("over the median", ""));
        for (int size : scores.sizes()) {
            for (Figure f : List.of(Figure.MEDIAN_ERROR, Figure.LOG_ERROR)) {
                Method strongest = scores.strongest(size, f);
                table.row(Cell.label(size), Cell.words(f.label()), Cell.words(strongest.words()),
                        shown(scores.overLines(size, s -> s.ratio(f, Method.OURS, strongest)), 3),
                        shown(scores.overLines(size, s -> s.ratio(f, Method.OURS, Method.SQUARES)), 3),
                        shown(scores.overLines(size, s -> s.ratio(f, Method.OURS, Method.MEDIAN)), 3));
            }
        }
        return table.build();
    }

    /** Ours line by line. */
    static Table lines(Scores scores) {
        Table.Builder table = Table.titled("Ours by line");
        table.columns(column("n", ""), Column.words("line"), Column.number("sets", ""),
                column("median error", "%"), column("over squares", ""), column("over the median", ""),
                column("log error over squares", ""), column("over the median's", ""), Column.number("cover 80", "%"),
                Column.number("cover 95", "%"), Column.number("width 95", ""), Column.number("cannot tell", "%"));
        for (int size : scores.sizes()) {
            for (String line : scores.lines(size)) {
                table.row(Cell.label(size), Cell.words(line), Cell.whole(scores.of(line, size).count()),
                        shown(scores.ofLine(line, size, s -> s.of(Method.OURS, Figure.MEDIAN_ERROR)), 2),
                        shown(scores.ofLine(line, size, s -> s.ratio(Figure.MEDIAN_ERROR, Method.OURS, Method.SQUARES)), 3),
                        shown(scores.ofLine(line, size, s -> s.ratio(Figure.MEDIAN_ERROR, Method.OURS, Method.MEDIAN)), 3),
                        shown(scores.ofLine(line, size, s -> s.ratio(Figure.LOG_ERROR, Method.OURS, Method.SQUARES)), 3),
                        shown(scores.ofLine(line, size, s -> s.ratio(Figure.LOG_ERROR, Method.OURS, Method.MEDIAN)), 3),
                        number(scores, line, size, Figure.COVER_80), number(scores, line, size, Figure.COVER_95),
                        number(scores, line, size, Figure.WIDTH_95), number(scores, line, size, Figure.CANNOT_TELL));
            }
        }
        return table.build();
    }

    private static Cell number(Scores scores, String line, int size, Figure figure) {
        return Cell.number(scores.ofLine(line, size, s -> s.of(Method.OURS, figure)).mean(), figure.decimals());
    }

    /** What gross errors in the training rows do: figures after over figures before, pair by pair. */
    static Table gross(Scores scores) {
        Table.Builder table = Table.titled("After gross errors in the training rows, clean cars left out, averaged over lines")
                .columns(column("n", ""), Column.words("method"), column("growth of median error", ""),
                        column("growth of log error", ""), column("cover 80", "%"), column("cover 95", "%"),
                        column("growth of width 95", ""), column("cannot tell", "%"));
        for (int size : scores.sizes()) {
            for (Method m : Method.values()) {
                table.row(Cell.label(size), Cell.words(m.words()),
                        shown(scores.overLines(size, s -> s.growth(Figure.MEDIAN_ERROR, m)), 3),
                        shown(scores.overLines(size, s -> s.growth(Figure.LOG_ERROR, m)), 3),
                        shown(scores.overLines(size, s -> s.afterErrors(m, Figure.COVER_80)), 1),
                        shown(scores.overLines(size, s -> s.afterErrors(m, Figure.COVER_95)), 1),
                        shown(scores.overLines(size, s -> s.growth(Figure.WIDTH_95, m)), 3),
                        shown(scores.overLines(size, s -> s.afterErrors(m, Figure.CANNOT_TELL)), 1));
            }
        }
        return table.build();
    }

    /** Everything for machines: a row for each line, size and method, and for the average; each figure and its standard error. */
    static Table all(Scores scores) {
        Table.Builder table = Table.titled("Accuracy").columns(Column.words("line"), Column.number("n", ""),
                Column.words("method"), Column.number("sets", ""));
        for (String name : List.of("ratio of median error", "ratio of log error")) {
            table.columns(Column.number(name, ""), Column.number(name + " se", ""));
        }
        for (Figure f : Figure.values()) {
            table.columns(Column.number(f.label(), f.unit()), Column.number(f.label() + " se", f.unit()));
        }
        for (int size : scores.sizes()) {
            List<String> lines = new ArrayList<>(scores.lines(size));
            lines.add(AVERAGED);
            for (String line : lines) {
                for (Method m : Method.values()) {
                    long sets = line.equals(AVERAGED) ? scores.sets().stream().filter(s -> s.size() == size).count()
                            : scores.of(line, size).count();
                    List<Cell> row = new ArrayList<>(
                            List.of(Cell.words(line), Cell.label(size), Cell.words(m.words()), Cell.whole(sets)));
                    add(row, mean(scores, line, size, s -> s.ratio(Figure.MEDIAN_ERROR, m, Method.SQUARES)));
                    add(row, mean(scores, line, size, s -> s.ratio(Figure.LOG_ERROR, m, Method.SQUARES)));
                    for (Figure f : Figure.values()) {
                        add(row, mean(scores, line, size, s -> s.of(m, f)));
                    }
                    table.row(row);
                }
            }
        }
        return table.build();
    }

    private static Scores.Mean mean(Scores scores, String line, int size, ToDoubleFunction<Scores.OfSet> figure) {
        return line.equals(AVERAGED) ? scores.overLines(size, figure) : scores.ofLine(line, size, figure);
    }

    private static void add(List<Cell> row, Scores.Mean mean) {
        row.add(Cell.number(mean.mean(), 4));
        row.add(Cell.number(mean.error(), 4));
    }
}
