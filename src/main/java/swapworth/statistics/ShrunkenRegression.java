package swapworth.statistics;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * A linear model whose coefficients are shrunk toward stated means: y = X b + e, b normal by blocks ({@link PriorBlock}), e of
 * Student's t (5 degrees of freedom unless stated) or normal, with a scale that may grow along one measure.
 *
 * <p>Common spreads of blocks have half-normal priors and are held at the mode of their logarithm, found by expectation and maximisation;
 * those of which nothing is assumed at their restricted maximum likelihood estimate. The error scale (ln-normal prior, or one with heavy
 * tails), its growth (normal prior), the common scale of the secondary spreads and the spread of the steps of a trending walk (ln-normal
 * priors) are averaged over a central composite design about their mode, each point weighted by its Laplace marginal likelihood: centre,
 * both ends of each axis and, up to 120 rows, the corners (of four axes every second one), all at 1.1 standard deviations times the root
 * of the number of axes from the centre, with weights that reproduce the first two moments of a normal law.
 *
 * <p>Sources: K. Lange, R. Little, J. Taylor, J. Amer. Statist. Assoc. 84 (1989) 881-896 for regression with t errors by weighted
 * least squares; L. Tierney, J. Kadane, J. Amer. Statist. Assoc. 81 (1986) 82-86 for Laplace's method; H. Rue, S. Martino, N.
 * Chopin, J. Roy. Statist. Soc. B 71 (2009) 319-392 for integrating hyperparameters on a composite design (all three from memory).
 *
 * <p>Immutable: {@code with} methods return changed copies.
 */
public final class ShrunkenRegression {
    /** Above this many rows the hyperparameters of a plugged-in fit are found with this many of them. */
    private static final int ENOUGH_FOR_SPREADS = 8000;
    /** Seed of the choice of these rows: any fixed number would do. */
    private static final long CHOICE = 20_260_101;

    final ErrorLaw law;
    final ErrorScale errorScale;
    final double growthMean;
    final double growthSpread;
    final double secondaryLogSpread;
    final Absence absence;
    final Integration integration;
    final double tolerance;

    private ShrunkenRegression(ErrorLaw law, ErrorScale errorScale, double growthMean, double growthSpread, double secondaryLogSpread,
            Absence absence, Integration integration, double tolerance) {
        this.law = law;
        this.errorScale = errorScale;
        this.growthMean = growthMean;
        this.growthSpread = growthSpread;
        this.secondaryLogSpread = secondaryLogSpread;
        this.absence = absence;
        this.integration = integration;
        this.tolerance = tolerance;
    }

    /**
     * Student's t with 5 degrees of freedom, an error scale about 0.2 that may be half or twice that, no growth, secondary spreads as
     * stated within a factor of about 1.6, hyperparameters integrated.
     *
     * @return the defaults
     */
    public static ShrunkenRegression withDefaults() {
        return new ShrunkenRegression(ErrorLaw.student(5), new ErrorScale.Unsure(0.2, 0.5), 0, 0, 0.5, Absence.NONE, Integration.POINTS,
                1e-3);
    }

    /**
     * Changes the law of the errors.
     *
     * @param law the law
     * @return a copy
     */
    public ShrunkenRegression with(ErrorLaw law) {
        return new ShrunkenRegression(requireNonNull(law, "law"), errorScale, growthMean, growthSpread, secondaryLogSpread, absence,
                integration, tolerance);
    }

    /**
     * Changes what is known of the error scale.
     *
     * @param errorScale stated or unsure
     * @return a copy
     */
    public ShrunkenRegression with(ErrorScale errorScale) {
        return new ShrunkenRegression(law, requireNonNull(errorScale, "errorScale"), growthMean, growthSpread, secondaryLogSpread, absence,
                integration, tolerance);
    }

    /**
     * Changes what becomes of the hyperparameters.
     *
     * @param integration averaged over points, or held at the mode
     * @return a copy
     */
    public ShrunkenRegression with(Integration integration) {
        return new ShrunkenRegression(law, errorScale, growthMean, growthSpread, secondaryLogSpread, absence,
                requireNonNull(integration, "integration"), tolerance);
    }

    /**
     * Lets the error scale of row i be multiplied by exp(growth times the row's measure).
     *
     * @param mean prior mean of the growth per unit of the measure
     * @param spread prior standard deviation; 0 holds the growth at its mean
     * @return a copy
     */
    public ShrunkenRegression withGrowth(double mean, double spread) {
        return new ShrunkenRegression(law, errorScale, mean, spread, secondaryLogSpread, absence, integration, tolerance);
    }

    /**
     * Changes how unsure the common scale of the secondary spreads is.
     *
     * @param logSpread standard deviation of its logarithm; 0 holds it at 1
     * @return a copy
     */
    public ShrunkenRegression withSecondarySpread(double logSpread) {
        return new ShrunkenRegression(law, errorScale, growthMean, growthSpread, logSpread, absence, integration, tolerance);
    }

    /**
     * Allows for coefficients that are all 0, where the rows speak for it: then a fit without them is averaged with the one that has them,
     * each by its marginal likelihood. Where the rows do not speak for it, and where hyperparameters are held at their mode
     * ({@link Integration#MODE}), all stays as without such a chance.
     *
     * @param chance that all of them are 0, before any row speaks; 0 for not at all
     * @param blocks the names of their blocks, of which something is assumed, of at least one a stated spread
     * @return a copy
     * @throws IllegalArgumentException if the chance is not from 0 to below 1; a fit throws it where nothing is assumed of such a block
     */
    public ShrunkenRegression withChanceOfAbsence(double chance, List<String> blocks) {
        return new ShrunkenRegression(law, errorScale, growthMean, growthSpread, secondaryLogSpread, new Absence(chance, blocks),
                integration, tolerance);
    }

