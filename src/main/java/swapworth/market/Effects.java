package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.SparseRow;

/** What the terms of a fit do to price, as people read it. */
final class Effects {
    /** A worse step is told to stand above a better one where it does so with at least this chance. */
    private static final double LIKELY = 0.8;

    private final List<Evidence> evidence;
    private final Encoder encoder;
    private final EncodedRows encoded;
    private final Posterior posterior;

    Effects(List<Evidence> evidence, Encoder encoder, EncodedRows encoded, Posterior posterior) {
        this.evidence = evidence;
        this.encoder = encoder;
        this.encoded = encoded;
        this.posterior = posterior;
    }

    /** All of which at least one price tells, main terms first. */
    List<TermEffect> all() {
        List<TermEffect> effects = new ArrayList<>();
        Map<String, Integer> ofLine = new TreeMap<>();
        evidence.forEach(e -> ofLine.merge(e.subject().facts().vehicle(), 1, Integer::sum));
        int[] told = told();
        int next = 0;
        for (Term term : encoder.terms()) {
            for (Term.Effect effect : term.effects()) {
                int rows = told[next++];
                if (rows > 0) {
                    effects.add(effect(effect.label(), effect.unit(), effect.contrast(), rows));
                    slopesOfLines(term, effect, ofLine, effects);
                }
            }
        }
        return effects;
    }

    /** Neighbouring steps, both told by prices, of which the worse stands above the better by more than chance would often make it. */
    List<AgainstOrder> againstOrder() {
        List<AgainstOrder> found = new ArrayList<>();
        int[] told = told();
        int first = 0;
        for (Term term : encoder.terms()) {
            List<Term.Effect> effects = term.effects();
            if (term instanceof Terms.Steps steps) {
                for (int worse = 0; worse < effects.size(); worse++) {
                    int better = steps.below(worse);
                    if (better >= 0 && told[first + worse] > 0 && told[first + better] > 0) {
                        againstOrder(effects.get(worse), told[first + worse], effects.get(better), told[first + better])
                                .ifPresent(found::add);
                    }
                }
            }
            first += effects.size();
        }
        return found;
    }

    /** That a worse step, of which so many rows tell, stands above a better one; empty where it hardly does. */
    private Optional<AgainstOrder> againstOrder(Term.Effect worse, int toldOfWorse, Term.Effect better, int toldOfBetter) {
        Mixture between = posterior.estimate(worse.contrast().plus(-1, better.contrast()));
        double chance = 1 - between.cumulative(0);
        return chance < LIKELY ? Optional.empty()
                : Optional.of(new AgainstOrder(worse.label(), better.label(), Figures.percent(between.quantile(0.5)),
                        Figures.percent(between.quantile(0.1)), Figures.percent(between.quantile(0.9)), chance, toldOfWorse,
                        toldOfBetter));
    }

    /** How many rows tell of each effect of the terms. */
    private int[] told() {
        List<Term.Effect> effects = encoder.terms().stream().flatMap(t -> t.effects().stream()).toList();
        int[] told = new int[effects.size()];
        for (int i = 0; i < encoded.size(); i++) {
            SparseRow row = encoded.get(i).row();
            for (int k = 0; k < told.length; k++) {
                told[k] += effects.get(k).toldBy(row) ? 1 : 0;
            }
        }
        return told;
    }

    /** Behind the common slope of age and of mileage, the slope of each line. */
    private void slopesOfLines(Term common, Term.Effect effect, Map<String, Integer> ofLine, List<TermEffect> effects) {
        for (Term term : encoder.terms()) {
            if (term instanceof Terms.Levels levels && term.group() == common.group() && term.name().contains("slopes of lines")
                    && ofLine.size() > 1) {
                ofLine.forEach((line, rows) -> levels.coefficient(line).ifPresent(c -> effects.add(effect(
                        effect.label() + ", " + line, effect.unit(), slope(common, effect, c, line), rows))));
            }
        }
    }

    /** The slope of a line, by what a mile of its cars counts. */
    private SparseRow slope(Term common, Term.Effect effect, int own, String line) {
        double weight = common.group() == Group.MILEAGE ? encoder.weightOfMile(line) : 1;
        return SparseRow.of(new int[] {own}, new double[] {weight}).plus(weight, effect.contrast());
    }

    private TermEffect effect(String label, String unit, SparseRow contrast, int rows) {
        Mixture m = posterior.estimate(contrast);
        double share = posterior.variance(contrast) / posterior.priorVariance(contrast);
        return new TermEffect(label, unit, Figures.percent(m.quantile(0.5)), Figures.percent(m.quantile(0.1)),
                Figures.percent(m.quantile(0.9)),
                Figures.percent(m.quantile(0.025)), Figures.percent(m.quantile(0.975)), Math.min(1, share), rows);
    }
}
