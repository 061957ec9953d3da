package swapworth.swap;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import swapworth.listing.CarFacts;
import swapworth.market.FairValue;
import swapworth.market.Subject;
import swapworth.market.Valuation;
import swapworth.swap.Approach.Kind;

/** The middle prices that the approaches to one finished car are made of: each is asked of the market once, and kept. */
final class MiddlePrices {
    /** The least that a car by parts or position is worth, of the stock car: below it a logarithm would run away. */
    static final double FLOOR = 0.05;

    private final Situation s;
    private final Map<Subject, double[]> asked = new LinkedHashMap<>();

    MiddlePrices(Situation situation) {
        this.s = situation;
    }

    Situation situation() {
        return s;
    }

    /** Draws of all that was asked so far, in its order. */
    Map<Subject, double[]> asked() {
        return asked;
    }

    Valuation value(CarFacts facts) {
        return s.model.value(s.subject(facts));
    }

    boolean isKnown(CarFacts facts) {
        return value(facts) instanceof FairValue;
    }

    /** The middle price of such cars, at the distance of their chassis. */
    double[] level(Subject subject) {
        return asked.computeIfAbsent(subject, s.draws::level);
    }

    /** Its logarithm. */
    double[] logAtChassis(CarFacts facts) {
        return Situation.map(level(s.subject(facts)), StrictMath::log);
    }

    /** The same with the effect of distance shared between chassis and running gear. */
    double[] logLevel(CarFacts facts) {
        return s.logLevel(s.subject(facts), this::level);
    }

    /** What an approach says by the prices asked so far, with what assumptions hold of it. */
    Approach told(Kind kind, double[] log, List<String> assumptions, List<String> remarks) {
        AssumedShare held = AssumedShare.of(log, sources(assumptions), s, asked, Map.of());
        return new Approach.Told(kind, Situation.map(log, StrictMath::exp), Situation.map(Situation.sum(log, s.departure), StrictMath::exp),
                held.share(), held.largest(), remarks);
    }

    private Map<String, double[]> sources(List<String> assumptions) {
        Map<String, double[]> some = new LinkedHashMap<>();
        for (String name : assumptions) {
            if (s.sources().containsKey(name)) {
                some.put(name, s.sources().get(name));
            }
        }
        return some;
    }
}
