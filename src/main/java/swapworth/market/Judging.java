package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import swapworth.listing.Car;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.ListingsRead;
import swapworth.listing.SeenCar;
import swapworth.listing.Sighting;
import swapworth.statistics.Bound;
import swapworth.statistics.Posterior;

/** How listings stand to what such cars sell for, each with its own car left out. */
final class Judging {
    private final List<Car> cars;
    private final EvidenceList evidence;
    private final Encoder encoder;
    private final EncodedRows encoded;
    private final Posterior posterior;
    private final LeftOut leftOut;
    private final Values values;
    /** Made when first asked for: the same whichever thread makes it. */
    private volatile @Nullable CarOfListing carOfListing;

    Judging(PriceFit fit, Values values) {
        this.cars = fit.cars();
        this.evidence = fit.evidence();
        this.encoder = fit.encoder();
        this.encoded = fit.encoded();
        this.posterior = fit.posterior();
        this.leftOut = fit.leftOut();
        this.values = values;
    }

    /** See {@link PriceModel#judge}. */
    Judgement judge(Listing listing) {
        int car = lookup().of(listing);
        return standing(listing, car, Optional.empty(), Optional.empty(), new Misses(1))
                .of(listing, car < 0 ? listing.id().orElse(listing.origin().toString()) : cars.get(car).name());
    }

    /** What a car is worth by all cars but one of the fit. */
    Valuation value(Subject subject, int car) {
        return values.of(subject, encoder.encode(subject), leftOut.without(car), car, values.outside(subject));
    }

    /** Gets ready to judge all listings of many cars, one by one. */
    void expectAll() {
        leftOut.expectAll();
    }

    /** The numbers of the cars of some listings, the same as the model was fitted to as a rule: -1 for none of the fit. */
    int[] carOfEach(ListingsRead read) {
        int[] known = read.cars() == cars ? read.carOfEach() : new int[0];
        if (known.length == read.listings().size()) {
            return known;
        }
        CarOfListing lookup = lookup();
        return read.listings().stream().mapToInt(lookup::of).toArray();
    }

    private CarOfListing lookup() {
        CarOfListing found = carOfListing;
        if (found == null) {
            found = new CarOfListing(cars);
            carOfListing = found;
        }
        return found;
    }

    /**
     * How the price of a sighting stands of which the number of its car is known, -1 for none of the fit; taken into the misses where the
     * model learned from its very price, and not only that it is a bound: as it was seen, for a price misses no value of another day or
     * level of trade.
     */
    Standing standing(Sighting seen, int number, Optional<LocalDate> on, Optional<LevelOfTrade> level, Misses misses) {
        if (number < 0) {
            return standing(seen, -1, asked(Evidence.subject(seen.facts(), seen), -1, on, level), posterior);
        }
        SeenCar car = SeenCar.of(cars, number);
        int place = CarOfListing.place(seen, car);
        int row = leftOut.row(number, place);
        Subject own = Evidence.subject(car.facts(), car.sightings().get(place));
        Standing standing = standing(seen, number, row, asked(own, row, on, level));
        if (learnedFrom(row)) {
            boolean asSeen = on.isEmpty() && level.isEmpty();
            misses.add(seen.amount(), asSeen ? standing
                    : standing(seen, number, row, asked(own, row, Optional.empty(), Optional.empty())));
        }
        return standing;
    }

    private Standing standing(Sighting seen, int number, int row, Asked asked) {
        return standing(seen, number, asked, leftOut.without(number, row, asked.own));
    }

    private boolean learnedFrom(int row) {
        return row >= 0 && evidence.bound(row) == Bound.NONE;
    }

