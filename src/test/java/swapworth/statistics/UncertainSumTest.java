package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.junit.jupiter.api.Test;
import swapworth.statistics.UncertainSum.Line;

/** Amounts that are drawn: laws against closed forms, draws against laws, sums against the arithmetic of variances. */
class UncertainSumTest {
    private static final int MANY = 400_000;
    private static final int SOME = 100_000;
    private static final int HASH = 108_563_223;

    private static Line line(AmountLaw law, int group, double withGroup) {
        return new Line(law, group, withGroup, 1, 1, 0);
    }

    /** The laws of the closed forms, each with its row. */
    private static Map<AmountLaw, Map<String, Double>> laws() {
        Map<AmountLaw, Map<String, Double>> laws = new LinkedHashMap<>();
        for (String kind : List.of("triangular", "pert", "lognormal")) {
            Reference rows = Reference.read("sampling-laws/" + kind + ".csv");
            for (int r = 0; r < rows.rows(); r++) {
                if (kind.equals("pert") && rows.number(r, "lambda") != 4) {
                    continue;
                }
                AmountLaw law = switch (kind) {
                    case "triangular" -> AmountLaw.triangular(rows.number(r, "min"), rows.number(r, "mode"), rows.number(r, "max"));
                    case "pert" -> AmountLaw.pert(rows.number(r, "min"), rows.number(r, "mode"), rows.number(r, "max"));
                    default -> AmountLaw.lognormal(Math.exp(rows.number(r, "mu")), rows.number(r, "sigma"));
                };
                Map<String, Double> row = new LinkedHashMap<>();
                for (String column : List.of("mean", "variance", "q05", "q10", "q25", "q50", "q75", "q90", "q95")) {
                    row.put(column, rows.number(r, column));
                }
                laws.put(law, row);
            }
        }
        return laws;
    }

    // Source: closed forms in 40 digits, see reference/sampling-laws/SOURCE.md.
    @Test
    void laws_have_the_moments_and_quantiles_of_their_closed_forms() {
        int checked = 0;
        for (Map.Entry<AmountLaw, Map<String, Double>> entry : laws().entrySet()) {
            AmountLaw law = entry.getKey();
            Map<String, Double> row = entry.getValue();
            assertTrue(Reference.digits(law.mean(), row.get("mean")) >= 13);
            assertTrue(Reference.digits(law.sd() * law.sd(), row.get("variance")) >= 13);
            for (String q : List.of("q05", "q10", "q25", "q50", "q75", "q90", "q95")) {
                double wanted = row.get(q);
                assertEquals(wanted, law.quantile(Integer.parseInt(q.substring(1)) / 100.0), 5e-5 * law.sd(), q + " of " + row);
                checked++;
            }
        }
        assertEquals(70, checked);
    }

    // Oracle: Apache Commons Math 3.6.1.
    @Test
    void the_beta_law_agrees_with_another_implementation_into_the_tails() {
        for (double[] three : new double[][] {{0, 0, 1}, {0, 0.02, 1}, {0, 0.5, 1}, {0, 0.9, 1}, {0, 1, 1}}) {
            BetaDistribution other = new BetaDistribution(1 + 4 * three[1], 1 + 4 * (1 - three[1]));
            AmountLaw law = AmountLaw.pert(three[0], three[1], three[2]);
            for (double p : new double[] {1e-6, 1e-4, 0.001, 0.01, 0.3, 0.7, 0.99, 0.999, 0.9999, 1 - 1e-6}) {
                assertEquals(p, other.cumulativeProbability(law.quantile(p)), 2e-4 * Math.min(p, 1 - p) + 1e-9, "mode " + three[1]);
            }
        }
    }

    /** The density of a law at a quantile, by its table. */
    private static double density(AmountLaw law, double p) {
        double z = Normal.quantile(p);
        return Normal.density(z) / ((law.at(z + 0.05) - law.at(z - 0.05)) / 0.1);
    }

