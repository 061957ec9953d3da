package swapworth.market;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.Facts;
import swapworth.listing.KeptList;
import swapworth.statistics.ErrorLaw;
import swapworth.statistics.ErrorScale;
import swapworth.statistics.Integration;
import swapworth.statistics.Posterior;
import swapworth.statistics.Posterior.LeaveOut;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.ShrunkenRegression;

/**
 * How a price model comes about: the evidence in the cars, the terms and rows made of it, what is believed of the terms, and how far single
 * prices scatter about that. What it has found, the model is asked for.
 */
final class PriceFit {
    /** So often it is asked how lines scatter. */
    static final int PASSES = 3;
    /** Up to this many prices the hyperparameters are averaged over. */
    private static final int INTEGRATED = 2000;

    private final List<Car> cars;
    private final Assumptions assumptions;
    private final List<String> further;
    private final EvidenceList evidence;
    private final Encoder encoder;
    private final List<PriorBlock> blocks;
    private final EncodedRows encoded;
    private final Posterior posterior;
    private final Stretches stretches;
    private final LeftOut leftOut;
    private final Map<String, Integer> carsOfLine;
    /** Found when first asked for, once; of many prices at once, beside all else. */
    private final FutureTask<List<Confounded>> confounded;

    /**
     * Fits a model.
     *
     * @param further the further columns that it takes in
     * @throws IllegalArgumentException if no car has a price
     */
    PriceFit(List<Car> cars, Assumptions assumptions, List<String> further) {
        this.cars = KeptList.copyOf(cars);
        this.assumptions = assumptions;
        this.further = List.copyOf(further);
        EvidenceList.Found found = EvidenceList.in(this.cars, further);
        this.evidence = found.evidence();
        if (evidence.isEmpty()) {
            throw new IllegalArgumentException("a price model needs at least one car with a price");
        }
        int[] firstRow = evidence.firstRows();
        Stretches.Chosen chosen = Stretches.Chosen.of(evidence, found.stock());
        this.encoder = new Encoder(evidence, found.stock(), assumptions, further);
        this.blocks = encoder.priors();
        double sameCar = sameCarScale();
        Optional<CompletableFuture<ShrunkenRegression.Found>> search = searchBegun(sameCar);
        EncodedRows rows = new EncodedRows(evidence, encoder, sameCar);
        this.carsOfLine = counted(firstRow);
        this.confounded = new FutureTask<>(() -> new Confounding(evidence, encoder, rows).all());
        if (evidence.size() > Confounding.MOST_PRICES) {
            ForkJoinPool.commonPool().execute(confounded);
        }
        ShrunkenRegression regression = regression(evidence.size());
        EncodedRows fitted = learnScatter(rows);
        Posterior fit = search.isEmpty() ? regression.fit(fitted.design(), fitted.sample(), blocks)
                : regression.fit(fitted.design(), fitted.sample(), blocks, found(search.get()));
        encoder.scatterAs(encoder.scatter().foundBy(fit, blocks));
        this.encoded = fitted.scatteredAnew();
        LeftOut leftOutOfFit = new LeftOut(evidence, firstRow, fit);
        this.stretches = Stretches.by(leftOutOfFit, errorLaw(), chosen, evidence, encoded, assumptions);
        this.posterior = fit.withTail(stretches.tail());
        this.leftOut = leftOutOfFit.withTail(stretches.tail());
    }

    /** How many cars each line has, those without a price in the fit among them. */
    private Map<String, Integer> counted(int[] firstRow) {
        Map<String, Integer> counts = encoder.carsOfLine();
        for (int c = 0; c < cars.size(); c++) {
            if (firstRow[c] == firstRow[c + 1]) {
                counts.merge(cars.get(c).facts().vehicle(), 1, Integer::sum);
            }
        }
        return counts;
    }

    private double sameCarScale() {
        return evidence.sameCarScale(assumptions.get("same_car_scale").middle());
    }

    /** The search for spreads keeps one processor busy most of the time: of many prices the rows of the others are made meanwhile. */
    private Optional<CompletableFuture<ShrunkenRegression.Found>> searchBegun(double sameCar) {
        int[] some = ShrunkenRegression.searchedIn(evidence.size());
        if (some.length == 0) {
            return Optional.empty();
        }
        // A pool of its own, for the common one makes the rows: a thread outside of it would spin while it waits for its share.
        ForkJoinPool pool = new ForkJoinPool(Runtime.getRuntime().availableProcessors());
        return Optional.of(CompletableFuture.supplyAsync(() -> {
            EncodedRows.Rows rows = EncodedRows.some(evidence, encoder, sameCar, some);
            return regression(evidence.size()).search(rows.design(), rows.sample(), blocks);
        }, pool).whenComplete((found, failure) -> pool.shutdown()));
    }