    /** See {@link PriceModel#judgeAll(Optional, Optional)}. */
    List<Judgement> judgeAll(Optional<LocalDate> on, Optional<LevelOfTrade> level) {
        List<List<Judgement>> all = new ArrayList<>(Collections.nCopies(cars.size(), List.of()));
        IntStream.range(0, cars.size()).parallel().forEach(c -> {
            Posterior without = leftOut.without(c);
            List<Judgement> ofCar = new ArrayList<>();
            Car car = cars.get(c);
            for (int k = 0; k < car.sightings().size(); k++) {
                Listing listing = car.sightings().get(k);
                Asked asked = asked(Evidence.subject(car.facts(), listing), leftOut.row(c, k), on, level);
                ofCar.add(standing(listing, c, asked, without).of(listing, car.name()));
            }
            all.set(c, ofCar);
        });
        return all.stream().flatMap(List::stream).toList();
    }

    /**
     * What the model is asked to judge a listing.
     *
     * @param own the row of the fit that holds the listing's price, no difference taken, where the listing is judged as it was seen
     */
    private record Asked(Subject subject, Encoded encoded, Optional<Encoded> own, List<String> outside) {
    }

    private Asked asked(Subject seen, int row, Optional<LocalDate> on, Optional<LevelOfTrade> level) {
        if (on.isPresent() || level.isPresent()) {
            Subject changed = new Subject(seen.facts(), level.orElse(seen.level()), seen.includes(), on.or(seen::on));
            return new Asked(changed, encoder.encode(changed), Optional.empty(), values.outside(changed));
        }
        if (row < 0) {
            return new Asked(seen, encoder.encode(seen), Optional.empty(), values.outside(seen));
        }
        // What the model learned from does not lie outside of what it has seen.
        Encoded own = encoded.get(row);
        return new Asked(seen, encoder.isOfItsOffer(row) ? encoder.withoutItsOffer(own) : own, Optional.of(own), List.of());
    }

    private Standing standing(Sighting seen, int car, Asked asked, Posterior by) {
        Subject subject = asked.subject;
        Valuation valuation = values.of(subject, asked.encoded, by, car, asked.outside);
        double price = seen.amount();
        List<String> ofListing = seen.remarks();
        if (!(valuation instanceof FairValue value)) {
            return Standing.untold(valuation, ofListing);
        }
        if (subject.level() != seen.level()) {
            List<String> apart = List.of("the price is one of the level " + seen.level().words() + ", the value of the level "
                    + subject.level().words() + ": they are not compared");
            return Standing.untold(value, Figures.joined(ofListing, Figures.joined(value.remarks(), apart)));
        }
        if (!subject.on().equals(seen.seenOn())) {
            ofListing = Figures.joined(ofListing, List.of("the price is of "
                    + seen.seenOn().map(LocalDate::toString).orElse("an unknown day") + ", the value of "
                    + subject.on().map(LocalDate::toString).orElse("an unknown day")));
        }
        Range range = value.range(0.80);
        Position position = price < range.low() ? Position.BELOW : price > range.high() ? Position.ABOVE : Position.INSIDE;
        return new Standing(value, position, price - value.median(), 100 * (price / value.median() - 1), value.percentile(price),
                Figures.joined(ofListing, Figures.joined(value.remarks(), Flags.of(seen, subject, value, position))));
    }

    /** See {@link PriceModel#study}. */
    Answer<FitStudy> study(List<Judgement> judgements) {
        Judgement[] byRow = new Judgement[evidence.size()];
        for (Judgement judgement : judgements) {
            int car = lookup().of(judgement.listing());
            int row = car < 0 ? -1 : leftOut.row(car, CarOfListing.place(judgement.listing(), cars.get(car)));
            if (learnedFrom(row)) {
                byRow[row] = judgement;
            }
        }
        Misses misses = new Misses(byRow.length);
        Arrays.stream(byRow).filter(Objects::nonNull).forEach(j -> misses.add(j.listing().price().amount(), asSeen(j)));
        return misses.study();
    }

    /** How a price stands on the day on which it was seen and at its own level of trade, whatever was asked. */
    private Standing asSeen(Judgement judgement) {
        Listing listing = judgement.listing();
        boolean already = judgement.valuation() instanceof FairValue value && value.subject().on().equals(listing.seenOn())
                && value.subject().level() == listing.level();
        return already ? judgement.standing()
                : standing(listing, lookup().of(listing), Optional.empty(), Optional.empty(), new Misses(1));
    }
}
