package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import swapworth.market.Measures.Measured;
import swapworth.statistics.PriorBlock.Role;

/**
 * The terms of age and distance: slopes of all cars and of each line, curves, their product, and how far model years differ.
 *
 * @param middleAge the age at which slopes are stated, years
 * @param middleMiles the distance at which they are
 */
record AgeTerms(double middleAge, double middleMiles) {

    /**
     * Adds the terms.
     *
     * @param ages the age of every row, in any order
     * @param miles its distance
     * @return the names of the blocks that say how prices go with age and distance, slopes, curves and their product
     */
    List<String> addTo(ModelTerms terms, double weightOfMile, double[] ages, double[] miles) {
        int first = terms.all().size();
        Term age = terms.add(new Terms.Measure("age", Group.AGE, "% per year", Terms.Prior.of(terms.assumptions(), "age_slope"),
                this::age));
        Term mileage = terms.add(new Terms.Measure("mileage", Group.MILEAGE, TermEffect.PER_10000_MILES,
                Terms.Prior.of(terms.assumptions(), "mileage_slope").times(weightOfMile), this::weighted));
        terms.parts(age, terms.levels("how far the age slopes of lines differ", Group.AGE,
                Terms.Prior.secondary(terms.assumed("spread_line_age_slopes")), LevelWords::line, this::age));
        terms.parts(mileage, terms.levels("how far the mileage slopes of lines differ", Group.MILEAGE,
                Terms.Prior.secondary(weightOfMile * terms.assumed("spread_line_mileage_slopes")), LevelWords::line, this::weighted));
        terms.add(new Terms.Curve("curve of age", Group.AGE, terms.assumed("curve_age"), middleAge, 5, ages, (s, m) -> m.age()));
        terms.add(new Terms.Curve("curve of mileage", Group.MILEAGE, terms.assumed("curve_mileage"), middleMiles, 50_000, miles,
                (s, m) -> m.miles()));
        terms.add(new Terms.Measure("age times mileage", Group.MILEAGE, "",
                new Terms.Prior(0, terms.assumed("product_age_mileage"), Role.SECONDARY),
                (s, m) -> age(s, m) / 5 * tenThousands(s, m) / 5));
        List<String> blocks = new ArrayList<>();
        terms.all().subList(first, terms.all().size()).forEach(term -> term.priors().forEach(block -> blocks.add(block.name())));
        terms.group("how far model years differ", Group.AGE, terms.assumed("spread_vintage"), LevelWords::vintage);
        return blocks;
    }

    private double age(Subject s, Measured m) {
        return m.age() - middleAge;
    }

    private double tenThousands(Subject s, Measured m) {
        return (m.miles() - middleMiles) / 10_000;
    }

    /** The mileage as slopes take it, by what a mile of such a car counts. */
    private double weighted(Subject s, Measured m) {
        return tenThousands(s, m) * m.weightOfMile();
    }
}