    private static ShrunkenRegression.Found found(CompletableFuture<ShrunkenRegression.Found> search) {
        try {
            return search.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw e.getCause() instanceof RuntimeException known ? known : e;
        }
    }

    private ErrorLaw errorLaw() {
        return ErrorLaw.student(4).withGrossErrors(assumptions.get("mistyped_prices").middle() / 100);
    }

    private ShrunkenRegression regression(int rows) {
        var scale = assumptions.get("error_scale");
        var growing = assumptions.get("error_growth_with_age");
        return ShrunkenRegression.withDefaults()
                .with(errorLaw())
                .with(ErrorScale.guessed(scale.middle(), scale.spread()))
                .withGrowth(growing.middle(), growing.spread())
                .withSecondarySpread(assumptions.get("secondary_scale").spread())
                .withChanceOfAbsence(assumptions.get("slopes_tell_nothing").middle() / 100, encoder.ofAgeAndMileage())
                .with(rows <= INTEGRATED ? Integration.POINTS : Integration.MODE);
    }

    /**
     * Has the encoder take up how the prices of lines scatter, those of crashed cars, and of cars that leave something open, from fits with
     * the hyperparameters held at their mode: three, for a price that was taken to be mistyped may be one of a line that scatters far.
     *
     * @return the rows with their factors on the error scale; of more than {@value #INTEGRATED} prices, where lines differ in what their
     *     ranges are stretched by, as they were
     */
    private EncodedRows learnScatter(EncodedRows rows) {
        int[] first = evidence.firstPrices();
        if (!isScatterLearned(evidence.size()) || first.length == 0
                || carsOfLine.size() == 1 && Arrays.stream(rows.sample().inflation()).allMatch(factor -> factor == 1)) {
            return rows;
        }
        ShrunkenRegression pilot = regression(evidence.size()).with(Integration.MODE);
        ShrunkenRegression.Found held = pilot.search(rows.design(), rows.sample(), blocks);
        List<Facts> cars = Arrays.stream(first).mapToObj(i -> evidence.subject(i).facts()).toList();
        EncodedRows scattered = rows;
        for (int pass = 0; pass < PASSES; pass++) {
            Posterior by = pilot.fit(scattered.design(), scattered.sample(), blocks, held);
            EncodedRows as = scattered;
            double[] z = Arrays.stream(first).mapToDouble(i -> as.deviate(by.leavingOut(LeaveOut.CLOSED_FORM, i), i)).toArray();
            encoder.scatterAs(encoder.scatter().foundBy(by, blocks).toldBy(cars, z, assumptions));
            scattered = scattered.scatteredAnew();
        }
        return scattered;
    }

    /** Whether the fit of so many prices has learned how lines and crashed cars scatter; of more the ranges do. */
    static boolean isScatterLearned(int prices) {
        return prices <= INTEGRATED;
    }

    /**
     * How probable it is that the dates of the listings tell nothing of their prices, neither of a market nor of ageing: as if each had
     * been drawn at random. By the marginal likelihood of the prices with and without their dates, and the assumption.
     */
    double chanceThatDatesTellNothing() {
        double assumed = assumptions.get("dates_tell_nothing").middle() / 100;
        if (assumed <= 0 || encoder.walk().isEmpty()) {
            return 0;
        }
        EvidenceList undated = evidence.undated();
        Encoder without = new Encoder(undated, Stock.of(undated, further), assumptions, further);
        without.scatterAs(encoder.scatter());
        EncodedRows rows = new EncodedRows(undated, without, sameCarScale());
        double more = posterior.logMarginal()
                - regression(rows.size()).fit(rows.design(), rows.sample(), without.priors()).logMarginal();
        return assumed / (assumed + (1 - assumed) * Math.exp(more));
    }

    /** See {@link PriceModel#confounded}. */
    List<Confounded> confounded() {
        confounded.run();
        try {
            return confounded.get();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** The cars that it was fitted to. */
    List<Car> cars() {
        return cars;
    }

    Assumptions assumptions() {
        return assumptions;
    }

    /** The further columns that it takes in. */
    List<String> further() {
        return further;
    }

    /** The prices. */
    EvidenceList evidence() {
        return evidence;
    }

    /** The terms. */
    Encoder encoder() {
        return encoder;
    }

    /** What is assumed of the terms. */
    List<PriorBlock> blocks() {
        return blocks;
    }

    /** The prices in the numbers of the model. */
    EncodedRows encoded() {
        return encoded;
    }

    /** What is believed of the terms. */
    Posterior posterior() {
        return posterior;
    }

    /** By how much ranges are stretched. */
    Stretches stretches() {
        return stretches;
    }

    /** What would be believed without one of the cars. */
    LeftOut leftOut() {
        return leftOut;
    }

    /** How many cars each line has. */
    Map<String, Integer> carsOfLine() {
        return carsOfLine;
    }
}
