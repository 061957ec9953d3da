package swapworth.market;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import swapworth.statistics.Posterior;
import swapworth.statistics.SparseRow;

/**
 * Whether what was collected changed with time so strongly that the movement of the market hangs on it: asks first and sales later, one
 * seller or one line after the other.
 *
 * <p>Of all stretches of months that hold from a fifth to four fifths of the prices the one is taken whose mix of a fact differs most from
 * that of the other months. Between the two the level of the market and the level of the mix each make a difference of the prices, c'b and
 * g'b, with c and g the differences of the mean rows of the design and b the coefficients. Where the mix has changed altogether only their
 * sum is seen. The share of the variance of c'b that would go away if g'b were known is the square of their correlation; it is of weight
 * as far as g'b is assumed and not told by months that hold both. The level of a line holds its own departure from the drift of all.
 */
final class MixOverTime {
    /** As many prices are looked at as for confounded facts, evenly taken. */
    private static final int MOST_PRICES = Confounding.MOST_PRICES;
    private static final double LEAST_SHARE_OF_PRICES = 0.2;
    /** So much of the mix must be another one, half the sum of what its shares differ by: of few prices as much as half does by chance. */
    private static final double LEAST_CHANGE = 0.6;
    /** From so much of what is unsure about the movement on, times how much of the level of the mix is assumed, a reader is told. */
    private static final double WORTH_SAYING = 0.15;

    private final Encoder encoder;
    private final Posterior posterior;
    private final List<Subject> subjects;
    private final int[] monthOf;
    private final YearMonth first;
    private final int months;

    MixOverTime(Encoder encoder, Posterior posterior, List<Evidence> evidence) {
        this.encoder = encoder;
        this.posterior = posterior;
        List<Subject> dated = evidence.stream().map(Evidence::subject).filter(s -> s.on().isPresent()).toList();
        int n = dated.size();
        int taken = Math.min(n, MOST_PRICES);
        this.subjects = IntStream.range(0, taken).mapToObj(k -> dated.get((int) ((long) k * n / taken))).toList();
        this.first = YearMonth.from(encoder.begin().orElseThrow());
        this.monthOf = subjects.stream().mapToInt(s -> month(s.on().orElseThrow())).toArray();
        this.months = month(encoder.end().orElseThrow()) + 1;
    }

    private int month(LocalDate day) {
        return (int) ChronoUnit.MONTHS.between(first, YearMonth.from(day));
    }

    /** What a reader is told, in whole sentences without the full stop. */
    List<String> cautions() {
        return Stream.of(caution(Group.TRADE, s -> s.level().words()), caution(Group.LEVEL_OF_LINE, s -> s.facts().vehicle()))
                .flatMap(Optional::stream).toList();
    }

    private Optional<String> caution(Group group, Function<Subject, String> word) {
        boolean levels = group == Group.TRADE;
        return stretch(word).filter(s -> s.change >= LEAST_CHANGE).flatMap(s -> {
            Hanging movement = movement(s, group);
            if (movement.share * movement.assumed < WORTH_SAYING) {
                return Optional.empty();
            }
            return Optional.of("What was collected changed with time: " + months(s) + " " + percent(s.shareWithin)
                    + " of the prices are " + (levels ? "at the level of trade '" : "of the line '") + s.word + "', in the other months "
                    + percent(s.shareElse) + ". How the market moved between the two hangs on how far the "
                    + (levels ? "levels of trade" : "lines") + " stand apart, which is to " + percent(movement.assumed)
                    + " assumed: were it known, what is unsure about the movement (in squares) would be " + percent(movement.share)
                    + " less");
        });
    }

    private static String percent(double share) {
        return Figures.share(share).shown();
    }

    private String months(Stretch s) {
        YearMonth from = first.plusMonths(s.from);
        YearMonth to = first.plusMonths(s.end - 1);
        return s.end == months ? "from " + from + " on" : s.from == 0 ? "up to " + to : "from " + from + " to " + to;
    }

