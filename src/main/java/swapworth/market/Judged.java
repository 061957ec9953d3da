package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import swapworth.listing.Car;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.ListingsRead;
import swapworth.listing.Outcome;
import swapworth.listing.PriceKind;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * All listings of a collection, each judged with its own car left out: in the order of the files.
 *
 * @param read what was read
 * @param model the model fitted to it
 * @param judgements one for each used row, in the order of the files
 */
public record Judged(ListingsRead read, PriceModel model, List<Judgement> judgements) {
    /** Copies the list in and checks that nothing is missing. */
    public Judged {
        requireNonNull(read, "read");
        requireNonNull(model, "model");
        judgements = List.copyOf(judgements);
    }

    /**
     * Judges every used row on the day on which it was seen and at its own level of trade.
     *
     * @param read what was read
     * @param model the model fitted to its cars
     * @return the judged listings
     */
    public static Judged of(ListingsRead read, PriceModel model) {
        return of(read, model, Optional.empty(), Optional.empty());
    }

    /**
     * Judges every used row.
     *
     * @param read what was read
     * @param model the model fitted to its cars
     * @param on values every listing on this day instead of the day on which it was seen
     * @param level values every listing at this level of trade instead of its own
     * @return the judged listings
     * @throws IllegalArgumentException if the model was fitted to other cars
     */
    public static Judged of(ListingsRead read, PriceModel model, Optional<LocalDate> on, Optional<LevelOfTrade> level) {
        List<Judgement> byCar = model.judgeAll(on, level);
        List<Car> cars = read.cars();
        int[] first = new int[cars.size() + 1];
        for (int c = 0; c < cars.size(); c++) {
            first[c + 1] = first[c] + cars.get(c).sightings().size();
        }
        if (first[cars.size()] != byCar.size()) {
            throw new IllegalArgumentException("the model was fitted to other cars: it judges " + byCar.size() + " listings of them, not "
                    + first[cars.size()]);
        }
        CarOfListing carOf = new CarOfListing(cars);
        List<Judgement> inOrder = new ArrayList<>(byCar.size());
        for (Listing listing : read.listings()) {
            int car = carOf.of(listing);
            inOrder.add(byCar.get(first[car] + CarOfListing.place(listing, cars.get(car))));
        }
        return new Judged(read, model, inOrder);
    }

    /**
     * The judgement of the latest sighting of each car.
     *
     * @return one a car, in the order of the cars
     */
    public List<Judgement> latest() {
        List<Car> cars = read.cars();
        CarOfListing carOf = new CarOfListing(cars);
        Judgement[] latest = new Judgement[cars.size()];
        for (Judgement judgement : judgements) {
            int car = carOf.of(judgement.listing());
            if (CarOfListing.isSame(judgement.listing(), cars.get(car).latest())) {
                latest[car] = judgement;
            }
        }
        return List.of(latest);
    }

    /**
     * How well the values met the prices.
     *
     * @return why there is nothing to tell with fewer than ten prices that have a value
     */
    public Answer<FitStudy> study() {
        return model.study(judgements);
    }

    /**
     * Every judged row with every figure, in the order of the files: for machines.
     *
     * @return columns as the command writes them to CSV
     */
    public Table table() {
        ValueRows.IntoTable table = new ValueRows.IntoTable("Judged listings", currency());
        ValueRows rows = new ValueRows(table);
        judgements.forEach(rows::add);
        return table.table();
    }

    /**
     * The judged rows in the order of the files, as people read them.
     *
     * @param linkToGrids the start of an address to which the number of a car is added, such as {@code #car-}; empty for none
     * @return one row a listing
     */
    public Table inFileOrder(String linkToGrids) {
        return brief("Listings in the order of the files", judgements, linkToGrids).build();
    }

    /**
     * The latest sighting of each car that has a value, the one furthest below its value first.
     *
     * @param linkToGrids the start of an address to which the number of a car is added; empty for none
     * @return one row a car
     */
    public Table byGap(String linkToGrids) {
        List<Judgement> ordered = latest().stream().filter(j -> j.valuation() instanceof FairValue)
                .sorted(Comparator.comparingDouble(Judgement::gapPercent)).toList();
        return brief("Cars by gap: the latest price of each, furthest below its value first", ordered, linkToGrids).build();
    }

    /**
     * The cars that were still on offer shortly before the last day seen (listed_on_offer_days), the one furthest below its value
     * first: those that can be bought.
     *
     * @param linkToGrids the start of an address to which the number of a car is added; empty for none
     * @return one row a car; none where the rows have no dates
     */
    public Table onOffer(String linkToGrids) {
        return brief("Cars on offer" + lately(), stillOffered(), linkToGrids).build();
    }

    /**
     * The time in which a car must have been seen to count as still on offer.
     *
     * @return words that follow "on offer"; empty where the rows have no dates
     */
    public String lately() {
        return model.lastSeen().map(d -> " in the " + latelyDays() + " days up to " + d).orElse("");
    }

