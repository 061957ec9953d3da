package swapworth.market;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;
import swapworth.listing.Facts;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.DecimalMark;
import swapworth.reading.Parsed;
import swapworth.reading.Spelling;
import swapworth.statistics.Quantiles;

/**
 * A column of the user's own that is taken into the model: as numbers where nearly all of its cells are, else as words. One cell that is
 * no number, or a number far from all others, says nothing and spoils nothing.
 */
final class FurtherColumn {
    /** Of so many filled rows one at most may be no number in a column of numbers. */
    private static final int ONE_IN = 10;
    /** A number further from the middle than so many standard deviations (by the quartiles) is mistyped. */
    private static final double FAR = 20;

    private final String name;
    private final Map<String, Integer> texts;
    private final DecimalMark mark;
    private final CellReader cells;
    /** The unit that stands behind some of the numbers. */
    private final String unit;
    private final double least;
    private final double most;
    private final double mean;
    private final double sd;
    private final boolean numbers;
    /** Of words that differ in case, spaces or hyphens alone the spelling of most rows. */
    private final Map<String, String> spelling;

    /**
     * Looks at a column.
     *
     * @param name its header
     * @param texts its cells with their numbers of rows; blank ones left out
     */
    FurtherColumn(String name, Map<String, Integer> texts) {
        this.name = name;
        this.texts = texts;
        this.unit = usualUnit(texts);
        this.mark = rowsOf(DecimalMark.COMMA) > rowsOf(DecimalMark.POINT) ? DecimalMark.COMMA : DecimalMark.POINT;
        this.cells = reader(mark);
        double rows = texts.values().stream().mapToInt(Integer::intValue).sum();
        double[] values = texts.entrySet().stream().flatMapToDouble(t -> DoubleStream.generate(
                () -> read(t.getKey(), mark, cells).orElse(Double.NaN)).limit(t.getValue())).filter(v -> !Double.isNaN(v)).toArray();
        this.numbers = values.length > 0 && (rows - values.length) * ONE_IN <= rows;
        double scale = 0;
        double middle = 0;
        if (numbers) {
            middle = Quantiles.of(values, 0.5);
            scale = (Quantiles.of(values, 0.75) - Quantiles.of(values, 0.25)) / 1.349;
            scale = scale > 0 ? scale : (Quantiles.of(values, 0.95) - Quantiles.of(values, 0.05)) / 3.29;
        }
        this.least = scale > 0 ? middle - FAR * scale : Double.NEGATIVE_INFINITY;
        this.most = scale > 0 ? middle + FAR * scale : Double.POSITIVE_INFINITY;
        double sum = 0;
        double count = 0;
        for (double value : values) {
            sum += isNear(value) ? value : 0;
            count += isNear(value) ? 1 : 0;
        }
        this.mean = sum / count;
        double squares = 0;
        for (double value : values) {
            squares += isNear(value) ? (value - mean) * (value - mean) : 0;
        }
        this.sd = Math.sqrt(squares / count);
        Map<String, String> usual = new HashMap<>();
        texts.keySet().forEach(text -> usual.merge(Spelling.name(text), text, this::usual));
        this.spelling = Map.copyOf(usual);
    }

    private String usual(String one, String other) {
        int more = Integer.compare(texts.getOrDefault(one, 0), texts.getOrDefault(other, 0));
        return more > 0 || more == 0 && one.compareTo(other) <= 0 ? one : other;
    }

    private static CellReader reader(DecimalMark mark) {
        return new CellReader(Conventions.unstated().with(mark), ',');
    }

    private int rowsOf(DecimalMark tried) {
        CellReader reader = reader(tried);
        return texts.entrySet().stream().filter(t -> read(t.getKey(), tried, reader).isPresent()).mapToInt(Map.Entry::getValue).sum();
    }

    /** What stands behind the last digit: letters, perhaps after a space; empty for anything else, and for the k of thousands. */
    private static String unitOf(String text) {
        int end = text.length();
        while (end > 0 && !Character.isDigit(text.charAt(end - 1))) {
            end--;
        }
        String behind = Spelling.stripped(text.substring(end));
        return end == 0 || behind.equalsIgnoreCase("k") || !behind.chars().allMatch(c -> Character.isLetter(c) || c == '%') ? "" : behind;
    }