    /**
     * Three standard errors as the closed forms give them, over eight seeds: of some thousand checks about 0.27 % miss by chance, and no
     * more than 1 % may; none may miss by more than four and a half.
     */
    @Test
    void draws_have_the_moments_and_quantiles_of_their_law_within_three_standard_errors() {
        List<String> misses = new ArrayList<>();
        int checks = 0;
        for (Map.Entry<AmountLaw, Map<String, Double>> entry : laws().entrySet()) {
            AmountLaw law = entry.getKey();
            double[] probabilities = {0.001, 0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99, 0.999};
            for (int seed = 1; seed <= 8; seed++) {
                double[] draws = UncertainSum.of(List.of(line(law, 0, 0.5))).totals(SOME, seed);
                Arrays.sort(draws);
                double mean = 0;
                double second = 0;
                double fourth = 0;
                for (double draw : draws) {
                    double square = (draw - law.mean()) * (draw - law.mean());
                    mean += draw / SOME;
                    second += square / SOME;
                    fourth += square * square / SOME;
                }
                within(misses, "mean of " + entry.getValue(), (mean - law.mean()) / (law.sd() / Math.sqrt(SOME)));
                within(misses, "variance of " + entry.getValue(),
                        (second - law.sd() * law.sd()) / Math.sqrt((fourth - second * second) / SOME));
                for (double p : probabilities) {
                    double error = Math.sqrt(p * (1 - p) / SOME) / density(law, p);
                    within(misses, "quantile " + p + " of " + entry.getValue(), (Quantiles.ofSorted(draws, p) - law.quantile(p)) / error);
                }
                checks += 2 + probabilities.length;
            }
        }
        assertEquals(10 * 8 * 13, checks);
        assertTrue(misses.size() <= checks / 100, misses.toString());
    }

    private static void within(List<String> misses, String what, double errors) {
        assertTrue(Math.abs(errors) < 4.5, what + " misses by " + errors + " standard errors");
        if (Math.abs(errors) > 3) {
            misses.add(what + ": " + errors);
        }
    }

    // Closed form: the variance of a sum is the sum of variances and twice the covariances.
    @Test
    void correlated_normals_add_up_to_a_normal_with_their_covariances() {
        double common = Math.sqrt(0.3);
        List<Line> lines = List.of(line(AmountLaw.normal(100, 30), 0, common), line(AmountLaw.normal(50, 40), 0, common),
                line(AmountLaw.normal(-20, 20), 1, common));
        double[] draws = UncertainSum.of(lines).totals(MANY, 5);
        double mean = Arrays.stream(draws).average().orElseThrow();
        double variance = Arrays.stream(draws).map(v -> (v - 130) * (v - 130)).average().orElseThrow();
        double exact = 900 + 1600 + 2 * 0.3 * 30 * 40 + 400;
        assertEquals(130, mean, 3 * Math.sqrt(exact / MANY));
        assertEquals(exact, variance, 3 * exact * Math.sqrt(2.0 / MANY));
        for (double p : new double[] {0.001, 0.1, 0.9, 0.999}) {
            double z = Normal.quantile(p);
            double error = Math.sqrt(p * (1 - p) / MANY) / (Normal.density(z) / Math.sqrt(exact));
            assertEquals(130 + z * Math.sqrt(exact), Quantiles.of(draws, p), 3 * error, "quantile " + p);
        }
    }

    // Source: reference values 14, 'sum of independent': mean 3533.33, variance 1130396.83.
    @Test
    void independent_amounts_of_two_laws_add_up() {
        AmountLaw first = AmountLaw.triangular(1000, 2500, 6000);
        double[] draws = UncertainSum.of(List.of(line(first, 0, 0), new Line(AmountLaw.pert(0, 3, 10), 1, 0, 100, 1, 0))).totals(MANY, 9);
        double mean = Arrays.stream(draws).average().orElseThrow();
        double variance = Arrays.stream(draws).map(v -> (v - 3533.3333333333333) * (v - 3533.3333333333333)).average().orElseThrow();
        assertEquals(3533.3333333333333, mean, 3 * Math.sqrt(1130396.8253968254 / MANY));
        assertEquals(1130396.8253968254, variance, 3 * 1130396.8253968254 * Math.sqrt(2.0 / MANY));
    }

    @Test
    void parts_add_up_to_the_sum_and_covariances_to_its_variance() {
        List<Line> lines = List.of(new Line(AmountLaw.pert(10, 20, 60), 0, 0.5, 1, 1, 0), new Line(AmountLaw.lognormal(30, 0.3), 0, 0.5, -1,
                1, 2),
                new Line(AmountLaw.exactly(7), 1, 0, 1, 1, 1), new Line(AmountLaw.exactly(50), 1, 0, 1, 0.25, 1));
        UncertainSum.Drawn drawn = UncertainSum.of(lines).drawn(5000, 3);
        double[] totals = UncertainSum.of(lines).totals(5000, 3);
        assertArrayEquals(totals, drawn.totals());
        double[][] parts = {drawn.bin(0), drawn.bin(1), drawn.bin(2)};
        double mean = Arrays.stream(totals).average().orElseThrow();
        double variance = Arrays.stream(totals).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
        for (int i = 0; i < totals.length; i++) {
            assertEquals(totals[i], parts[0][i] + parts[1][i] + parts[2][i], 1e-9);
        }
        assertEquals(variance, Arrays.stream(drawn.covariances()).sum(), 1e-9 * variance);
        assertEquals(0, drawn.covariances()[2], 1e-9);
        double often = Arrays.stream(parts[1]).filter(v -> v > 50).count() / 5000.0;
        assertEquals(0.25, often, 3 * Math.sqrt(0.25 * 0.75 / 5000));
    }