    /**
     * The latest sightings of the cars that were asked for shortly before the last day seen (listed_on_offer_days).
     *
     * @return the one furthest below its value first, those without a value last; none where the rows have no dates
     */
    public List<Judgement> stillOffered() {
        Optional<LocalDate> last = model.lastSeen();
        return asked(car -> last.isPresent() && car.lastSeen().isPresent()
                && !car.lastSeen().get().isBefore(last.get().minusDays(latelyDays())));
    }

    private long latelyDays() {
        return Math.round(model.assumptions().get("listed_on_offer_days").middle());
    }

    /**
     * The latest sightings of all cars that were asked for and of which no row says that they are gone, on whatever day.
     *
     * @return the one furthest below its value first, those without a value last
     */
    public List<Judgement> everOffered() {
        return asked(car -> true);
    }

    private List<Judgement> asked(Predicate<Car> chosen) {
        List<Judgement> latest = latest();
        List<Judgement> open = new ArrayList<>();
        for (int c = 0; c < latest.size(); c++) {
            Car car = read.cars().get(c);
            if (chosen.test(car) && car.outcome() == Outcome.OPEN && latest.get(c).listing().price().kind() == PriceKind.ASKING) {
                open.add(latest.get(c));
            }
        }
        open.sort(Comparator.comparingDouble(j -> Double.isNaN(j.gapPercent()) ? Double.MAX_VALUE : j.gapPercent()));
        return open;
    }

    private Table.Builder brief(String title, List<Judgement> rows, String linkToGrids) {
        Map<String, Integer> numberOfCar = new HashMap<>();
        for (int c = 0; c < read.cars().size(); c++) {
            numberOfCar.put(read.cars().get(c).name(), c + 1);
        }
        Table.Builder table = Table.titled(title + ", " + currency())
                .columns(Column.number("line", "").behind(), Column.words("car"), Column.words("vehicle").behind(),
                        Column.words("seen").behind(),
                        Column.words("level of trade").behind(), Column.number("price", ""), Column.number("fair value", ""),
                        Column.number("80 % range", ""), Column.number("gap", "%").behind(), Column.number("percentile", "").behind(),
                        Column.words("position"), Column.number("cars: line / all", "").behind(),
                        Column.number("held by assumptions", "").behind(),
                        Column.sentences("remarks"));
        if (rows.stream().anyMatch(j -> j.valuation() instanceof FairValue)) {
            table.note("Each value is the median price of such cars " + basis(rows) + ", by all other cars: its own car is left out."
                    + " The column 'cars' counts those behind it: of its line / in all.");
        }
        if (model.lastSeen().isEmpty()) {
            table.note("The rows have no seen_on: nothing can be said about time, and values hold for the time of the collection.");
        }
        for (Judgement j : rows) {
            Listing l = j.listing();
            Cell car = Cell.words(j.car());
            List<Cell> cells = new ArrayList<>(List.of(Cell.label(l.origin().line()),
                    linkToGrids.isEmpty() ? car : car.linked(linkToGrids + numberOfCar.get(j.car())),
                    Cell.words(l.facts().words()), Cell.words(l.seenOn().map(LocalDate::toString).orElse("")),
                    Cell.words(l.level().words()), Figures.asSeen(l.price().amount())));
            cells.addAll(j.valuation().match(
                    v -> List.of(Figures.money(v.median()), Cell.words(Figures.range(v.range(0.80))), Cell.signed(j.gapPercent(), 0),
                            Cell.number(j.percentile(), 0), Cell.words(j.position().words()),
                            Cell.words(v.carsOfLine() + " / " + v.carsInFile()), Figures.share(v.priorShare()),
                            Cell.words(Figures.sentences(j.remarks()))),
                    c -> List.of(Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.words(j.position().words()),
                            Cell.words(c.carsOfLine() + " / " + c.carsInFile()), Cell.BLANK,
                            Cell.words(c.reason() + "; needed: " + c.needed()))));
            table.row(cells);
        }
        return table;
    }

    /**
     * On which day and at which level of trade cars are valued, where these are not those of their rows: old prices then stand above or
     * below what such cars are worth on another day.
     *
     * @return words that follow "by its latest price each car stands"; empty where each is valued as it was seen
     */
    public String otherwiseThanSeen() {
        boolean asSeen = judgements.stream().allMatch(j -> !(j.valuation() instanceof FairValue value)
                || value.subject().on().equals(j.listing().seenOn()) && value.subject().level() == j.listing().level());
        return asSeen ? "" : ", valued " + basis(judgements);
    }

    /** The day and the level of trade of the values, in words. */
    private String basis(List<Judgement> rows) {
        boolean ownDay = true;
        boolean ownLevel = true;
        String day = "";
        String level = "";
        for (Judgement j : rows) {
            if (j.valuation() instanceof FairValue value) {
                ownDay &= value.subject().on().equals(j.listing().seenOn());
                ownLevel &= value.subject().level() == j.listing().level();
                day = value.subject().on().map(d -> "on " + d).orElse("");
                level = "at the level " + value.subject().level().words();
            }
        }
        boolean undated = model.lastSeen().isEmpty() && day.isEmpty();
        return (undated ? "" : (ownDay ? "on the day the row was seen" : day) + " and ") + (ownLevel ? "at its own level of trade" : level);
    }

    private String currency() {
        return read.baseCurrency().getCurrencyCode();
    }
}