    private static String usualUnit(Map<String, Integer> texts) {
        Map<String, Integer> units = new HashMap<>();
        texts.forEach((text, rows) -> units.merge(Spelling.key(unitOf(text)), rows, Integer::sum));
        units.remove("");
        return units.entrySet().stream().max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey).orElse("");
    }

    private OptionalDouble read(String text, DecimalMark tried, CellReader reader) {
        OptionalDouble plain = tried == DecimalMark.POINT ? number(text) : OptionalDouble.empty();
        return plain.isPresent() ? plain : reader.number(text, unit) instanceof Parsed.Understood<BigDecimal> number
                ? OptionalDouble.of(number.value().doubleValue()) : OptionalDouble.empty();
    }

    /** The number that all of a text is. */
    private static OptionalDouble number(String text) {
        boolean plain = !text.isEmpty();
        for (int i = 0; i < text.length() && plain; i++) {
            char c = text.charAt(i);
            plain = c >= '0' && c <= '9' || c == '.' || i == 0 && c == '-';
        }
        try {
            return plain ? OptionalDouble.of(Double.parseDouble(text)) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    private boolean isNear(double value) {
        return value >= least && value <= most;
    }

    /** Whether its cells are taken as numbers. */
    boolean isNumbers() {
        return numbers;
    }

    /** By how much the numbers differ; 0 where all are the same. */
    double sd() {
        return sd;
    }

    private OptionalDouble told(Facts car) {
        OptionalDouble value = read(car.further().getOrDefault(name, ""), mark, cells);
        return value.isPresent() && isNear(value.getAsDouble()) ? value : OptionalDouble.empty();
    }

    /** Whether the cell of a car holds a number that counts. */
    boolean isTold(Facts car) {
        return told(car).isPresent();
    }

    /** How many standard deviations a car lies above the mean; 0 where its cell says nothing. */
    double standardised(Facts car) {
        OptionalDouble value = told(car);
        return value.isPresent() ? (value.getAsDouble() - mean) / sd : 0;
    }

    /** The word of a car, as most rows of the listings spell it; empty where its cell is. */
    Optional<String> word(Facts car) {
        return Optional.ofNullable(car.further().get(name)).map(text -> spelling.getOrDefault(Spelling.name(text), text));
    }

    /** How the column is taken, and what of it says nothing. */
    String sentence() {
        if (texts.isEmpty()) {
            return name + ": no row fills it; it is not used";
        }
        Set<Double> values = new HashSet<>();
        int strange = 0;
        String first = "";
        int far = 0;
        String farthest = "";
        for (Map.Entry<String, Integer> text : texts.entrySet()) {
            OptionalDouble value = read(text.getKey(), mark, cells);
            if (value.isEmpty()) {
                first = strange == 0 ? text.getKey() : first;
                strange += text.getValue();
                continue;
            }
            values.add(value.getAsDouble());
            if (!isNear(value.getAsDouble())) {
                farthest = far == 0 ? text.getKey() : farthest;
                far += text.getValue();
            }
        }
        StringBuilder out = new StringBuilder(name + ": taken as " + (numbers ? "numbers, " + values.size() : "words, " + spelling.size())
                + " different");
        if (!numbers) {
            return out.append(", because of ").append(cell(first)).append(strange > 1 ? " and the like" : "").toString();
        }
        if (strange > 0) {
            out.append("; ").append(rows(strange)).append(" no number and not used: ").append(cell(first));
        }
        if (far > 0) {
            out.append("; ").append(rows(far)).append(" far from all others and not used: ").append(cell(farthest))
                    .append(", is it mistyped?");
        }
        return sd > 0 ? out.toString() : out.append("; all are the same, so that it tells nothing").toString();
    }

    private static String rows(int count) {
        return count == 1 ? "one row is" : count + " rows are";
    }

    private static String cell(String text) {
        return "'" + Spelling.shortened(text, 40) + "'";
    }
}
