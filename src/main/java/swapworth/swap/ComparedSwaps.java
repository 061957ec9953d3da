package swapworth.swap;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.market.Subject;
import swapworth.statistics.Draws;

/** The swaps of other people that were seen, as the approaches compare them with the finished car, and what became of each. */
final class ComparedSwaps {
    private final Situation s;
    private final List<SeenSwap> all;
    private final Set<SeenSwap> used = new LinkedHashSet<>();
    private final Map<String, String> leftOut = new LinkedHashMap<>();

    ComparedSwaps(Situation situation, List<SeenSwap> seen) {
        this.s = situation;
        // Whatever order the rows come in, sums are the same to the last bit.
        this.all = seen.stream().map(k -> k.with(situation.swapped(k.facts(), Optional.empty())))
                .sorted(Comparator.comparing(SeenSwap::name).thenComparingDouble(SeenSwap::price)).toList();
    }

    /** Those of this body and this running gear: they speak of the result of all approaches. */
    List<SeenSwap> alike() {
        return all.stream().filter(this::isAlike).toList();
    }

    /** Those of other pairs: an approach learns from them. */
    List<SeenSwap> others() {
        return all.stream().filter(swap -> !isAlike(swap)).toList();
    }

    boolean isAlike(SeenSwap swap) {
        return s.samePair(swap.facts(), s.finished);
    }

    /** Says that a swap counts, in an approach or in the result. */
    void use(SeenSwap swap) {
        used.add(swap);
    }

    /** Says why an approach does not learn from a swap. */
    void leaveOut(SeenSwap swap, String why) {
        leftOut.putIfAbsent(swap.name(), why);
    }

    /** Says of those that do not count and of which nothing is said yet why. */
    void leaveOutTheRest() {
        all.stream().filter(swap -> !used.contains(swap)).forEach(swap -> leaveOut(swap, isAlike(swap)
                ? "what its stock car is worth cannot be told"
                : "no approach that swaps of another body or running gear speak of can tell"));
    }

    /** Those that count. */
    Set<SeenSwap> used() {
        return used;
    }

    /** Why others do not, by name. */
    Map<String, String> leftOut() {
        return leftOut;
    }

    /** A refused offer is beside a private sale. */
    static LevelOfTrade level(SeenSwap swap) {
        return swap.kind() == SeenSwap.Kind.OFFER_REFUSED ? LevelOfTrade.PRIVATE_SOLD : swap.level();
    }

    Subject subject(SeenSwap swap) {
        return subject(swap, swap.facts());
    }

    /** Another car on the day and at the level of a swap. */
    Subject subject(SeenSwap swap, CarFacts facts) {
        return new Subject(facts, level(swap), swap.includes(), swap.on().or(() -> s.on));
    }

    /** How the price of one swap departs from that of such swaps. */
    double[] departure(SeenSwap swap) {
        return Situation.sum(s.departureOf(subject(swap), swap.ownName()), below(swap));
    }

    /** A refused offer stands below the price at which a swap is sold. */
    private double[] below(SeenSwap swap) {
        if (swap.kind() != SeenSwap.Kind.OFFER_REFUSED) {
            return new double[s.count()];
        }
        double middle = s.assumptions().logMiddle("swap_offer_below");
        double spread = s.assumptions().logSpread("swap_offer_below");
        return Situation.map(Draws.normal(s.count(), s.seedOf("offer for " + swap.ownName())), z -> middle + spread * z);
    }
}
