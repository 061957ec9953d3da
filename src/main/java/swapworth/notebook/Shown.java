package swapworth.notebook;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import swapworth.chart.Chart;
import swapworth.listing.ListingsTable;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.report.Part;
import swapworth.table.Table;

/** Turns a value into what is to be seen of it, by its type. */
final class Shown {
    /** Longer tables are folded, so that a page of thousands of rows can be scrolled. */
    private static final int FOLDED_FROM = 60;
    private static final String NO_VALUE = "There is none.";
    private static final String NO_ITEM = "There are none.";

    private Shown() {
    }

    static List<Part> parts(Object value) {
        if (value instanceof Part part) {
            return List.of(part);
        }
        if (value instanceof Chart chart) {
            return List.of(Part.picture(chart));
        }
        if (value instanceof Table table) {
            return List.of(rows(table));
        }
        if (value instanceof Answer<?> answer) {
            return answer.match(Shown::parts, Shown::parts);
        }
        if (value instanceof CannotTell reason) {
            return List.of(Part.prose(reason.sentence()));
        }
        Optional<Object> held = held(value);
        if (held.isEmpty() || held.get() != value) {
            return held.map(Shown::parts).orElse(List.of(Part.prose(NO_VALUE)));
        }
        Optional<List<Table>> tables = tables(value);
        if (tables.isPresent()) {
            return tables.get().stream().map(Shown::rows).toList();
        }
        if (value instanceof Record record) {
            return List.of(rows(RecordTable.ofOne(record)));
        }
        if (value instanceof Iterable<?> many && !(value instanceof Path)) {
            return ListingsTable.shown(value).map(table -> List.of(rows(table))).orElseGet(() -> list(many));
        }
        if (value instanceof Object[] many) {
            return list(Arrays.asList(many));
        }
        return List.of(text(RecordTable.words(value)));
    }

    private static List<Part> list(Iterable<?> many) {
        List<Object> items = new ArrayList<>();
        many.forEach(items::add);
        if (items.isEmpty()) {
            return List.of(Part.prose(NO_ITEM));
        }
        Class<?> first = items.get(0).getClass();
        boolean alike = items.stream().allMatch(i -> i.getClass() == first);
        boolean seen = items.stream().allMatch(i -> i instanceof Part || i instanceof Chart || i instanceof Table);
        if (seen) {
            return items.stream().flatMap(i -> parts(i).stream()).toList();
        }
        return List.of(alike && first.isRecord() ? rows(RecordTable.of(items.stream().map(Record.class::cast).toList()))
                : Part.bullets(items.stream().map(RecordTable::words).toList()));
    }

    private static Part rows(Table table) {
        if (table.rows().isEmpty() && table.notes().isEmpty()) {
            return Part.prose(table.title() + ": none.");
        }
        return table.rows().size() < FOLDED_FROM ? Part.rows(table)
                : Part.folded("", table.title() + " (" + table.rows().size() + " rows)", Part.rows(table));
    }

    /** A text with lines of its own stands as it is; paragraphs do not, for their lines would run off the page. */
    private static Part text(String text) {
        return text.strip().replaceAll("\n\n+", "").indexOf('\n') < 0 ? Part.prose(text) : Part.verbatim(text);
    }

    /** The tables by which a result of ours prints itself: its {@code tables()}, else its {@code table()}. */
    private static Optional<List<Table>> tables(Object value) {
        Class<?> type = value.getClass();
        if (!type.getName().startsWith("swapworth.") || !Modifier.isPublic(type.getModifiers())) {
            return Optional.empty();
        }
        Optional<Object> answer = answer(value, "tables").or(() -> answer(value, "table"));
        if (answer.isPresent() && answer.get() instanceof Table table) {
            return Optional.of(List.of(table));
        }
        if (answer.isPresent() && answer.get() instanceof List<?> list && list.stream().allMatch(Table.class::isInstance)) {
            return Optional.of(list.stream().map(Table.class::cast).toList());
        }
        return Optional.empty();
    }

    /** The answer of a public method without arguments; empty if there is no such method. */
    static Optional<Object> answer(Object value, String method) {
        try {
            return Optional.ofNullable(value.getClass().getMethod(method).invoke(value));
        } catch (NoSuchMethodException | IllegalAccessException e) {
            return Optional.empty();
        } catch (InvocationTargetException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e.getCause());
        }
    }

    /** What an optional of any kind holds; anything else is held by itself. */
    static Optional<Object> held(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.map(v -> v);
        }
        if (value instanceof OptionalInt number) {
            return number.isPresent() ? Optional.of(number.getAsInt()) : Optional.empty();
        }
        if (value instanceof OptionalLong number) {
            return number.isPresent() ? Optional.of(number.getAsLong()) : Optional.empty();
        }
        if (value instanceof OptionalDouble number) {
            return number.isPresent() ? Optional.of(number.getAsDouble()) : Optional.empty();
        }
        return Optional.of(value);
    }
}
