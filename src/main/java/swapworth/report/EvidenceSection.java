package swapworth.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import swapworth.listing.CandidateCar;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.market.Comparables;
import swapworth.market.FairValue;
import swapworth.market.Subject;
import swapworth.project.Undertaking;
import swapworth.reading.DistanceUnit;
import swapworth.swap.SwapValue;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** By which listings, swaps seen and comparables a finished car is valued in the file that its owner hands on. */
final class EvidenceSection {
    /** So many comparables of a car tell enough. */
    private static final int MOST = 6;
    private static final int DAYS_OF_CLAIMS = 90;

    private final Undertaking.Market market;
    private final String currency;
    private final ProjectFile.Reader reader;
    private final UnaryOperator<Table> discreet;

    /**
     * The section of a market.
     *
     * @param market the listings with their model
     * @param currency the currency of all amounts
     * @param reader who reads it
     * @param discreet what hides from the reader of the file what is not for them
     */
    EvidenceSection(Undertaking.Market market, String currency, ProjectFile.Reader reader, UnaryOperator<Table> discreet) {
        this.market = market;
        this.currency = currency;
        this.reader = reader;
        this.discreet = discreet;
    }

    Section section(Optional<SwapValue> finished) {
        List<Part> parts = new ArrayList<>(List.of(Part.rows(listings())));
        finished.flatMap(SwapValue::seen).map(t -> new Table(t.title() + ", " + currency, t.notes(), t.columns(), t.rows()))
                .ifPresent(t -> parts.add(Part.rows(discreet.apply(t))));
        finished.flatMap(this::comparables).ifPresent(t -> parts.add(Part.rows(t)));
        return new Section("evidence", "By which listings", parts);
    }

    private Table listings() {
        Table.Builder table = Table.titled("The listings used").columns(Column.words("line"), Column.number("cars", ""),
                Column.number("sightings", ""), Column.words("first seen"), Column.words("last seen"));
        table.note(market.read().counts().sentence() + ".");
        Map<String, List<Car>> lines = new TreeMap<>();
        market.read().cars().forEach(car -> lines.computeIfAbsent(car.facts().vehicle(), line -> new ArrayList<>()).add(car));
        lines.forEach((line, cars) -> table.row(Cell.words(Discreet.text(line)), Cell.whole(cars.size()),
                Cell.whole(cars.stream().mapToInt(c -> c.sightings().size()).sum()),
                day(cars.stream().flatMap(c -> c.firstSeen().stream()).min(LocalDate::compareTo)),
                day(cars.stream().flatMap(c -> c.lastSeen().stream()).max(LocalDate::compareTo))));
        return table.build();
    }

    private static Cell day(Optional<LocalDate> day) {
        return Cell.words(day.map(LocalDate::toString).orElse(""));
    }

    /**
     * The cars that tell most of the body with its own gear, and of the car that the maker sold with such gear. These are often of other
     * lines than the two: each row says what it has in common with the finished car, and no car stands twice.
     */
    private Optional<Table> comparables(SwapValue value) {
        DistanceUnit unit = market.read().distanceUnit();
        Table.Builder table = Table.titled("Comparables: the cars that tell most").columns(Column.words("line"),
                Column.words("in common with this car"), Column.words("trim"), Column.number("model year", ""),
                Column.number("mileage", unit.symbol()), Column.sentences("title, running, damage"), Column.words("level of trade"),
                Column.words("seen on"), Column.words("region"),
                Column.number("price seen", market.read().baseCurrency().getCurrencyCode()));
        table.note("A car of another line tells how price runs with age, mileage and level of trade; it is no price of the body or of the"
                + " running gear by itself.");
        List<CarFacts> equivalents = market.cars().cars().stream().filter(car -> car.role() == CandidateCar.Role.FACTORY_EQUIVALENT)
                .map(CandidateCar::facts).toList();
        Shared shared = Shared.with(value.built(), value.car().gearLine(), equivalents);
        List<CarFacts> asked = new ArrayList<>(List.of(value.stock()));
        asked.addAll(equivalents);
        Map<String, Listing> shown = new LinkedHashMap<>();
        for (CarFacts facts : asked) {
            for (Comparables.Comparable one : tellingMostOf(facts)) {
                if (shown.putIfAbsent(one.car(), one.listing()) == null) {
                    table.row(row(one.listing(), shared, unit));
                }
            }
        }
        if (reader == ProjectFile.Reader.INSURER) {
            value.on().ifPresent(on -> table.note(lately(shown.values(), on)));
        }
        return shown.isEmpty() ? Optional.empty() : Optional.of(table.build());
    }

    /** Who settles a claim asks how old the evidence is on the day of the value. */
    private static String lately(Collection<Listing> comparables, LocalDate on) {
        long late = comparables.stream().flatMap(l -> l.seenOn().stream()).filter(day -> !day.isAfter(on)
                && day.isAfter(on.minusDays(DAYS_OF_CLAIMS))).count();
        return late + " of these " + comparables.size() + " were seen in the " + DAYS_OF_CLAIMS + " days up to " + on + ". Some rules on"
                + " settling a total loss ask for two or more comparable cars near by from so many days. (US: NAIC Model 902, section 8,"
                + " by a state's copy: Iowa Administrative Code 191-15.43)";
    }

    private List<Comparables.Comparable> tellingMostOf(CarFacts facts) {
        if (!market.model().lines().contains(facts.vehicle()) || !(market.model().value(new Subject(facts, LevelOfTrade.PRIVATE_ASKING,
                PriceIncludes.NEITHER, market.model().lastSeen())) instanceof FairValue value)) {
            return List.of();
        }
        List<Comparables.Comparable> rows = value.comparables().rows();
        return rows.subList(0, Math.min(MOST, rows.size()));
    }

    /** What a claim or a loan turns on: like is compared with like, or the reader sees that it is not. */
    private static String state(CarFacts facts) {
        return "title " + facts.title().words() + "; " + (facts.runs() == Runs.UNKNOWN ? "running unknown" : facts.runs().words())
                + "; damage " + facts.damageInWords();
    }

    private static List<Cell> row(Listing listing, Shared shared, DistanceUnit unit) {
        CarFacts facts = listing.facts();
        return List.of(Cell.words(Discreet.text(facts.vehicle())), Cell.words(shared.by(facts)),
                Cell.words(facts.trim().map(Discreet::text).orElse("")),
                facts.modelYear().isPresent() ? Cell.label(facts.modelYear().getAsInt()) : Cell.BLANK,
                facts.mileage().map(m -> Cell.number(unit.fromMiles(m.miles()), 0)).orElse(Cell.BLANK),
                Cell.words(state(facts)), Cell.words(listing.level().words()), day(listing.seenOn()),
                Cell.words(facts.region().map(Discreet::text).orElse("")), Cell.number(listing.price().amount(), 0));
    }
}
