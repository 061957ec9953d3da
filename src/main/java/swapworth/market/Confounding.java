package swapworth.market;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import swapworth.statistics.Design;
import swapworth.statistics.Identification;
import swapworth.statistics.SparseRow;

/**
 * Which of the facts that people read as terms of the model the prices cannot tell apart: the rank of their columns beside a constant.
 *
 * <p>Departures that the model lays over one another on purpose (trims over lines, model years over age, slopes of lines over the common
 * slope, curves, months of the market, measured facts over lines) are not looked at: they are shrunken toward what they lie over. A
 * fact that all cars share, or that fewer than {@value #FEWEST} prices tell of, is not seen, and no matter of confounding; nor are words
 * that are blank together. Of files with more than {@value #MOST_PRICES} prices as many are looked at, evenly taken,
 * and of a fact with more than {@value #MOST_WORDS} words as many, the commonest.
 */
final class Confounding {
    /** So few prices tell nothing of a fact anyway; that two facts coincide in them is chance. */
    private static final int FEWEST = 3;
    /** Longer sums come about by chance where prices are few. */
    private static final int MOST_TERMS = 4;
    static final int MOST_PRICES = 20_000;
    private static final int MOST_WORDS = 500;

    private final List<Subject> subjects;
    private final Encoder encoder;
    private final Encoded[] encoded;
    private final List<String> labels = new ArrayList<>();
    private final List<double[]> columns = new ArrayList<>();

    Confounding(EvidenceList evidence, Encoder encoder, EncodedRows encoded) {
        int n = encoded.size();
        int[] taken = n <= MOST_PRICES ? IntStream.range(0, n).toArray()
                : IntStream.range(0, MOST_PRICES).map(k -> (int) ((long) k * n / MOST_PRICES)).toArray();
        this.subjects = Arrays.stream(taken).mapToObj(evidence::subject).toList();
        this.encoder = encoder;
        this.encoded = encoded.some(taken);
    }

    List<Confounded> all() {
        for (Term term : encoder.terms()) {
            if (term instanceof Terms.Steps) {
                addFact(effectsOf(term));
            } else if (term instanceof Terms.Measure && term.group() != Group.LEVEL_OF_LINE) {
                effectsOf(term).forEach(this::add);
            } else if (term instanceof Terms.Levels levels && (term.group() == Group.REGION || term.group() == Group.FURTHER)) {
                addFact(words(subjects.stream().map(s -> levels.level(s).map(l -> term.name() + ": " + l).orElse("")).toList()));
            }
        }
        addFact(words(subjects.stream().map(s -> "line: " + s.facts().vehicle()).toList()));
        return dependences();
    }

    private Map<String, double[]> effectsOf(Term term) {
        List<Term.Effect> effects = term.effects();
        double[][] columnOf = new double[effects.size()][encoded.length];
        double[] entries = new double[encoder.columns()];
        for (int i = 0; i < encoded.length; i++) {
            SparseRow row = encoded[i].row();
            Arrays.fill(entries, term.from(), term.from() + term.count(), 0);
            for (int e = 0; e < row.size(); e++) {
                entries[row.index(e)] = row.value(e);
            }
            for (int k = 0; k < columnOf.length; k++) {
                columnOf[k][i] = effects.get(k).entryIn(entries);
            }
        }
        Map<String, double[]> found = new LinkedHashMap<>();
        for (int k = 0; k < columnOf.length; k++) {
            found.put(effects.get(k).label(), columnOf[k]);
        }
        return found;
    }

    /** One column of ones and zeros a word; a blank word is none. */
    private static Map<String, double[]> words(List<String> ofRows) {
        Map<String, Long> count = ofRows.stream().collect(Collectors.groupingBy(w -> w, LinkedHashMap::new, Collectors.counting()));
        Set<String> asked = count.entrySet().stream().sorted(Map.Entry.<String, Long>comparingByValue().reversed()).limit(MOST_WORDS)
                .map(Map.Entry::getKey).collect(Collectors.toSet());
        Map<String, double[]> found = new LinkedHashMap<>();
        for (int i = 0; i < ofRows.size(); i++) {
            if (!ofRows.get(i).isEmpty() && asked.contains(ofRows.get(i))) {
                found.computeIfAbsent(ofRows.get(i), w -> new double[ofRows.size()])[i] = 1;
            }
        }
        return found;
    }

