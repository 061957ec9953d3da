package swapworth.market;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import swapworth.listing.LevelOfTrade;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** Rows of valued cars or listings, with the columns that the commands write to CSV. */
final class ValueRows {
    private final Table.Builder table;

    ValueRows(String title, String currency) {
        table = Table.titled(title).columns(Column.words("file"), Column.number("line", ""), Column.words("id"), Column.words("vehicle"),
                Column.number("price", currency), Column.number("fair value", currency), Column.number("low 80", currency),
                Column.number("high 80", currency), Column.number("low 95", currency), Column.number("high 95", currency),
                Column.number("gap", currency), Column.number("gap", "%").key("gap_percent"), Column.number("percentile", ""),
                Column.words("position"), Column.number("cars of line", ""), Column.number("cars in file", ""),
                Column.number("prior share", ""), Column.words("level"), Column.words("valued on"), Column.sentences("remarks"));
    }

    void add(String file, int line, String id, String vehicle, Optional<Double> price, LevelOfTrade level, Optional<LocalDate> on,
            Valuation valuation, Position position, List<String> remarks) {
        Cell[] start = {Cell.words(file), Cell.label(line), Cell.words(id), Cell.words(vehicle),
            price.map(Figures::asSeen).orElse(Cell.BLANK)};
        Cell levelCell = Cell.words(level.words());
        Cell day = Cell.words(on.map(LocalDate::toString).orElse(""));
        String text = Figures.sentences(remarks);
        List<Cell> row = valuation.<List<Cell>>match(
                v -> List.of(start[0], start[1], start[2], start[3], start[4], Figures.money(v.median()),
                        Figures.money(v.range(0.80).low()), Figures.money(v.range(0.80).high()), Figures.money(v.range(0.95).low()),
                        Figures.money(v.range(0.95).high()), price.map(p -> Figures.signedMoney(p - v.median())).orElse(Cell.BLANK),
                        price.map(p -> Cell.signed(100 * (p / v.median() - 1), 1)).orElse(Cell.BLANK),
                        price.map(p -> Cell.number(100 * v.percentile(p), 1)).orElse(Cell.BLANK), Cell.words(position.words()),
                        Cell.whole(v.carsOfLine()), Cell.whole(v.carsInFile()), Cell.number(v.priorShare(), 3), levelCell,
                        Cell.words(v.subject().on().map(LocalDate::toString).orElse("")), Cell.words(text)),
                c -> List.of(start[0], start[1], start[2], start[3], start[4], Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK,
                        Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.words(position.words()), Cell.whole(c.carsOfLine()),
                        Cell.whole(c.carsInFile()), Cell.BLANK, levelCell, day,
                        Cell.words(c.reason() + "; needed: " + c.needed() + (text.isEmpty() ? "" : "; " + text))));
        table.row(row);
    }

    Table build() {
        return table.build();
    }
}
