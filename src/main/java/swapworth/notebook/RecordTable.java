package swapworth.notebook;

import java.lang.reflect.Array;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** Records as tables: one row a record and one column a component, or one record as rows of name and value. */
final class RecordTable {
    /** Of so many records within a cell all are told; of more the first few. */
    private static final int MOST_WITHIN = 12;
    private static final int FIRST_FEW = 3;

    private RecordTable() {
    }

    /** One row a record; all are of one class, and there is at least one. */
    static Table of(List<Record> records) {
        Class<?> type = records.get(0).getClass();
        List<Column> columns = new ArrayList<>();
        List<List<Cell>> cells = new ArrayList<>();
        for (RecordComponent component : type.getRecordComponents()) {
            List<Optional<Object>> values = records.stream().map(r -> value(r, component)).toList();
            boolean numbers = values.stream().anyMatch(Optional::isPresent)
                    && values.stream().flatMap(Optional::stream).allMatch(Number.class::isInstance);
            String name = spaced(component.getName());
            columns.add(numbers ? Column.number(name, "") : Column.words(name));
            int decimals = decimals(values);
            cells.add(values.stream().map(v -> v.map(x -> cell(component.getName(), x, decimals)).orElse(Cell.BLANK)).toList());
        }
        Table.Builder table = Table.titled(capital(spaced(type.getSimpleName())))
                .note(records.size() + (records.size() == 1 ? " row." : " rows."))
                .columns(columns.toArray(Column[]::new));
        for (int r = 0; r < records.size(); r++) {
            int row = r;
            table.row(cells.stream().map(column -> column.get(row)).toList());
        }
        return table.build();
    }

    /** One record, a row a component. */
    static Table ofOne(Record record) {
        Table.Builder table = Table.titled(capital(spaced(record.getClass().getSimpleName())))
                .columns(Column.words("name"), Column.sentences("value"));
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            Optional<Object> value = value(record, component);
            table.row(Cell.words(spaced(component.getName())), value.map(v -> cell(component.getName(), v, decimals(List.of(value))))
                    .orElse(Cell.BLANK));
        }
        return table.build();
    }

    /**
     * Any value in words that a reader expects: numbers with separators, our own vocabularies by their words, records by what is known of
     * them.
     */
    static String words(Object value) {
        Object held = Shown.held(value).orElse("");
        if (held instanceof Number) {
            return cell("", held, decimals(List.of(Optional.of(held)))).shown();
        }
        if (held instanceof Answer<?> answer) {
            return answer.match(RecordTable::words, CannotTell::sentence);
        }
        if (held instanceof CannotTell reason) {
            return reason.sentence();
        }
        if (held instanceof Collection<?> many) {
            boolean some = many.size() > MOST_WITHIN && many.stream().allMatch(Record.class::isInstance);
            return many.stream().limit(some ? FIRST_FEW : many.size()).map(RecordTable::words).collect(Collectors.joining("; "))
                    + (some ? "; and " + Cell.format(many.size() - FIRST_FEW, 0) + " more" : "");
        }
        if (held instanceof Map<?, ?> map) {
            return map.entrySet().stream().map(e -> words(e.getKey()) + " " + words(e.getValue())).collect(Collectors.joining("; "));
        }
        if (held instanceof Record record && String.valueOf(record).startsWith(record.getClass().getSimpleName() + "[")) {
            return Arrays.stream(record.getClass().getRecordComponents()).map(c -> within(record, c)).filter(w -> !w.isEmpty())
                    .collect(Collectors.joining(", "));
        }
        if (held.getClass().isArray()) {
            return held instanceof Object[] objects ? words(Arrays.asList(objects))
                    : Array.getLength(held) + " numbers";
        }
        if (held instanceof Enum<?> constant) {
            return Shown.answer(constant, "words").map(Object::toString)
                    .orElseGet(() -> constant.name().toLowerCase(Locale.ROOT).replace('_', ' '));
        }
        String text = String.valueOf(held);
        boolean mute = text.startsWith(held.getClass().getName() + "@");
        return mute ? spaced(held.getClass().getSimpleName()) : text;
    }

    /** A component of a record that stands within a cell, by name; nothing where nobody knows it. */
    private static String within(Record record, RecordComponent component) {
        Optional<Object> value = value(record, component);
        if (value.isEmpty() || value.get() instanceof Enum<?> constant && constant.name().equals("UNKNOWN")) {
            return "";
        }
        String words = cell(component.getName(), value.get(), decimals(List.of(value))).shown();
        return words.isEmpty() ? "" : spaced(component.getName()) + " " + words;
    }

    private static Optional<Object> value(Record record, RecordComponent component) {
        try {
            component.getAccessor().setAccessible(true);
            return Optional.ofNullable(component.getAccessor().invoke(record)).flatMap(Shown::held);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the component " + component.getName() + " of " + record.getClass().getSimpleName()
                    + " cannot be read", e);
        }
    }

    private static Cell cell(String name, Object value, int decimals) {
        if (value instanceof Integer || value instanceof Long || value instanceof Short || value instanceof Byte) {
            long whole = ((Number) value).longValue();
            String last = name.toLowerCase(Locale.ROOT);
            return last.endsWith("year") || last.endsWith("line") ? Cell.label(whole) : Cell.whole(whole);
        }
        if (value instanceof BigDecimal exact && exact.scale() > 0 && exact.scale() <= 2) {
            return Cell.amount(exact.setScale(2));
        }
        return value instanceof Number number ? Cell.number(number.doubleValue(), decimals) : Cell.words(words(value));
    }

    /** Decimals for a column of numbers: fewer, the larger its largest. */
    private static int decimals(List<Optional<Object>> values) {
        double largest = values.stream().flatMap(Optional::stream).filter(Number.class::isInstance)
                .mapToDouble(v -> Math.abs(((Number) v).doubleValue())).filter(Double::isFinite).max().orElse(0);
        boolean whole = values.stream().flatMap(Optional::stream).filter(Number.class::isInstance)
                .mapToDouble(v -> ((Number) v).doubleValue()).allMatch(d -> d == Math.rint(d));
        return whole || largest >= 1000 ? 0 : largest >= 100 ? 1 : largest >= 1 ? 2 : 4;
    }

    private static String spaced(String name) {
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            boolean begins = Character.isUpperCase(c) && i > 0 && !Character.isUpperCase(name.charAt(i - 1));
            words.append(begins ? " " : "").append(Character.toLowerCase(c));
        }
        return words.toString();
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