    /**
     * Changes how closely the mode is found.
     *
     * @param tolerance the last step moves the coefficients by less than this share of their own uncertainty; 1e-3 unless stated
     * @return a copy
     */
    public ShrunkenRegression withTolerance(double tolerance) {
        return new ShrunkenRegression(law, errorScale, growthMean, growthSpread, secondaryLogSpread, absence, integration, tolerance);
    }

    /**
     * Fits the model.
     *
     * @param design n x p
     * @param sample n responses
     * @param priors blocks that together name each of the p coefficients once
     * @return the posterior
     * @throws IllegalArgumentException if sizes do not fit or there is no row
     * @throws ConfoundedColumnsException if nothing is assumed of some coefficients and the rows cannot tell them apart
     */
    public Posterior fit(Design design, Sample sample, List<PriorBlock> priors) {
        check(design, sample, priors);
        refuseConfounded(design, priors);
        int[] some = integration == Integration.MODE ? searchedIn(sample.size()) : new int[0];
        return some.length == 0 ? new Fitting(this, design, sample, List.copyOf(priors)).run()
                : fit(design, sample, priors, search(design.some(some), sample.some(some), priors));
    }

    /**
     * The rows in which a fit of many holds its hyperparameters at the mode that these alone tell: one out of each of many equal stretches.
     *
     * @param rows n, the number of all rows
     * @return their numbers; none where all are looked at
     */
    public static int[] searchedIn(int rows) {
        if (rows <= ENOUGH_FOR_SPREADS) {
            return new int[0];
        }
        SplittableRandom random = new SplittableRandom(CHOICE);
        int[] chosen = new int[ENOUGH_FOR_SPREADS];
        for (int k = 0; k < chosen.length; k++) {
            int first = (int) ((long) rows * k / chosen.length);
            int next = (int) ((long) rows * (k + 1) / chosen.length);
            chosen[k] = first + random.nextInt(next - first);
        }
        return chosen;
    }

    /** Hyperparameters that some of many rows tell, as {@link #search} found them. */
    public static final class Found {
        final Fitting.Evaluated at;
        final Spreads spreads;

        Found(Fitting.Evaluated at, Spreads spreads) {
            this.at = at;
            this.spreads = spreads;
        }
    }

    /**
     * Finds the spreads and the growth of a fit of many rows with some of them, which can be done while the others are still being made.
     *
     * @param some the rows of {@link #searchedIn}
     * @param sample their responses
     * @param priors as for {@link #fit(Design, Sample, List)}
     * @return what {@link #fit(Design, Sample, List, Found)} goes on with
     */
    public Found search(Design some, Sample sample, List<PriorBlock> priors) {
        check(some, sample, priors);
        return new Fitting(withTolerance(Math.max(tolerance, Fitting.ENOUGH_TO_COMPARE)), some, sample, List.copyOf(priors)).search();
    }

    /**
     * Fits the model with spreads and growth that were found with some of the rows; the error scale and the coefficients come from all.
     *
     * @param design n x p
     * @param sample n responses
     * @param priors as for {@link #fit(Design, Sample, List)}
     * @param found what {@link #search} found, with the same priors
     * @return the posterior, the hyperparameters at their mode
     */
    public Posterior fit(Design design, Sample sample, List<PriorBlock> priors, Found found) {
        check(design, sample, priors);
        return new Fitting(this, design, sample, List.copyOf(priors)).runFrom(found);
    }

    private static void check(Design design, Sample sample, List<PriorBlock> priors) {
        if (design.rows() != sample.size()) {
            throw new IllegalArgumentException("a design of " + design.rows() + " rows meets " + sample.size() + " responses");
        }
        if (sample.size() == 0) {
            throw new IllegalArgumentException("a regression needs at least one row");
        }
        boolean[] named = new boolean[design.columns()];
        for (PriorBlock block : priors) {
            for (int j = block.from(); j < block.from() + block.count(); j++) {
                if (j >= named.length || named[j]) {
                    throw new IllegalArgumentException("coefficient " + j + " of the block '" + block.name()
                            + (j >= named.length ? "' is no column" : "' is in two blocks"));
                }
                named[j] = true;
            }
        }
        for (int j = 0; j < named.length; j++) {
            if (!named[j]) {
                throw new IllegalArgumentException("column " + j + " is in no block");
            }
        }
    }

    /** Where nothing is assumed of some coefficients the rows must tell these apart by themselves. */
    private static void refuseConfounded(Design design, List<PriorBlock> priors) {
        List<String> names = new ArrayList<>();
        int[] columns = priors.stream().filter(b -> b.kind() == PriorBlock.Kind.FLAT).flatMapToInt(b -> {
            for (int k = 0; k < b.count(); k++) {
                names.add("'" + b.name() + (b.count() == 1 ? "'" : "' (" + (k + 1) + ")"));
            }
            return IntStream.range(b.from(), b.from() + b.count());
        }).toArray();
        if (columns.length == 0) {
            return;
        }
        Identification told = Identification.of(design.only(columns));
        List<String> without = told.unseen().stream().map(names::get).toList();
        if (!without.isEmpty()) {
            throw new ConfoundedColumnsException("no row tells of " + String.join(", ", without) + ", and nothing is assumed of it");
        }
        for (Identification.Dependence d : told.dependences()) {
            if (d.degree() == Identification.Degree.CONFOUNDED) {
                throw new ConfoundedColumnsException("the rows cannot tell these apart, and nothing is assumed of them: "
                        + String.join(", ", IntStream.range(0, d.direction().size()).map(d.direction()::index).sorted()
                        .mapToObj(names::get).toList()));
            }
        }
    }
}
