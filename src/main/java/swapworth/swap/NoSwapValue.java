package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.function.Function;
import swapworth.market.CannotTell;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * No approach can tell what a finished swap is worth.
 *
 * @param car the car
 * @param approaches each with its reason
 * @param needed the rows that would help most, at most three
 */
public record NoSwapValue(FinishedCar car, List<Approach> approaches, List<String> needed) implements SwapAnswer {

    /** Copies the lists in and checks that nothing is missing. */
    public NoSwapValue {
        requireNonNull(car, "car");
        approaches = List.copyOf(approaches);
        needed = List.copyOf(needed);
    }

    @Override
    public <T> T match(Function<SwapValue, T> value, Function<NoSwapValue, T> none) {
        return none.apply(this);
    }

    /**
     * The reason as one of the house.
     *
     * @return why there is no value, and the rows that would help most
     */
    public CannotTell cannotTell() {
        return CannotTell.without("no approach can value the finished car '" + car.name() + "'", String.join("; ", needed));
    }

    @Override
    public List<Table> tables() {
        Table.Builder table = Table.titled("The finished swap '" + car.name() + "': cannot tell")
                .columns(Column.words("approach"), Column.sentences("why it cannot tell"), Column.sentences("what would help"));
        needed.forEach(n -> table.note("Needed most: " + n + "."));
        for (Approach approach : approaches) {
            if (approach instanceof Approach.Untold no) {
                table.row(Cell.words(no.kind().words()), Cell.words(no.reason()), Cell.words(no.needed()));
            }
        }
        return List.of(table.build());
    }
}
