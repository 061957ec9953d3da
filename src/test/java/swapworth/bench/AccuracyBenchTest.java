package swapworth.bench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import swapworth.market.PriceModel;
import swapworth.statistics.Reference;
import swapworth.world.SampleWorld;

/** That the references are what they say, and that the bench's figures hang together. */
class AccuracyBenchTest {

    private static double[][] stackLoss() {
        Reference data = Reference.read("stackloss/stackloss.csv");
        return IntStream.range(0, data.rows()).mapToObj(i -> new double[] {1, data.number(i, "Air.Flow"),
            data.number(i, "Water.Temp"), data.number(i, "Acid.Conc.")}).toArray(double[][]::new);
    }

    private static double[] loss() {
        return Reference.read("stackloss/stackloss.csv").numbers("stack.loss");
    }

    /** Source: R 4.2.2, MASS::rlm, Huber's weights, k = 1.345, scale by the median about 0, acc = 1e-13. */
    @Test
    void the_huber_fit_agrees_with_a_statistics_package() {
        double[] expected = {-41.026485373295, 0.829385770253848, 0.926059415548634, -0.127846317965418};
        ReferenceSquares fit = ReferenceSquares.huber(stackLoss(), loss());
        for (int j = 0; j < expected.length; j++) {
            assertTrue(Reference.digits(fit.coefficients()[j], expected[j]) >= 8, "coefficient " + j);
        }
        assertTrue(Reference.digits(fit.scale(), 2.44048904599291) >= 8, "scale " + fit.scale());
    }

    /** Source: NIST StRD, Longley. */
    @Test
    void least_squares_agree_with_certified_values() {
        Reference data = Reference.read("nist-linear/nist_Longley.csv");
        Reference certified = Reference.read("nist-linear/certified.csv").where("dataset", "Longley");
        double[][] x = IntStream.range(0, data.rows()).mapToObj(i -> IntStream.range(0, 7)
                .mapToDouble(j -> j == 0 ? 1 : data.number(i, "x" + j)).toArray()).toArray(double[][]::new);
        ReferenceSquares fit = ReferenceSquares.of(x, data.numbers("y"));
        for (int j = 0; j < 7; j++) {
            assertTrue(Reference.digits(fit.coefficients()[j], certified.number(j, "estimate")) >= 9, "coefficient " + j);
        }
        assertTrue(Reference.digits(fit.scale(), 304.854073561964802) >= 9, "scale");
    }

    /** By hand: 1 to 5 about their mean have s = sqrt(2.5); t is 2.776445 at 97.5 % with 4 degrees of freedom. */
    @Test
    void the_prediction_interval_is_the_usual_one() {
        double[][] ones = {{1}, {1}, {1}, {1}, {1}};
        ReferenceSquares fit = ReferenceSquares.of(ones, new double[] {1, 2, 3, 4, 5});
        assertEquals(3, fit.predicted(new double[] {1}), 1e-12);
        assertEquals(2.776445 * Math.sqrt(2.5 * 1.2), fit.reach(new double[] {1}, 0.95), 1e-5);
    }

    @Test
    void columns_that_tell_nothing_new_change_no_fit() {
        double[][] x = stackLoss();
        double[][] more = Arrays.stream(x)
                .map(r -> new double[] {r[0], 7, r[1], r[1] + r[0], r[2], r[3], 0}).toArray(double[][]::new);
        ReferenceSquares plain = ReferenceSquares.of(x, loss());
        ReferenceSquares doubled = ReferenceSquares.of(more, loss());
        for (int i = 0; i < x.length; i++) {
            assertEquals(plain.predicted(x[i]), doubled.predicted(more[i]), 1e-9);
            assertEquals(plain.reach(x[i], 0.8), doubled.reach(more[i], 0.8), 1e-9);
        }
    }

