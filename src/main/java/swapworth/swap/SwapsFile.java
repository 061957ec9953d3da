package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.listing.Car;
import swapworth.listing.ColumnUnderstood;
import swapworth.listing.Listing;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.listing.PriceKind;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.Parsed;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;

/**
 * Finished swaps that were seen, and offers for one's own: what a file {@code swaps.csv} says. It has the columns of a listings file,
 * read by the same rules, and beside them {@code built_by} (owner, shop), {@code factory_line} (the model line of the factory
 * equivalent), {@code own_car} (the name of the user's own finished car, where the row tells of it) and {@code days} (how long it stood
 * at this price). Sightings of one swap are one car, and a car counts once: its sale, else its last price.
 *
 * @param read what became of the rows
 * @param seen swaps of other people
 * @param offers what happened to the user's own cars, by their names, in the order of the file
 * @param problems cells that were not understood and are not used
 */
public record SwapsFile(ListingsRead read, List<SeenSwap> seen, Map<String, List<OwnOffer>> offers, List<RowProblem> problems) {
    private static final List<String> OF_SWAPS = List.of("built_by", "factory_line", "own_car", "days");

    /** Copies the collections in. */
    public SwapsFile {
        requireNonNull(read, "read");
        seen = List.copyOf(seen);
        offers = Collections.unmodifiableMap(new LinkedHashMap<>(offers));
        problems = List.copyOf(problems);
    }

    /**
     * Reads a file.
     *
     * @param file the file
     * @param currency the currency in which prices are counted, and in which those are of which nothing says it
     * @param listed the cars of the listings, as which lines and regions are spelled; empty where there are none
     * @return what it says
     * @throws swapworth.reading.UnusableFileException if the file as a whole cannot be used
     */
    public static SwapsFile read(Path file, Currency currency, List<Car> listed) {
        ListingsRead read = Listings.withDefaults().withBaseCurrency(currency).otherwiseIn(currency).spelledAs(listed).readFiles(file);
        List<SeenSwap> seen = new ArrayList<>();
        Map<String, List<OwnOffer>> offers = new LinkedHashMap<>();
        List<RowProblem> problems = new ArrayList<>();
        for (Car car : read.cars()) {
            Optional<Listing> counted = Optional.empty();
            for (Listing listing : car.sightings()) {
                Optional<String> own = SwapWords.text(listing.facts().further(), "own_car");
                if (own.isPresent()) {
                    offers.computeIfAbsent(own.get(), n -> new ArrayList<>()).addAll(offer(listing, problems));
                } else if (counted.isEmpty() || counted.get().price().kind() != PriceKind.SOLD || listing.price()
                        .kind() == PriceKind.SOLD) {
                    counted = Optional.of(listing);
                }
            }
            counted.ifPresent(listing -> seen.add(seen(car, listing, problems)));
        }
        return new SwapsFile(read, seen, offers, problems);
    }

    /**
     * What happened to one of the user's own cars.
     *
     * @param name its name in {@code cars.csv}, case, spaces and hyphens aside
     * @return offers, times without a taker, a sale
     */
    public List<OwnOffer> offersFor(String name) {
        return offers.entrySet().stream().filter(e -> Spelling.name(e.getKey()).equals(Spelling.name(name)))
                .flatMap(e -> e.getValue().stream()).toList();
    }

    /**
     * Columns that nothing reads.
     *
     * @param further those that the model takes beside ours
     * @return one problem a column
     */
    List<RowProblem> unusedColumns(List<String> further) {
        return ColumnUnderstood.unused(read.columns(), OF_SWAPS, further);
    }

    private static SeenSwap seen(Car car, Listing listing, List<RowProblem> problems) {
        Map<String, String> further = car.facts().further();
        Optional<String> by = SwapWords.text(further, "built_by");
        Optional<BuiltBy> builder = by.flatMap(SwapWords.BUILT_BY::meaning);
        if (by.isPresent() && builder.isEmpty()) {
            odd(listing, "built_by", by.get(), "this word is not understood and taken as unknown; known are owner and shop", problems);
        }
        SeenSwap.Kind kind = switch (listing.price().kind()) {
            case ASKING -> SeenSwap.Kind.ASKED;
            case SOLD -> SeenSwap.Kind.SOLD;
            case BID_NOT_MET -> SeenSwap.Kind.OFFER_REFUSED;
        };
        return new SeenSwap(car.name(), car.facts(), builder.orElse(BuiltBy.UNKNOWN), listing.price().amount(), kind, listing.level(),
                listing.price().includes(), listing.seenOn(), SwapWords.text(further, "factory_line"));
    }

    private static List<OwnOffer> offer(Listing listing, List<RowProblem> problems) {
        double amount = listing.price().amount();
        Optional<LocalDate> day = listing.endedOn().or(listing::seenOn);
        return switch (listing.price().kind()) {
            case BID_NOT_MET -> List.of(new OwnOffer(OwnOffer.Kind.OFFER_REFUSED, amount, 0, listing.seenOn()));
            case SOLD -> List.of(new OwnOffer(OwnOffer.Kind.SOLD, amount, 0, day));
            case ASKING -> {
                Optional<Double> days = days(listing);
                if (days.isEmpty()) {
                    odd(listing, "days", "", "an asking price of your own car teaches nothing without the days it stood; give days, or"
                            + " seen_on and ended_on", problems);
                }
                yield days.map(d -> List.of(new OwnOffer(OwnOffer.Kind.NO_TAKER, amount, d, day))).orElse(List.of());
            }
        };
    }

    private static Optional<Double> days(Listing listing) {
        Optional<String> text = SwapWords.text(listing.facts().further(), "days");
        if (text.isPresent() && new CellReader(Conventions.unstated(), ',')
                .number(text.get()) instanceof Parsed.Understood<BigDecimal> number
                && number.value().signum() >= 0) {
            return Optional.of(number.value().doubleValue());
        }
        return listing.endedOn().isPresent() && listing.seenOn().isPresent()
                ? Optional.of((double) ChronoUnit.DAYS.between(listing.seenOn().get(), listing.endedOn().get())) : Optional.empty();
    }

    private static void odd(Listing listing, String column, String text, String message, List<RowProblem> problems) {
        problems.add(new RowProblem(listing.origin().file(), listing.origin().line(), column, text, RowProblem.Kind.ODD, message));
    }
}
