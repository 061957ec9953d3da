package swapworth.swap;

import java.util.ArrayList;
import java.util.List;
import swapworth.market.Figures;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;

/** What of a finished swap's value does not fit together; shown, not hidden. */
final class Contradictions {
    /** An approach that weighs less moves nothing that a reader would see. */
    private static final double LEAST_WEIGHT = 0.005;
    /** Offers that leave fewer of the draws lie far from all else. */
    private static final double FEW_LEFT = 0.02;

    private final SwapValue value;
    private final Situation s;
    private final Approaches worked;
    private final Reconciled reconciled;
    private final List<String> found = new ArrayList<>();

    Contradictions(SwapValue value) {
        this.value = value;
        this.s = value.situation();
        this.worked = value.worked();
        this.reconciled = value.reconciled();
        ofBrackets();
        ofApproaches();
        ofAlike();
        ofLosses();
        ofOffers();
    }

    /** One sentence for each. */
    List<String> sentences() {
        return found;
    }

    private void ofBrackets() {
        double middle = Quantiles.median(reconciled.soundLevel());
        double whole = Quantiles.median(value.levelDraws());
        String sound = s.hasFaults() ? "Before its faults are taken off the result lies " : "The result lies ";
        worked.brackets.stock.map(SwapValue::middle).filter(v -> middle < v).ifPresent(v -> found.add(sound + "below the stock car ("
                + Figures.rounded(v) + "): by these figures the swap took value away."));
        worked.brackets.factoryShared.map(SwapValue::middle).filter(v -> middle > v).ifPresent(v -> found.add(sound + "above the factory"
                + " equivalent (" + Figures.rounded(v) + Basis.halfWay(worked) + "): nobody pays more for a substitute than for what it"
                + " stands for, so look why."));
        value.takenApartDraws().map(Quantiles::median).filter(v -> whole < v).ifPresent(v -> found.add("Taken apart it would bring more ("
                + Figures.rounded(v) + ") than whole" + Basis.soundParts(s.car) + "."));
    }

    private void ofApproaches() {
        List<Approach.Kind> kinds = List.copyOf(worked.logs().keySet());
        for (int a = 0; a < kinds.size(); a++) {
            for (int b = a + 1; b < kinds.size(); b++) {
                double[] gap = Situation.combined((x, y) -> x - y, worked.logs().get(kinds.get(a)), worked.logs().get(kinds.get(b)));
                double mean = Draws.mean(gap);
                if (mean * mean > 4 * Draws.covariance(gap, gap)) {
                    found.add("'" + kinds.get(a).words() + "' and '" + kinds.get(b).words() + "' differ by "
                            + Cell.signed(Figures.percent(mean), 0).shown() + " %, more than their own errors explain.");
                }
            }
        }
    }

    private void ofAlike() {
        if (worked.alike.count() == 0) {
            return;
        }
        double[] miss = worked.alike.miss(reconciled.together());
        if (miss[0] * miss[0] > 4 * miss[1]) {
            found.add("The " + Basis.swapsSeen(worked.alike.count()) + " of this body and this running gear tell of a price that is "
                    + Cell.signed(Figures.percent(miss[0]), 0).shown() + " % from what the approaches say, more than their errors"
                    + " explain.");
        }
    }

    private void ofLosses() {
        if (s.car.cost().losses().stream().anyMatch(SwapCost.Loss::isStated)
                && value.weights().getOrDefault(Approach.Kind.COST, 0.0) < LEAST_WEIGHT) {
            found.add("The listed losses move nothing: they come off the value by cost, which " + (worked.byCost.found.isEmpty()
                    ? "cannot tell" : "weighs nothing") + ". What of them this one car alone has lost can be stated as a fault, which"
                    + " comes off whatever the approaches say.");
        }
        if (s.hasFaults() && reconciled.shareHeld() > 0) {
            found.add("The faults take off nearly all or more than all in " + Cell.format(Math.ceil(100 * reconciled.shareHeld()), 0)
                    + " % of the draws; those are held at one twentieth of a sound car.");
        }
    }

    private void ofOffers() {
        if (!value.offers().isEmpty() && value.drawsLeft() < FEW_LEFT * s.count()) {
            found.add("The offers lie far from all else that is known: only " + Math.round(value.drawsLeft()) + " of " + s.count()
                    + " draws are left, so the figures are rough.");
        }
    }
}