    @Test
    void the_ridge_leaves_rows_out_as_a_fit_without_them_does() {
        double[][] x = stackLoss();
        double[] y = loss();
        for (double penalty : new double[] {0.001, 1, 300}) {
            double[] shortcut = new ReferenceRidge(x, 2, y).leftOut(penalty);
            for (int i = 0; i < y.length; i++) {
                int out = i;
                int[] rest = IntStream.range(0, y.length).filter(k -> k != out).toArray();
                double[][] others = Arrays.stream(rest).mapToObj(k -> x[k]).toArray(double[][]::new);
                double[] prices = Arrays.stream(rest).mapToDouble(k -> y[k]).toArray();
                double[] b = new ReferenceRidge(others, 2, prices).coefficients(penalty);
                assertEquals(y[i] - ReferenceSquares.dot(b, x[i]), shortcut[i], 1e-9, "row " + i + " at " + penalty);
            }
        }
    }

    /** The normal equations of the penalised sum of squares: x'(y - x b) = penalty b where penalised, 0 where free. */
    @Test
    void the_ridge_solves_its_own_equations() {
        double[][] x = stackLoss();
        double[] y = loss();
        double[] b = new ReferenceRidge(x, 2, y).coefficients(30);
        for (int j = 0; j < b.length; j++) {
            double pull = 0;
            for (int i = 0; i < y.length; i++) {
                pull += x[i][j] * (y[i] - ReferenceSquares.dot(b, x[i]));
            }
            assertEquals(j < 2 ? 0 : 30 * b[j], pull, 1e-8, "column " + j);
        }
    }

    @Test
    void a_ridge_without_further_columns_is_least_squares() {
        double[] free = ReferenceSquares.of(stackLoss(), loss()).coefficients();
        ReferenceRidge ridge = new ReferenceRidge(stackLoss(), 4, loss());
        assertArrayEquals(free, ridge.coefficients(ridge.best()), 1e-9);
    }

    @Test
    void right_values_with_endless_ranges_have_no_error_and_hold_every_price() {
        double[] prices = {1000, 2000, 4000};
        double[] figures = Figure.of(Arrays.stream(prices).mapToObj(p -> new Prediction(p, 0, Double.POSITIVE_INFINITY, 0,
                Double.POSITIVE_INFINITY, Prediction.Answer.OWN)).toList(), prices);
        assertEquals(0, figures[Figure.MEDIAN_ERROR.ordinal()]);
        assertEquals(0, figures[Figure.COD.ordinal()]);
        assertEquals(1, figures[Figure.PRD.ordinal()], 1e-12);
        assertEquals(100, figures[Figure.WITHIN_10.ordinal()]);
        assertEquals(100, figures[Figure.COVER_80.ordinal()]);
        assertEquals(100, figures[Figure.COVER_95.ordinal()]);
        assertEquals(Double.POSITIVE_INFINITY, figures[Figure.SCORE_95.ordinal()]);
    }

    /** By hand: 3 misses of 10, 20 and 50 %; one price of three lies a factor e above its 80 % range, ln 4 wide. */
    @Test
    void figures_are_those_reckoned_by_hand() {
        List<Prediction> predictions = List.of(new Prediction(1100, 500, 2000, 400, 8000, Prediction.Answer.OWN),
                new Prediction(800, 250 / Math.E, 1000 / Math.E, 100, 1600, Prediction.Answer.OWN), Prediction.cannotTell(1500));
        double[] figures = Figure.of(predictions, new double[] {1000, 1000, 1000});
        assertEquals(20, figures[Figure.MEDIAN_ERROR.ordinal()], 1e-9);
        assertEquals((Math.log(1.1) - Math.log(0.8) + Math.log(1.5)) / 3, figures[Figure.LOG_ERROR.ordinal()], 1e-12);
        assertEquals(50, figures[Figure.COVER_80.ordinal()], "of the two that have a range");
        assertEquals(100, figures[Figure.COVER_95.ordinal()]);
        assertEquals(Math.log(4), figures[Figure.WIDTH_80.ordinal()], 1e-12);
        assertEquals(Math.log(4) + 10 * 1.0 / 2, figures[Figure.SCORE_80.ordinal()], 1e-9);
        assertEquals(100.0 / 3, figures[Figure.CANNOT_TELL.ordinal()], 1e-9);
    }

