package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import swapworth.listing.Car;
import swapworth.statistics.Bound;
import swapworth.statistics.Posterior;

/** Finds the comparables of a value among the evidence and adjusts them toward it. */
final class Grids {
    private static final int COMPARABLES = 6;

    private final List<Car> cars;
    private final EvidenceList evidence;
    private final Encoder encoder;
    private final EncodedRows encoded;
    private final Posterior posterior;
    /**
     * How unsure the value of each row is, by the posterior with all rows, for leaving one car out changes the others' little; and by
     * what is not stated of the car. How far cars of its line or in its state scatter is no part of it: that stays with the car and goes
     * into no adjustment.
     */
    private volatile double @Nullable [] variances;

    Grids(PriceFit fit) {
        this.cars = fit.cars();
        this.evidence = fit.evidence();
        this.encoder = fit.encoder();
        this.encoded = fit.encoded();
        this.posterior = fit.posterior();
    }

    private double[] variances() {
        double[] made = variances;
        if (made == null) {
            made = encoded.each(e -> posterior.variance(e.row()));
            for (int i = 0; i < made.length; i++) {
                made[i] += encoder.open(evidence.subject(i));
            }
            variances = made;
        }
        return made;
    }

    /** The comparables of a value. */
    Comparables of(FairValue value) {
        Posterior by = value.posterior();
        double[] mean = by.mean();
        double[] reach = by.covariances(value.encoded().row());
        double own = value.encoded().row().dot(reach);
        Nearest nearest = new Nearest(COMPARABLES);
        double[] variance = variances();
        for (int i = 0; i < encoded.size(); i++) {
            if (evidence.car(i) == value.withoutCar() || evidence.bound(i) != Bound.NONE) {
                continue;
            }
            nearest.offer(i, evidence.car(i), own - 2 * encoded.row(i).dot(reach) + variance[i]);
        }
        return grid(value, by, mean, nearest.rows());
    }

    private Comparables grid(FairValue value, Posterior by, double[] mean, List<Integer> chosen) {
        Group[] groups = Group.values();
        double[] target = byGroup(value.encoded(), mean);
        boolean[] shown = new boolean[groups.length];
        double[][] logFactors = new double[chosen.size()][];
        for (int k = 0; k < logFactors.length; k++) {
            double[] from = byGroup(encoded.get(chosen.get(k)), mean);
            logFactors[k] = new double[groups.length];
            for (int g = 0; g < groups.length; g++) {
                logFactors[k][g] = target[g] - from[g];
                shown[g] |= Math.abs(logFactors[k][g]) > 5e-5;
            }
        }
        List<Comparables.Comparable> rows = new ArrayList<>();
        double meanLog = 0;
        for (int k = 0; k < logFactors.length; k++) {
            Evidence e = evidence.get(chosen.get(k));
            List<Double> factors = new ArrayList<>();
            double net = 0;
            double gross = 0;
            for (int g = 0; g < groups.length; g++) {
                net += logFactors[k][g];
                gross += Math.abs(logFactors[k][g]);
                if (shown[g]) {
                    factors.add(Math.exp(logFactors[k][g]));
                }
            }
            meanLog += (e.logPrice() + net) / logFactors.length;
            rows.add(new Comparables.Comparable(cars.get(e.car()).name(), e.listing(), factors, Math.exp(e.logPrice() + net),
                    Figures.percent(net), Figures.percent(gross)));
        }
        double held = -by.priorPull(value.encoded().row());
        double rest = chosen.isEmpty() ? 0 : Math.log(value.median()) - meanLog - held;
        List<String> names = IntStream.range(0, groups.length).filter(g -> shown[g]).mapToObj(g -> groups[g].words()).toList();
        return new Comparables(rows, names, Math.exp(meanLog), Math.exp(rest), Math.exp(held), value.median(),
                bracketing(value.subject(), chosen));
    }

    private double[] byGroup(Encoded row, double[] mean) {
        double[] byTerm = row.byTerm(mean, encoder.terms().size());
        double[] sums = new double[Group.values().length];
        for (int t = 0; t < byTerm.length; t++) {
            sums[encoder.terms().get(t).group().ordinal()] += byTerm[t];
        }
        return sums;
    }

    private List<String> bracketing(Subject subject, List<Integer> chosen) {
        if (chosen.isEmpty()) {
            return List.of();
        }
        Measures.Measured own = encoder.measured(subject);
        double[] ages = chosen.stream().mapToDouble(r -> encoder.measured(evidence.get(r).subject()).age()).sorted().toArray();
        double[] miles = chosen.stream().mapToDouble(r -> encoder.measured(evidence.get(r).subject()).miles()).sorted().toArray();
        return List.of("age lies " + bracket(own.age(), ages), "mileage " + bracket(own.miles(), miles));
    }

    private static String bracket(double own, double[] sorted) {
        return own < sorted[0] ? "below all comparables" : own > sorted[sorted.length - 1] ? "above all comparables"
                : "between those of the comparables";
    }
}
