package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Origin;
import swapworth.listing.Sighting;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.CsvRows;
import swapworth.table.Table;

/** Rows of valued cars or listings, with the columns that the commands write to CSV. */
final class ValueRows {

    /** Where the cells of the rows go, from left to right. */
    interface Cells {
        void words(String words);

        void whole(long number);

        void day(LocalDate day);

        /** A number, to how many places machines read it, and how it is shown where people do. */
        void number(double number, int places, DoubleFunction<Cell> shown);

        void endRow();
    }

    /** Places to which machines read amounts, per cent and shares. */
    private static final int CENTS = 2;
    private static final int OF_PER_CENT = 4;
    private static final int OF_SHARES = 6;

    private final Cells cells;

    ValueRows(Cells cells) {
        this.cells = cells;
    }

    static List<Column> columns(String currency) {
        return List.of(Column.words("file"), Column.number("line", ""), Column.words("id"), Column.words("vehicle"),
                Column.number("price", currency), Column.number("fair value", currency), Column.number("low 80", currency),
                Column.number("high 80", currency), Column.number("low 95", currency), Column.number("high 95", currency),
                Column.number("gap", currency), Column.number("gap", "%").key("gap_percent"), Column.number("percentile", ""),
                Column.words("position"), Column.number("cars of line", ""), Column.number("cars in file", ""),
                Column.number("prior share", ""), Column.words("level"), Column.words("valued on"), Column.sentences("remarks"));
    }

    /** Rows into a table. */
    static final class IntoTable implements Cells {
        private final Table.Builder table;
        private final List<Cell> row = new ArrayList<>();

        IntoTable(String title, String currency) {
            table = Table.titled(title).columns(columns(currency).toArray(Column[]::new));
        }

        @Override
        public void words(String words) {
            row.add(Cell.words(words));
        }

        @Override
        public void whole(long number) {
            row.add(Cell.label(number));
        }

        @Override
        public void day(LocalDate day) {
            words(day.toString());
        }

        @Override
        public void number(double number, int places, DoubleFunction<Cell> shown) {
            row.add(shown.apply(number).exactTo(number, places));
        }

        @Override
        public void endRow() {
            table.row(row);
            row.clear();
        }

        Table table() {
            return table.build();
        }
    }

    /** Rows into CSV, cell by cell. */
    record IntoCsv(CsvRows rows) implements Cells {

        @Override
        public void words(String words) {
            rows.words(words);
        }

        @Override
        public void whole(long number) {
            rows.whole(number);
        }

        @Override
        public void day(LocalDate day) {
            rows.day(day);
        }

        @Override
        public void number(double number, int places, DoubleFunction<Cell> shown) {
            rows.number(number, places);
        }

        @Override
        public void endRow() {
            rows.end();
        }
    }

    /** The row of a car that need not have a price. */
    void add(String file, int line, String id, String vehicle, Optional<Double> price, LevelOfTrade level, Optional<LocalDate> on,
            Valuation valuation, Position position, List<String> remarks) {
        add(file, line, id, vehicle, price.orElse(Double.NaN), Double.NaN, level, on, valuation, position, remarks);
    }

    /** The row of a judged listing. */
    void add(Judgement j) {
        add(j.listing(), j.standing());
    }

    /** The same for a sighting that need not be made a listing. */
    void add(Sighting seen, Standing s) {
        Origin origin = seen.origin();
        add(origin.file(), origin.line(), seen.id().orElse(""), seen.facts().vehicle(), seen.amount(), s.percentile(),
                s.valuation() instanceof FairValue value ? value.subject().level() : seen.level(), seen.seenOn(), s.valuation(),
                s.position(), s.remarks());
    }

    /**
     * A row.
     *
     * @param seen the price; NaN if there is none
     * @param percentile that of the price, per cent; NaN if it has not been found yet
     */
    private void add(String file, int line, String id, String vehicle, double seen, double percentile, LevelOfTrade level,
            Optional<LocalDate> on, Valuation valuation, Position position, List<String> remarks) {
        cells.words(file);
        cells.whole(line);
        cells.words(id);
        cells.words(vehicle);
        cells.number(seen, CENTS, Figures::asSeen);
        String text = Figures.sentences(remarks);
        if (valuation instanceof FairValue v) {
            double median = v.median();
            Range range80 = v.range(0.80);
            Range range95 = v.range(0.95);
            cells.number(median, CENTS, Figures::money);
            cells.number(range80.low(), CENTS, Figures::money);
            cells.number(range80.high(), CENTS, Figures::money);
            cells.number(range95.low(), CENTS, Figures::money);
            cells.number(range95.high(), CENTS, Figures::money);
            cells.number(seen - median, CENTS, Figures::signedMoney);
            cells.number(100 * (seen / median - 1), OF_PER_CENT, gap -> Cell.signed(gap, 1));
            cells.number(Double.isNaN(percentile) && !Double.isNaN(seen) ? v.percentile(seen) : percentile, OF_PER_CENT,
                    share -> Cell.number(share, 1));
            // A value without a price beside it stands nowhere.
            cells.words(Double.isNaN(seen) ? "" : position.words());
            cells.whole(v.carsOfLine());
            cells.whole(v.carsInFile());
            cells.number(v.priorShare(), OF_SHARES, share -> Cell.number(share, 3));
            cells.words(level.words());
            day(v.subject().on());
            cells.words(text);
        } else if (valuation instanceof CannotTell c) {
            for (int k = 0; k < 8; k++) {
                cells.words("");
            }
            cells.words(position.words());
            cells.whole(c.carsOfLine());
            cells.whole(c.carsInFile());
            cells.words("");
            cells.words(level.words());
            day(on);
            cells.words(c.reason() + "; needed: " + c.needed() + (text.isEmpty() ? "" : "; " + text));
        }
        cells.endRow();
    }

    private void day(Optional<LocalDate> day) {
        if (day.isPresent()) {
            cells.day(day.get());
        } else {
            cells.words("");
        }
    }
}
