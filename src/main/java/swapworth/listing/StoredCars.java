package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiConsumer;

/** Cars as the rows of their sightings. */
final class StoredCars extends KeptList<Car> {
    private final ListingColumns columns;
    /** The rows of the sightings of all cars, car by car, each in the order of their days. */
    private final int[] rows;
    /** Where the sightings of each car begin among the rows, and behind them where the last ones end. */
    private final int[] begin;
    /** One more than the place of the reasons why the rows of a car were taken for one; 0 for none. */
    private final Numbers joined = new Numbers();
    private final List<List<String>> reasons = new ArrayList<>();
    private final Lately<Car> lately = new Lately<>(this::made);

    StoredCars(ListingColumns columns, int[] rows, int[] begin, Map<Integer, List<String>> joinedBy) {
        this.columns = columns;
        this.rows = rows;
        this.begin = begin;
        joinedBy.forEach((car, why) -> {
            reasons.add(List.copyOf(why));
            joined.set(car, reasons.size());
        });
    }

    @Override
    public int size() {
        return begin.length - 1;
    }

    @Override
    public Car get(int car) {
        return lately.get(Objects.checkIndex(car, size()));
    }

    /** For each listing of the same columns the number of its car; empty for others. */
    int[] carOfEach(StoredListings listings) {
        if (listings.columns() != columns) {
            return new int[0];
        }
        int[] carOfRow = new int[columns.size()];
        for (int car = 0; car < size(); car++) {
            for (int at = begin[car]; at < begin[car + 1]; at++) {
                carOfRow[rows[at]] = car;
            }
        }
        int[] carOfEach = new int[listings.size()];
        for (int i = 0; i < carOfEach.length; i++) {
            carOfEach[i] = carOfRow[listings.row(i)];
        }
        return carOfEach;
    }

    /** Tells each line, trim, body, running gear and region of the cars once. */
    void names(BiConsumer<ListingColumn, String> taker) {
        columns.vehicle.each(name -> taker.accept(ListingColumn.VEHICLE, name));
        columns.trim.each(name -> name.ifPresent(n -> taker.accept(ListingColumn.TRIM, n)));
        columns.body.each(name -> name.ifPresent(n -> taker.accept(ListingColumn.BODY, n)));
        columns.runningGear.each(name -> name.ifPresent(n -> taker.accept(ListingColumn.RUNNING_GEAR, n)));
        columns.region.each(name -> name.ifPresent(n -> taker.accept(ListingColumn.REGION, n)));
    }

    /** The prices of the sightings of a line. */
    double[] pricesOf(String line) {
        return Arrays.stream(rows).filter(columns.isOfLine(line)).mapToDouble(columns::amount).toArray();
    }

    /** A look at a car: what all rows of one seen several times say together is made, for a model asks for most of it. */
    SeenCar seen(int car) {
        int from = begin[Objects.checkIndex(car, size())];
        int to = begin[car + 1];
        Sighting[] sightings = new Sighting[to - from];
        for (int i = 0; i < sightings.length; i++) {
            sightings[i] = columns.sighting(rows[from + i]);
        }
        return new Look(List.of(sightings), to - from == 1 ? sightings[0].facts() : columns.facts(rows, from, to));
    }

    private record Look(List<Sighting> sightings, Facts facts) implements SeenCar {
    }

    private Car made(int car) {
        int from = begin[car];
        int count = begin[car + 1] - from;
        Listing first = columns.made(rows[from]);
        if (count == 1) {
            return new Car(name(first), List.of(first), first.facts(), reasons(car));
        }
        Listing[] sightings = new Listing[count];
        sightings[0] = first;
        Listing named = first;
        for (int i = 1; i < count; i++) {
            sightings[i] = columns.made(rows[from + i]);
            named = hasId(named) ? named : sightings[i];
        }
        return new Car(name(hasId(named) ? named : first), List.of(sightings), columns.facts(rows, from, from + count), reasons(car));
    }

    private List<String> reasons(int car) {
        int place = joined.code(car);
        return place == 0 ? List.of() : reasons.get(place - 1);
    }

    private static String name(Listing listing) {
        return hasId(listing) ? listing.id().get() : listing.origin().toString();
    }

    private static boolean hasId(Listing listing) {
        return listing.id().isPresent() && !listing.id().get().isEmpty();
    }
}