    /**
     * Some months on end.
     *
     * @param from the first
     * @param end the one after the last
     * @param change half the sum of what the shares of all words within differ from those else
     * @param word the word that gains most
     */
    private record Stretch(int from, int end, double change, String word, double shareWithin, double shareElse) {
        boolean holds(int month) {
            return month >= from && month < end;
        }
    }

    /** The months whose mix differs most from that of all others. */
    private Optional<Stretch> stretch(Function<Subject, String> word) {
        Map<String, int[]> upTo = new TreeMap<>();
        for (int i = 0; i < monthOf.length; i++) {
            upTo.computeIfAbsent(word.apply(subjects.get(i)), w -> new int[months + 1])[monthOf[i] + 1]++;
        }
        int[] all = new int[months + 1];
        upTo.values().forEach(counts -> {
            for (int m = 1; m <= months; m++) {
                counts[m] += counts[m - 1];
                all[m] += counts[m];
            }
        });
        List<Stretch> found = new ArrayList<>();
        for (int from = 0; from < months; from++) {
            for (int end = from + 1; end <= months; end++) {
                double within = all[end] - all[from];
                double others = all[months] - within;
                if (Math.min(within, others) >= LEAST_SHARE_OF_PRICES * all[months]) {
                    found.add(compared(upTo, from, end, within, others));
                }
            }
        }
        return found.stream().reduce((a, b) -> b.change > a.change ? b : a);
    }

    private Stretch compared(Map<String, int[]> upTo, int from, int end, double within, double others) {
        double change = 0;
        Stretch best = new Stretch(from, end, 0, "", 0, 0);
        for (Map.Entry<String, int[]> word : upTo.entrySet()) {
            int[] counts = word.getValue();
            int here = counts[end] - counts[from];
            double shareWithin = here / within;
            double shareElse = (counts[months] - here) / others;
            change += Math.abs(shareWithin - shareElse) / 2;
            if (best.word.isEmpty() || shareWithin - shareElse > best.shareWithin - best.shareElse) {
                best = new Stretch(from, end, 0, word.getKey(), shareWithin, shareElse);
            }
        }
        return new Stretch(from, end, change, best.word, best.shareWithin, best.shareElse);
    }

    /**
     * How the movement of the market hangs on the level of a mix.
     *
     * @param share the share of its variance that would go away if that level were known
     * @param assumed how much of what is unsure about that level is held by assumptions
     */
    private record Hanging(double share, double assumed) {
    }

    /** The movement between a stretch and all other months. */
    private Hanging movement(Stretch stretch, Group group) {
        SparseRow time = difference(stretch, this::time);
        SparseRow mix = difference(stretch, s -> group == Group.LEVEL_OF_LINE
                ? encoder.part(EnumSet.of(group, Group.TIME), s, encoder.measured(s)).plus(-1, time(s))
                : encoder.part(EnumSet.of(group), s, encoder.measured(s)));
        double[] ofMix = posterior.covariances(mix);
        double covariance = time.dot(ofMix);
        double variances = mix.dot(ofMix) * time.dot(posterior.covariances(time));
        return variances > 0 ? new Hanging(Math.min(1, covariance * covariance / variances), posterior.priorShare(mix)) : new Hanging(0, 0);
    }

    /** The time terms that all lines have in common. */
    private SparseRow time(Subject subject) {
        return TimeContrast.on(subject.on().orElseThrow(), encoder, TimeContrast.TREND, "");
    }

    private SparseRow difference(Stretch stretch, Function<Subject, SparseRow> row) {
        double within = IntStream.of(monthOf).filter(stretch::holds).count();
        double[] difference = new double[encoder.columns()];
        for (int i = 0; i < monthOf.length; i++) {
            SparseRow one = row.apply(subjects.get(i));
            double weight = stretch.holds(monthOf[i]) ? 1 / within : -1 / (monthOf.length - within);
            for (int k = 0; k < one.size(); k++) {
                difference[one.index(k)] += weight * one.value(k);
            }
        }
        return SparseRow.dense(difference);
    }
}
