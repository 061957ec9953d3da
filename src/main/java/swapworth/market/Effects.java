package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.SparseRow;

/** What the terms of a fit do to price, as people read it. */
final class Effects {
    private final List<Evidence> evidence;
    private final Encoder encoder;
    private final Encoded[] encoded;
    private final Posterior posterior;

    Effects(List<Evidence> evidence, Encoder encoder, Encoded[] encoded, Posterior posterior) {
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
        for (Term term : encoder.terms()) {
            for (Term.Effect effect : term.effects()) {
                int rows = 0;
                for (Encoded row : encoded) {
                    rows += effect.toldBy(row.row()) ? 1 : 0;
                }
                if (rows > 0) {
                    effects.add(effect(effect.label(), effect.unit(), effect.contrast(), rows));
                    slopesOfLines(term, effect, ofLine, effects);
                }
            }
        }
        return effects;
    }

    /** Behind the common slope of age and of mileage, the slope of each line. */
    private void slopesOfLines(Term common, Term.Effect effect, Map<String, Integer> ofLine, List<TermEffect> effects) {
        for (Term term : encoder.terms()) {
            if (term instanceof Terms.Levels levels && term.group() == common.group() && term.name().contains("slopes of lines")
                    && ofLine.size() > 1) {
                ofLine.forEach((line, rows) -> levels.coefficient(line).ifPresent(c -> effects.add(effect(
                        effect.label() + ", " + line, effect.unit(),
                        effect.contrast().plus(1, SparseRow.of(new int[] {c}, new double[] {1})), rows))));
            }
        }
    }

    private TermEffect effect(String label, String unit, SparseRow contrast, int rows) {
        Mixture m = posterior.estimate(contrast);
        double share = posterior.variance(contrast) / posterior.priorVariance(contrast);
        return new TermEffect(label, unit, Figures.percent(m.quantile(0.5)), Figures.percent(m.quantile(0.1)), Figures.percent(m.quantile(0.9)),
                Figures.percent(m.quantile(0.025)), Figures.percent(m.quantile(0.975)), Math.min(1, share), rows);
    }
}