    @Test
    void nobody_can_write_into_what_was_drawn_or_observed() {
        UncertainSum.Drawn drawn = UncertainSum.of(List.of(new Line(AmountLaw.pert(10, 20, 60), 0, 0, 1, 1, 0))).drawn(100, 3);
        double total = drawn.totals()[7];
        Arrays.fill(drawn.totals(), 0);
        Arrays.fill(drawn.bin(0), 0);
        Arrays.fill(drawn.covariances(), 0);
        assertEquals(total, drawn.totals()[7]);
        assertEquals(total, drawn.bin(0)[7]);
        assertTrue(drawn.covariances()[0] > 0);
        Sample sample = Sample.of(3, 4);
        Arrays.fill(sample.y(), 0);
        Arrays.fill(sample.bound(), Bound.BELOW);
        Arrays.fill(sample.inflation(), 0);
        Arrays.fill(sample.known(), 7);
        Arrays.fill(sample.growth(), 7);
        assertArrayEquals(new double[] {3, 4}, sample.y());
        assertArrayEquals(new Bound[] {Bound.NONE, Bound.NONE}, sample.bound());
        assertArrayEquals(new double[] {1, 1}, sample.inflation());
        assertArrayEquals(new double[2], sample.known());
        assertArrayEquals(new double[2], sample.growth());
        double[] factors = {2, 3};
        Sample wider = sample.withInflation(factors);
        factors[0] = 9;
        assertEquals(2, wider.inflation(0));
        assertEquals(1, sample.inflation(0));
    }

    @Test
    void the_same_seed_gives_the_same_bits_on_every_machine() {
        List<Line> lines = List.of(line(AmountLaw.pert(10, 20, 60), 0, 0.5), line(AmountLaw.lognormal(30, 0.3), 0, 0.5),
                line(AmountLaw.triangular(0, 1, 2), 1, 0));
        assertEquals(HASH, Arrays.hashCode(UncertainSum.of(lines).totals(20_000, 17)));
        double[] fewer = UncertainSum.of(lines).totals(3000, 17);
        assertArrayEquals(fewer, Arrays.copyOf(UncertainSum.of(lines).totals(20_000, 17), 3000), "fewer draws are the first of more");
    }

    @Test
    void normal_numbers_come_from_strips_that_fit_and_reach_into_the_tail() {
        double area = NormalSource.EDGE[0] * NormalSource.HEIGHT[1];
        double top = NormalSource.EDGE[NormalSource.STRIPS - 1] * (1 - NormalSource.HEIGHT[NormalSource.STRIPS - 1]);
        assertEquals(1, top / area, 1e-11);
        NormalSource source = new NormalSource(new SplittableRandom(4));
        int n = 2_000_000;
        int[] beyond = new int[5];
        for (int i = 0; i < n; i++) {
            double z = source.next();
            for (int k = 0; k < beyond.length; k++) {
                beyond[k] += z > k ? 1 : 0;
            }
        }
        for (int k = 0; k < beyond.length; k++) {
            double p = Normal.cumulative(-k);
            assertEquals(p, beyond[k] / (double) n, 3.5 * Math.sqrt(p * (1 - p) / n), "beyond " + k);
        }
    }

    @Test
    void what_is_no_law_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> AmountLaw.pert(3, 2, 4));
        assertThrows(IllegalArgumentException.class, () -> AmountLaw.triangular(1, 5, 4));
        assertThrows(IllegalArgumentException.class, () -> AmountLaw.lognormal(0, 0.1));
        assertThrows(IllegalArgumentException.class, () -> AmountLaw.normal(1, -1));
        assertThrows(IllegalArgumentException.class, () -> AmountLaw.exactly(Double.NaN));
        assertEquals(0, AmountLaw.pert(4, 4, 4).sd());
        assertEquals(4, AmountLaw.pert(4, 4, 4).quantile(0.9));
    }
}
