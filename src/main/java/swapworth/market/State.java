package swapworth.market;

import java.util.Optional;
import java.util.Set;
import swapworth.listing.Airbags;
import swapworth.listing.Condition;
import swapworth.listing.Damage;
import swapworth.listing.Facts;
import swapworth.listing.Keys;
import swapworth.listing.Runs;
import swapworth.listing.Title;

/** The state that a car is in, as far as terms of the model ask for it: most cars share theirs with many others. */
record State(Title title, Runs runs, Optional<Set<Damage>> damage, Condition rust, Condition paint, Condition interior,
        Condition mechanical,
        Condition records, Keys keys, Airbags airbags) {

    static State of(Facts facts) {
        return new State(facts.title(), facts.runs(), facts.damage(), facts.rust(), facts.paint(), facts.interior(), facts.mechanical(),
                facts.records(), facts.keys(), facts.airbags());
    }

    // Written out: those of a record are slow before the second compiler has seen them.
    @Override
    public int hashCode() {
        int hash = 31 * title.ordinal() + runs.ordinal();
        hash = 31 * hash + (damage.isPresent() ? 1 : 0);
        hash = 31 * hash + rust.ordinal();
        hash = 31 * hash + paint.ordinal();
        hash = 31 * hash + interior.ordinal();
        hash = 31 * hash + mechanical.ordinal();
        hash = 31 * hash + records.ordinal();
        hash = 31 * hash + keys.ordinal();
        return 31 * hash + airbags.ordinal();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof State state && title == state.title && runs == state.runs && damage.equals(state.damage)
                && rust == state.rust && paint == state.paint && interior == state.interior && mechanical == state.mechanical
                && records == state.records && keys == state.keys && airbags == state.airbags;
    }
}
