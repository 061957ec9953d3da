package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import swapworth.table.Cell;
import swapworth.table.Column;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * Listings as a Tablesaw table, for notebooks. Every column has a stated type: numbers are doubles, days are dates, all else is
 * text; nothing is detected. A missing number is missing, a missing text is empty.
 */
public final class ListingsTable {

    private ListingsTable() {
    }

    /**
     * The used rows as a table, one row a listing; distances in miles, prices in the base currency, further columns as text.
     *
     * @param read what came out of the files
     * @return a new table named {@code listings}
     */
    public static Table of(ListingsRead read) {
        Map<Origin, String> cars = new HashMap<>();
        read.cars().forEach(car -> car.sightings().forEach(sighting -> cars.put(sighting.origin(), car.name())));
        List<Listing> rows = new ArrayList<>(read.listings());
        Table table = Table.create("listings",
                text("file", rows, l -> l.origin().file()),
                number("line", rows, l -> OptionalDouble.of(l.origin().line())),
                text("id", rows, l -> l.id().orElse("")),
                text("car", rows, l -> cars.getOrDefault(l.origin(), "")),
                seenOn(rows),
                text("vehicle", rows, l -> l.facts().vehicle()),
                text("trim", rows, l -> l.facts().trim().orElse("")),
                text("body", rows, l -> l.facts().body().orElse("")),
                text("running_gear", rows, l -> l.facts().runningGear().orElse("")),
                number("model_year", rows, l -> l.facts().modelYear().stream().asDoubleStream().findFirst()),
                number("age_years", rows, l -> l.seenOn().isPresent() ? l.facts().ageOn(l.seenOn().get()) : l.facts().ageYears()),
                number("mileage_mi", rows, l -> l.facts().mileage().stream().mapToDouble(Mileage::miles).findFirst()),
                number("price", rows, l -> OptionalDouble.of(l.price().amount())),
                text("typed_currency", rows, l -> l.price().typed().currency().getCurrencyCode()),
                text("typed_price", rows, l -> l.price().typed().amount().toPlainString()),
                text("level", rows, l -> l.level().words()),
                text("price_includes", rows, l -> l.price().includes().words()),
                text("seller", rows, l -> l.facts().seller().words()),
                text("region", rows, l -> l.facts().region().orElse("")),
                text("runs", rows, l -> l.facts().runs().words()),
                text("title", rows, l -> l.facts().title().words()),
                text("outcome", rows, l -> l.outcome().words()));
        Set<String> further = new TreeSet<>();
        rows.forEach(l -> further.addAll(l.facts().further().keySet()));
        for (String name : further) {
            String free = table.containsColumn(name) ? "further " + name : name;
            table.addColumns(text(free, rows, l -> l.facts().further().getOrDefault(name, "")));
        }
        return table;
    }

    /**
     * A table of Tablesaw as one of ours, which is how a notebook shows it: figures with separators, each column under its name.
     *
     * @param value anything
     * @return empty for anything but such a table
     */
    public static Optional<swapworth.table.Table> shown(Object value) {
        if (!(value instanceof Table table)) {
            return Optional.empty();
        }
        List<List<Cell>> cells = table.columns().stream().map(ListingsTable::cells).toList();
        return Optional.of(new swapworth.table.Table(table.name(), List.of(),
                table.columns().stream().map(c -> c instanceof NumericColumn<?> ? Column.number(c.name(), "") : Column.words(c.name()))
                        .toList(),
                IntStream.range(0, table.rowCount()).mapToObj(r -> cells.stream().map(column -> column.get(r)).toList()).toList()));
    }

    private static List<Cell> cells(tech.tablesaw.columns.Column<?> column) {
        if (!(column instanceof NumericColumn<?> numbers)) {
            return IntStream.range(0, column.size()).mapToObj(r -> Cell.words(column.getString(r))).toList();
        }
        double[] values = IntStream.range(0, numbers.size()).mapToDouble(numbers::getDouble).toArray();
        boolean whole = Arrays.stream(values).allMatch(v -> Double.isNaN(v) || v == Math.rint(v));
        boolean names = whole && (column.name().endsWith("year") || column.name().endsWith("line"));
        boolean large = Arrays.stream(values).anyMatch(v -> Math.abs(v) >= 1000);
        return Arrays.stream(values).mapToObj(v -> names && Double.isFinite(v) ? Cell.label((long) v)
                : Cell.number(v, whole || large ? 0 : 2)).toList();
    }

    private static StringColumn text(String name, List<Listing> rows, Function<Listing, String> cell) {
        StringColumn column = StringColumn.create(name);
        rows.forEach(row -> column.append(cell.apply(row)));
        return column;
    }

    private static DoubleColumn number(String name, List<Listing> rows, Function<Listing, OptionalDouble> cell) {
        return DoubleColumn.create(name, rows.stream().mapToDouble(row -> cell.apply(row).orElse(Double.NaN)).toArray());
    }

    private static DateColumn seenOn(List<Listing> rows) {
        DateColumn column = DateColumn.create("seen_on", rows.size());
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i).seenOn().isPresent()) {
                column.set(i, rows.get(i).seenOn().get());
            }
        }
        return column;
    }
}
