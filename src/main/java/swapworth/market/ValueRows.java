package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Origin;
import swapworth.listing.Price;
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
    /** The columns from the fair value to the percentile, which stay blank without a value. */
    private static final int FIGURES_OF_VALUE = 8;

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

    /** The row of a car in play, which need not have a price. */
    void add(Valued.ValuedCar v) {
        double price = v.car().priceOrBid().map(Price::amount).orElse(Double.NaN);
        named(v.car().origin(), v.car().name(), v.car().facts().vehicle(), price);
        stands(v.valuation(), v.position(), price, Double.NaN);
        ends(v.valuation(), v.level(), Optional.empty(), v.remarks());
    }

    /** The row of a judged listing. */
    void add(Judgement j) {
        add(j.listing(), j.standing());
    }

    /** The same for a sighting that need not be made a listing. */
    void add(Sighting seen, Standing s) {
        named(seen.origin(), seen.id().orElse(""), seen.facts().vehicle(), seen.amount());
        stands(s.valuation(), s.position(), seen.amount(), s.percentile());
        ends(s.valuation(), s.valuation() instanceof FairValue value ? value.subject().level() : seen.level(), seen.seenOn(), s.remarks());
    }

    /** Where a row stands, and what it says; a price that is not a number is none. */
    private void named(Origin origin, String id, String vehicle, double price) {
        cells.words(origin.file());
        cells.whole(origin.line());
        cells.words(id);
        cells.words(vehicle);
        cells.number(price, CENTS, Figures::asSeen);
    }

    /**
     * The value and how the price stands to it.
     *
     * @param percentile that of the price, per cent; NaN if it has not been found yet
     */
    private void stands(Valuation valuation, Position position, double price, double percentile) {
        if (valuation instanceof FairValue v) {
            double median = v.median();
            Range range80 = v.range(0.80);
            Range range95 = v.range(0.95);
            boolean isPriced = !Double.isNaN(price);
            cells.number(median, CENTS, Figures::money);
            cells.number(range80.low(), CENTS, Figures::money);
            cells.number(range80.high(), CENTS, Figures::money);
            cells.number(range95.low(), CENTS, Figures::money);
            cells.number(range95.high(), CENTS, Figures::money);
            cells.number(price - median, CENTS, Figures::signedMoney);
            cells.number(100 * (price / median - 1), OF_PER_CENT, gap -> Cell.signed(gap, 1));
            cells.number(isPriced && Double.isNaN(percentile) ? v.percentile(price) : percentile, OF_PER_CENT,
                    share -> Cell.number(share, 1));
            // A value without a price beside it stands nowhere.
            cells.words(isPriced ? position.words() : "");
            cells.whole(v.carsOfLine());
            cells.whole(v.carsInFile());
            cells.number(v.priorShare(), OF_SHARES, share -> Cell.number(share, 3));
        } else if (valuation instanceof CannotTell c) {
            for (int k = 0; k < FIGURES_OF_VALUE; k++) {
                cells.words("");
            }
            cells.words(position.words());
            cells.whole(c.carsOfLine());
            cells.whole(c.carsInFile());
            cells.words("");
        }
    }

    /**
     * At which level of trade and on which day the value holds, and what is to be said of it.
     *
     * @param on the day asked about, where there is no value that has one
     */
    private void ends(Valuation valuation, LevelOfTrade level, Optional<LocalDate> on, List<String> remarks) {
        cells.words(level.words());
        String text = Figures.sentences(remarks);
        if (valuation instanceof FairValue v) {
            day(v.subject().on());
            cells.words(text);
        } else if (valuation instanceof CannotTell c) {
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