    private static List<BenchCar> cars(long seed) {
        return BenchCar.take(SampleWorld.generate(seed).joinedCars(), List.of(), 200, BenchCar.Gaps.KEPT).cars();
    }

    @Test
    void a_method_over_itself_is_one_and_draws_do_not_depend_on_what_else_is_drawn() throws InterruptedException {
        List<BenchCar> all = cars(5);
        Map<String, Long> counts = all.stream()
                .collect(Collectors.groupingBy(c -> c.car().facts().vehicle(), Collectors.counting()));
        List<String> largest = counts.keySet().stream().sorted(Comparator.comparing(counts::get).reversed()).limit(2).toList();
        String line = largest.get(0);
        List<BenchCar> two = all.stream().filter(c -> largest.contains(c.car().facts().vehicle())).toList();
        Scores scores = new AccuracyBench(PriceModel.options(), 2, List.of(10, 12), 3, 0.15).run(two);
        Scores alone = new AccuracyBench(PriceModel.options(), 2, List.of(12), 3, 0.15)
                .run(all.stream().filter(c -> c.car().facts().vehicle().equals(line)).toList());
        List<Scores.OfSet> same = scores.of(line, 12).toList();
        assertEquals(2, same.size());
        for (int i = 0; i < 2; i++) {
            assertArrayEquals(alone.sets().get(i).clean(), same.get(i).clean());
            assertArrayEquals(alone.sets().get(i).gross(), same.get(i).gross());
        }
        assertNotEquals(same.get(0).of(Method.OURS, Figure.LOG_ERROR), same.get(1).of(Method.OURS, Figure.LOG_ERROR));
        for (Method m : Method.values()) {
            assertEquals(1, scores.overLines(12, s -> s.ratio(Figure.MEDIAN_ERROR, m, m)).mean(), 1e-12);
        }
        String text = ScoreTables.averages(scores).text() + ScoreTables.against(scores).text() + ScoreTables.lines(scores).text()
                + ScoreTables.gross(scores).text();
        assertTrue(text.contains(line) && text.contains(Method.RIDGE.words()), text);
        long rows = (scores.lines(10).size() + scores.lines(12).size() + 2L) * Method.values().length;
        assertEquals(1 + rows, ScoreTables.all(scores).csv().lines().count());
    }

    @Test
    void means_over_lines_weigh_lines_alike_and_carry_the_error_over_sets() {
        double[][] none = new double[0][];
        List<Scores.OfSet> sets = IntStream.of(1, 3, 10, 10, 10)
                .mapToObj(v -> new Scores.OfSet(v < 5 ? "a" : "b", 12, v, new double[][] {{v}}, none)).toList();
        Scores.Mean mean = new Scores(sets).overLines(12, s -> s.clean()[0][0]);
        assertEquals(6, mean.mean(), 1e-12);
        // The standard error of 1 and 3 is 1, that of the other line 0.
        assertEquals(0.5, mean.error(), 1e-12);
    }

    @Test
    void gross_errors_strike_the_stated_share_of_training_rows_and_no_other() {
        List<BenchCar> ofLine = cars(6).stream().filter(c -> !Double.isNaN(c.miles())).limit(100).toList();
        TrainingSet clean = TrainingSet.draw(ofLine, 40, 0, 1);
        TrainingSet dirty = clean.withGrossErrors(0.15);
        assertEquals(clean.leftOut(), dirty.leftOut());
        assertEquals(42, dirty.training().size(), "two of six errors stand twice");
        List<BenchCar> before = clean.training();
        List<BenchCar> after = dirty.training();
        long price = IntStream.range(0, 40).filter(i -> after.get(i).price() < 0.11 * before.get(i).price()).count();
        long miles = IntStream.range(0, 40).filter(i -> after.get(i).miles() > 1.6 * before.get(i).miles()).count();
        assertEquals(2, price);
        assertEquals(2, miles);
        assertTrue(clean.leftOut().stream().noneMatch(clean.training()::contains), "no car on both sides");
    }
}