    /** The words of one fact. Where every price has one of them, the commonest is what the others are steps against. */
    private void addFact(Map<String, double[]> words) {
        boolean full = haveAll(words.values());
        String base = "";
        double most = 0;
        for (Map.Entry<String, double[]> word : words.entrySet()) {
            double count = Arrays.stream(word.getValue()).sum();
            if (full && count > most) {
                most = count;
                base = word.getKey();
            }
        }
        for (Map.Entry<String, double[]> word : words.entrySet()) {
            if (!word.getKey().equals(base)) {
                add(word.getKey(), word.getValue());
            }
        }
    }

    /** Whether every price has one of some words. */
    private boolean haveAll(Collection<double[]> words) {
        boolean[] has = new boolean[encoded.length];
        for (double[] column : words) {
            for (int i = 0; i < has.length; i++) {
                has[i] |= column[i] != 0;
            }
        }
        return IntStream.range(0, has.length).allMatch(i -> has[i]);
    }

    private void add(String label, double[] column) {
        if (tellsOfItsFact(column)) {
            labels.add(label);
            columns.add(column);
        }
    }

    /**
     * Whether enough prices differ from any one number in a column. A number that all but fewer than {@value #FEWEST} share is among so
     * many first ones.
     */
    private static boolean tellsOfItsFact(double[] column) {
        for (int first = 0; first < Math.min(FEWEST, column.length); first++) {
            int others = 0;
            for (int i = 0; i < column.length && others < FEWEST; i++) {
                others += column[i] == column[first] ? 0 : 1;
            }
            if (others < FEWEST) {
                return false;
            }
        }
        return column.length > 0;
    }

    /** A constant and the columns. */
    private Design design() {
        return Design.of(columns.size() + 1, encoded.length, i -> {
            int[] index = new int[columns.size() + 1];
            double[] value = new double[index.length];
            value[0] = 1;
            int size = 1;
            for (int c = 0; c < columns.size(); c++) {
                double entry = columns.get(c)[i];
                if (entry != 0) {
                    index[size] = c + 1;
                    value[size++] = entry;
                }
            }
            return SparseRow.of(Arrays.copyOf(index, size), Arrays.copyOf(value, size));
        });
    }

    private List<Confounded> dependences() {
        // Sets that share a term are one: three facts that always go together are no two pairs.
        List<Set<Integer>> sets = new ArrayList<>();
        List<Confounded.Kind> kinds = new ArrayList<>();
        for (Identification.Dependence d : Identification.of(design()).dependences()) {
            Set<Integer> terms = new TreeSet<>();
            IntStream.range(0, d.direction().size()).map(d.direction()::index).filter(c -> c > 0).forEach(c -> terms.add(c - 1));
            if (terms.size() < 2 || terms.size() > MOST_TERMS) {
                continue;
            }
            Confounded.Kind kind = d.degree() == Identification.Degree.NEARLY_CONFOUNDED ? Confounded.Kind.NEARLY_DEPENDENT
                    : terms.size() == 2 && together(terms) ? Confounded.Kind.ALWAYS_TOGETHER : Confounded.Kind.DEPENDENT;
            for (int k = sets.size() - 1; k >= 0; k--) {
                if (sets.get(k).stream().anyMatch(terms::contains)) {
                    terms.addAll(sets.remove(k));
                    kind = kinds.remove(k) == kind ? kind : Confounded.Kind.DEPENDENT;
                }
            }
            sets.add(terms);
            kinds.add(kind);
        }
        List<Confounded> found = new ArrayList<>();
        for (int k = 0; k < sets.size(); k++) {
            List<String> names = sets.get(k).stream().map(labels::get).toList();
            if (!names.stream().allMatch(n -> n.contains("unknown"))) {
                found.add(new Confounded(names, kinds.get(k)));
            }
        }
        return List.copyOf(found);
    }

    private boolean together(Set<Integer> two) {
        double[][] both = two.stream().map(columns::get).toArray(double[][]::new);
        return Arrays.equals(both[0], both[1]);
    }
}
