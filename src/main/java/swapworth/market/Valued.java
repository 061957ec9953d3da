package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import swapworth.listing.CandidateCar;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.PriceKind;
import swapworth.listing.SeenCar;
import swapworth.listing.Seller;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * The cars in play, each valued by all listings on one day, one that the listings hold too by all others.
 *
 * @param currency the base currency
 * @param cars one for each car, in the order of the file
 */
public record Valued(Currency currency, List<ValuedCar> cars) {

    /** Copies the list in and checks that nothing is missing. */
    public Valued {
        requireNonNull(currency, "currency");
        cars = List.copyOf(cars);
    }

    /**
     * A car in play and its value.
     *
     * @param car the car
     * @param level the level of trade of the value
     * @param valuation the value, or why there is none
     * @param position where its asked price or planned bid stands; cannot tell where it has none
     * @param remarks what to look at
     */
    public record ValuedCar(CandidateCar car, LevelOfTrade level, Valuation valuation, Position position, List<String> remarks) {

        /** Copies the remarks in and checks that nothing is missing. */
        public ValuedCar {
            requireNonNull(car, "car");
            requireNonNull(level, "level");
            requireNonNull(valuation, "valuation");
            requireNonNull(position, "position");
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * Values the cars in play.
     *
     * @param cars the cars
     * @param model the model
     * @param currency the base currency of the model
     * @param on the valuation day; without one the last day seen
     * @param level the level of trade for all; without one each car's own, else private asking
     * @return the valued cars
     */
    public static Valued of(List<CandidateCar> cars, PriceModel model, Currency currency, Optional<LocalDate> on,
            Optional<LevelOfTrade> level) {
        List<ValuedCar> valued = new ArrayList<>(cars.size());
        for (CandidateCar car : cars) {
            valued.add(value(car, model, on.or(model::lastSeen), level));
        }
        return new Valued(currency, valued);
    }

    private static ValuedCar value(CandidateCar car, PriceModel model, Optional<LocalDate> on, Optional<LevelOfTrade> stated) {
        List<String> remarks = new ArrayList<>();
        LevelOfTrade level = stated.orElseGet(() -> ownLevel(car));
        if (car.role() == CandidateCar.Role.FINISHED) {
            return new ValuedCar(car, level, new CannotTell("a finished swap is a pair of body and running gear that nobody has sold;"
                    + " listings of whole cars do not price it", 0, model.cars().size(),
                    "the step swap, which puts together what can be known of it"),
                    Position.CANNOT_TELL, remarks);
        }
        if (stated.isEmpty() && car.priceOrBid().isEmpty()) {
            remarks.add("no price in the row: valued at the level " + level.words());
        }
        // An auction's planned bid is compared with hammer prices unless the row says what it holds.
        PriceIncludes includes = car.priceOrBid().map(p -> p.includes()).filter(i -> i != PriceIncludes.UNKNOWN)
                .orElse(PriceIncludes.NEITHER);
        int listed = listed(car, model);
        Valuation valuation = model.valueWithout(listed, new Subject(car.facts(), level, includes, on));
        if (listed >= 0) {
            remarks.add(SeenCar.of(model.cars(), listed).sightings().get(0).origin() + " holds this car: it is valued by all others");
        }
        if (valuation instanceof FairValue value) {
            remarks.addAll(value.remarks());
            if (!value.isAsNarrowAsItGets()) {
                remarks.add(value.narrowedBy());
            }
            if (car.priceOrBid().isPresent() && level != ownLevel(car)) {
                remarks.add("the price is one of the level " + ownLevel(car).words() + ", the value of the level " + level.words()
                        + ": they are not compared");
            } else if (car.priceOrBid().isPresent()) {
                double price = car.priceOrBid().get().amount();
                Range range = value.range(0.80);
                Position position = price < range.low() ? Position.BELOW : price > range.high() ? Position.ABOVE : Position.INSIDE;
                return new ValuedCar(car, level, valuation, position, remarks);
            }
        }
        return new ValuedCar(car, level, valuation, Position.CANNOT_TELL, remarks);
    }

    /** The number of the car among those of the model, the last one that it is taken for; -1 if none is. */
    private static int listed(CandidateCar car, PriceModel model) {
        int last = model.cars().size() - 1;
        while (last >= 0 && !car.isSeenAs(SeenCar.of(model.cars(), last))) {
            last--;
        }
        return last;
    }

    private static LevelOfTrade ownLevel(CandidateCar car) {
        boolean sold = car.priceOrBid().map(p -> p.kind() == PriceKind.SOLD).orElse(false);
        Seller seller = car.facts().seller();
        return switch (seller) {
            case AUCTION -> LevelOfTrade.AUCTION;
            case TRADE -> sold ? LevelOfTrade.TRADE_SOLD : LevelOfTrade.TRADE_ASKING;
            case PRIVATE, UNKNOWN -> sold ? LevelOfTrade.PRIVATE_SOLD : LevelOfTrade.PRIVATE_ASKING;
        };
    }

    /**
     * Every car with every figure: for machines.
     *
     * @return the columns of the judged listings
     */
    public Table table() {
        ValueRows.IntoTable table = new ValueRows.IntoTable("Cars in play", currency.getCurrencyCode());
        ValueRows rows = new ValueRows(table);
        for (ValuedCar v : cars) {
            rows.add(v);
        }
        return table.table();
    }

    /**
     * The cars as people read them.
     *
     * @return one row a car
     */
    public Table brief() {
        return brief("");
    }

    /**
     * The cars as people read them, each that has a value linked to what it rests on.
     *
     * @param anchor where the links lead to, behind it the place of the car among all from 1, for instance {@code #play-}; empty for none
     * @return one row a car
     */
    public Table brief(String anchor) {
        Table.Builder table = Table.titled("Cars in play, " + currency.getCurrencyCode())
                .columns(Column.words("car"), Column.words("role").behind(), Column.words("vehicle").behind(),
                        Column.words("level of trade").behind(),
                        Column.words("valued on").behind(), Column.number("price or bid", ""), Column.number("fair value", ""),
                        Column.number("80 % range", ""), Column.number("95 % range", "").behind(), Column.words("position"),
                        Column.number("cars: line / all", "").behind(), Column.number("held by assumptions", "").behind());
        for (int c = 0; c < cars.size(); c++) {
            ValuedCar v = cars.get(c);
            Cell name = Cell.words(v.car().name());
            boolean led = !anchor.isEmpty() && v.valuation() instanceof FairValue;
            List<Cell> cells = new ArrayList<>(List.of(led ? name.linked(anchor + (c + 1)) : name, Cell.words(v.car().role().words()),
                    Cell.words(v.car().facts().vehicle()), Cell.words(v.level().words())));
            Cell price = v.car().priceOrBid().map(p -> Figures.asSeen(p.amount())).orElse(Cell.BLANK);
            cells.addAll(v.valuation().match(
                    f -> List.of(Cell.words(f.subject().on().map(LocalDate::toString).orElse("")), price, Figures.money(f.median()),
                            Cell.words(Figures.range(f.range(0.80))), Cell.words(Figures.range(f.range(0.95))),
                            Cell.words(price == Cell.BLANK ? "" : v.position().words()),
                            Cell.words(f.carsOfLine() + " / " + f.carsInFile()), Figures.share(f.priorShare())),
                    no -> List.of(Cell.BLANK, price, Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.words(Position.CANNOT_TELL.words()),
                            Cell.words(no.carsOfLine() + " / " + no.carsInFile()), Cell.BLANK)));
            table.row(cells);
        }
        return table.build();
    }

    /**
     * What to know of each car beside its figures.
     *
     * @return a sentence or more for each car that has any
     */
    public List<String> remarks() {
        List<String> all = new ArrayList<>();
        for (ValuedCar v : cars) {
            List<String> own = new ArrayList<>(v.valuation().match(f -> List.<String>of(),
                    c -> List.of(c.reason() + "; needed: " + c.needed())));
            own.addAll(v.remarks());
            if (!own.isEmpty()) {
                all.add(v.car().name() + ": " + Figures.sentences(own));
            }
        }
        return all;
    }
}
