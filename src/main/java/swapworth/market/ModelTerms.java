package swapworth.market;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleBiFunction;
import swapworth.assumptions.Assumptions;
import swapworth.market.Measures.Measured;
import swapworth.statistics.Design;

/** The terms of a model in their order, as they are found one after the other: which columns each has, and what rows may leave open. */
final class ModelTerms {
    static final ToDoubleBiFunction<Subject, Measured> ONE = (s, m) -> 1;

    /** A subject for every level that a group may have. */
    private final List<Subject> seen;
    private final Assumptions assumptions;
    private final List<Term> terms = new ArrayList<>();
    private final List<Design.Sum> sums = new ArrayList<>();
    private final List<Scatter.Gap> gaps = new ArrayList<>();
    private int columns;
    private int[] termOfColumn = new int[0];

    ModelTerms(List<Subject> seen, Assumptions assumptions) {
        this.seen = seen;
        this.assumptions = assumptions;
    }

    /** Adds a term behind the others, unless it has no coefficient. */
    <T extends Term> T add(T term) {
        if (term.count() > 0) {
            term.place(columns);
            columns += term.count();
            int before = termOfColumn.length;
            termOfColumn = Arrays.copyOf(termOfColumn, columns);
            Arrays.fill(termOfColumn, before, columns, terms.size());
            terms.add(term);
        }
        return term;
    }

    /** Adds levels of a group, each times a measure. */
    Terms.Levels levels(String name, Group group, Terms.Prior prior, Function<Subject, Optional<String>> key,
            ToDoubleBiFunction<Subject, Measured> times) {
        return add(new Terms.Levels(name, group, prior, seen, key, times));
    }

    /** Adds levels of a group where the rows differ in it. */
    void group(String name, Group group, double spread, Function<Subject, Optional<String>> key) {
        Terms.Levels levels = new Terms.Levels(name, group, Terms.Prior.secondary(spread), seen, key, ONE);
        if (levels.varied()) {
            add(levels);
        }
    }

    /** Says that a term of one column is in each row the sum of another one, which has an entry in each row. */
    void parts(Term sum, Term parts) {
        sums.add(new Design.Sum(sum.from(), parts.from(), parts.count()));
    }

    /** Something that rows may leave open, where there is such a term. */
    void gap(String term, double size, Predicate<Subject> isOpen, String remark) {
        if (terms.stream().anyMatch(t -> t.name().equals(term))) {
            gaps.add(new Scatter.Gap(term, size, isOpen, remark));
        }
    }

    List<Subject> seen() {
        return seen;
    }

    Assumptions assumptions() {
        return assumptions;
    }

    /** The middle of an assumption. */
    double assumed(String name) {
        return assumptions.get(name).middle();
    }

    /** The terms so far. */
    List<Term> all() {
        return terms;
    }

    /** Terms that are in each row the sum of others, as an age is of the ages by line. */
    List<Design.Sum> sums() {
        return sums;
    }

    List<Scatter.Gap> gaps() {
        return gaps;
    }

    int columns() {
        return columns;
    }

    /** For each column the number of its term. */
    int[] termOfColumn() {
        return termOfColumn;
    }
}
