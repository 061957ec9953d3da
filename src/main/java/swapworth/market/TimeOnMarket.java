package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.Listing;
import swapworth.listing.Outcome;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.statistics.Quantiles;
import swapworth.statistics.Survival;
import swapworth.table.Table;

/**
 * How long such cars stay on offer, how asks are cut, and what is paid in the end. A car counts once, reposts included. Looks are the days
 * on which any car was seen. A car that came up between two looks has been on offer since one of the days between, each as likely as the
 * other, and counts from the age at which it was found, since those that came and went between two looks were not seen
 * ({@link Survival#ofLooks}). Cars that stood there at the first look at their line, or after more than {@value #LONGEST_GAP} days without
 * a look, have an unknown past, and those that stand long are more than their share of them: they are left out of how long a sale takes,
 * unless too few others are there. {@link #clock()} tells which it is.
 *
 * @param offers the cars that were asked a price for on a known day, auctions left out
 * @param paid what was paid against the last ask of the same kind of seller, one for each kind with an answer or an assumption; what an
 *     auction brought is no answer to an ask
 */
public record TimeOnMarket(List<Offer> offers, List<Paid> paid) {

    /** A first ask is near its fair value within so many per cent. */
    private static final double NEAR = 5;
    /** After more days without a look nobody knows since when a car has been on offer. */
    static final int LONGEST_GAP = 35;
    /** So many cars that came up between two looks, and so many of them ended, tell how long a sale takes without the others. */
    static final int ENOUGH_CARS = 10;
    static final int ENOUGH_ENDS = 5;
    /** Quantiles of fewer pairs of ask and sale would say nothing. */
    private static final int LEAST_PAIRS = 5;

    /** Copies the lists in. */
    public TimeOnMarket {
        offers = List.copyOf(offers);
        paid = List.copyOf(paid);
    }

    /** How the first ask stood to the fair value of that day, by all other cars. */
    public enum Asked {
        /** More than 5 % below. */
        BELOW("asked more than 5 % below fair value"),
        /** Within 5 %. */
        NEAR("asked within 5 % of fair value"),
        /** More than 5 % above. */
        ABOVE("asked more than 5 % above fair value"),
        /** The car has no fair value. */
        UNKNOWN("no fair value");

        private final String words;

        Asked(String words) {
            this.words = words;
        }

        /**
         * How it reads.
         *
         * @return plain words
         */
        public String words() {
            return words;
        }

        static Asked of(double gapPercent) {
            return Double.isNaN(gapPercent) ? UNKNOWN : gapPercent < -TimeOnMarket.NEAR ? BELOW : gapPercent > TimeOnMarket.NEAR
                    ? ABOVE : NEAR;
        }
    }

    /** What becomes of cars whose advertisement vanished for an unknown reason. */
    public enum Vanished {
        /** They are taken to be still unsold on the day on which they vanished: the longest times. */
        NOT_SOLD("vanished ones not counted as sales"),
        /** They are taken to be sold on that day: the shortest times. */
        SOLD("vanished ones counted as sales");

        private final String words;

        Vanished(String words) {
            this.words = words;
        }

        /**
         * How it reads.
         *
         * @return plain words
         */
        public String words() {
            return words;
        }
    }

    /** From when on the days until a sale are counted. */
    public enum Clock {
        /** From the beginning of the offer, of cars that came up between two looks. */
        ON_OFFER("days on offer"),
        /** From the first sighting, of all cars: too few came up between two looks. */
        SINCE_FIRST_SEEN("days since first seen");

        private final String words;

        Clock(String words) {
            this.words = words;
        }

        /**
         * How it reads.
         *
         * @return plain words
         */
        public String words() {
            return words;
        }
    }

    /**
     * The offer of one car.
     *
     * @param car name of the car
     * @param line its line
     * @param days days from the first ask to the end or the last sighting, whichever is later
     * @param gapBefore days from the look before to the first ask, somewhere between which the offer began; 0 if its beginning is unknown
     * @param gapAfter days from the last sighting to the next look, somewhere between which it ended; 0 if its last day is known, or no
     *     look came soon
     * @param outcome how it ended, as far as the rows know
     * @param gapPercent the first ask against the fair value of its day, its own car left out, in per cent; NaN where there is no value
     * @param cuts the cuts of the ask, in order of time
     * @param firstAsk the first ask, in the base currency
     * @param lastAsk the last ask
     */
    public record Offer(String car, String line, long days, int gapBefore, int gapAfter, Outcome outcome, double gapPercent,
            List<Cut> cuts, double firstAsk, double lastAsk) {

        /** Copies the list in. */
        public Offer {
            requireNonNull(car, "car");
            requireNonNull(line, "line");
            requireNonNull(outcome, "outcome");
            cuts = List.copyOf(cuts);
        }

        /**
         * How the first ask stood to fair value.
         *
         * @return below, near, above or unknown
         */
        public Asked asked() {
            return Asked.of(gapPercent);
        }

        /** Days from the first ask to the last on which it was there: that of a known end is the next. */
        private int daysThere(Vanished vanished) {
            return Math.toIntExact(isEnded(vanished) && gapAfter == 0 ? Math.max(0, days - 1) : days);
        }

        private boolean isEnded(Vanished vanished) {
            return outcome == Outcome.SOLD || outcome == Outcome.GONE && vanished == Vanished.SOLD;
        }
    }

    /**
     * A cut of an ask.
     *
     * @param day days after the first sighting of the car
     * @param percent its size in per cent of the ask before, above 0
     */
    public record Cut(long day, double percent) {
    }

    /**
     * What is paid against the last ask.
     *
     * @param seller whose cars
     * @param pairs the user's own pairs of last ask and sale; 0 where only the assumption speaks
     * @param percent the middle, per cent of the last ask
     * @param low80 below which the next sale falls once in ten
     * @param high80 above which it falls once in ten
     */
    public record Paid(Seller seller, int pairs, double percent, double low80, double high80) {
    }

    /**
     * The time on market of the cars of a model.
     *
     * @param model the model
     * @return the offers; why there are none where no car has an ask with a date
     */
    public static Answer<TimeOnMarket> of(PriceModel model) {
        List<Offer> offers = new ArrayList<>();
        Map<Seller, List<Double>> pairs = new EnumMap<>(Seller.class);
        Looks looks = Looks.of(model.cars());
        for (Car car : model.cars()) {
            List<Listing> asks = car.sightings().stream().filter(s -> s.price().kind() == PriceKind.ASKING && s.seenOn().isPresent()
                    && s.facts().seller() != Seller.AUCTION).toList();
            if (asks.isEmpty()) {
                continue;
            }
            offers.add(offer(model, car, asks, looks));
            Listing ask = asks.get(asks.size() - 1);
            car.sale().ifPresent(sale -> soldBy(ask, sale).ifPresent(seller -> pairs.computeIfAbsent(seller, s -> new ArrayList<>())
                    .add(100 * (sale.price().amount() / ask.price().amount() - 1))));
        }
        if (offers.isEmpty()) {
            return new Answer.NotTold<>(new CannotTell("no car has an asking price with a date", 0, model.cars().size(),
                    "the column seen_on, and the same cars again on later days"));
        }
        return new Answer.Told<>(new TimeOnMarket(offers, List.of(paid(Seller.PRIVATE, pairs, model.assumptions()),
                paid(Seller.TRADE, pairs, model.assumptions()))));
    }

    /**
     * Who sold a car at the price that answers an ask: a private person or a business, where ask and sale are of the same kind of seller
     * and hold the same fees and tax. A row that does not say who sells is taken at the other's word; where neither says, it was private.
     */
    private static Optional<Seller> soldBy(Listing ask, Listing sale) {
        Seller asked = ask.facts().seller();
        Seller sold = sale.facts().seller() == Seller.UNKNOWN ? asked : sale.facts().seller();
        if (sold == Seller.AUCTION || asked != sold && asked != Seller.UNKNOWN || sale.price().includes() != ask.price().includes()) {
            return Optional.empty();
        }
        return Optional.of(sold == Seller.TRADE ? Seller.TRADE : Seller.PRIVATE);
    }

    /** The days on which any car was seen, and the first one of each line. */
    private record Looks(NavigableSet<Long> days, Map<String, Long> firstOfLine) {

        static Looks of(List<Car> cars) {
            NavigableSet<Long> days = new TreeSet<>();
            Map<String, Long> firstOfLine = new HashMap<>();
            for (Car car : cars) {
                for (Listing sighting : car.sightings()) {
                    sighting.seenOn().ifPresent(day -> {
                        days.add(day.toEpochDay());
                        firstOfLine.merge(car.facts().vehicle(), day.toEpochDay(), Math::min);
                    });
                }
            }
            return new Looks(days, firstOfLine);
        }

        /** Days from the look before to the one that found a car; 0 if it was the first at its line, or the first for a long time. */
        int before(String line, long day) {
            Long before = days.lower(day);
            return before == null || firstOfLine.get(line) == day || day - before > LONGEST_GAP ? 0 : (int) (day - before);
        }

        /** Days to the next look; 0 if none came soon. */
        int after(long day) {
            Long next = days.higher(day);
            return next == null || next - day > LONGEST_GAP ? 0 : (int) (next - day);
        }
    }

    private static Offer offer(PriceModel model, Car car, List<Listing> asks, Looks looks) {
        Listing first = asks.get(0);
        LocalDate begin = first.seenOn().orElseThrow();
        LocalDate last = car.lastKnown().orElseThrow();
        List<Cut> cuts = car.priceCuts().stream().map(c -> new Cut(c.to().toEpochDay() - begin.toEpochDay(), -c.percent())).toList();
        boolean endIsUnseen = car.outcome() != Outcome.OPEN && car.sale().isEmpty() && car.endedOn().isEmpty();
        return new Offer(car.name(), car.facts().vehicle(), Math.max(0, last.toEpochDay() - begin.toEpochDay()),
                looks.before(car.facts().vehicle(), begin.toEpochDay()), endIsUnseen ? looks.after(last.toEpochDay()) : 0, car.outcome(),
                model.judge(first).gapPercent(), cuts, first.price().amount(), asks.get(asks.size() - 1).price().amount());
    }

    private static Paid paid(Seller seller, Map<Seller, List<Double>> pairs, Assumptions assumptions) {
        double[] own = pairs.getOrDefault(seller, List.of()).stream().mapToDouble(p -> p).sorted().toArray();
        if (own.length >= LEAST_PAIRS) {
            return new Paid(seller, own.length, Quantiles.ofSorted(own, 0.5), Quantiles.ofNext(own, 0.1), Quantiles.ofNext(own, 0.9));
        }
        boolean trade = seller == Seller.TRADE;
        double middle = trade ? assumptions.logMiddle("level_trade_sold") - assumptions.logMiddle("level_trade_asking")
                : assumptions.logMiddle("level_private_sold");
        // The ninth decile of a normal law. Of a business both steps are assumed, and no part of what is unsure of them is shared.
        double reach = 1.2816 * (trade ? Math.hypot(assumptions.get("same_car_scale").middle(), assumptions.get("same_car_scale").spread())
                : assumptions.logSpread("level_private_sold"));
        return new Paid(seller, 0, Figures.percent(middle), Figures.percent(middle - reach), Figures.percent(middle + reach));
    }

    /**
     * How long offers last until a sale.
     *
     * @param vanished what becomes of cars that merely vanished
     * @return the estimate; cars still open, and those withdrawn, have not been sold until their last day
     */
    public Survival untilSale(Vanished vanished) {
        return untilSale(offers, vanished);
    }

    /**
     * How long offers of one standing last until a sale.
     *
     * @param asked how the first ask stood to fair value
     * @param vanished what becomes of cars that merely vanished
     * @return the estimate; of no car, one without steps
     */
    public Survival untilSale(Asked asked, Vanished vanished) {
        return untilSale(offers.stream().filter(o -> o.asked() == asked).toList(), vanished);
    }

    private Survival untilSale(List<Offer> some, Vanished vanished) {
        Clock clock = clock();
        List<Offer> counted = clock == Clock.ON_OFFER ? some.stream().filter(o -> o.gapBefore() > 0).toList() : some;
        if (clock == Clock.ON_OFFER) {
            return Survival.ofLooks(counted.stream().mapToInt(Offer::gapBefore).toArray(),
                    counted.stream().mapToInt(o -> o.daysThere(vanished)).toArray(),
                    counted.stream().mapToInt(o -> o.isEnded(vanished) ? Math.max(1, o.gapAfter()) : 0).toArray());
        }
        boolean[] sold = new boolean[counted.size()];
        for (int i = 0; i < sold.length; i++) {
            sold[i] = counted.get(i).isEnded(vanished);
        }
        return Survival.of(counted.stream().mapToDouble(o -> o.days() + o.gapAfter() / 2.0).toArray(), sold);
    }

    /**
     * From when on the days until a sale are counted.
     *
     * @return from the beginning of the offer if ten cars or more came up between two looks, and five or more of them were sold or gone
     */
    public Clock clock() {
        List<Offer> cameUp = offers.stream().filter(o -> o.gapBefore() > 0).toList();
        return cameUp.size() >= ENOUGH_CARS && cameUp.stream().filter(o -> o.isEnded(Vanished.SOLD)).count() >= ENOUGH_ENDS
                ? Clock.ON_OFFER : Clock.SINCE_FIRST_SEEN;
    }

    /**
     * The cuts of asks, of all cars that were seen more than once.
     *
     * @return how many, how large, how late; empty where no ask was cut
     */
    public Optional<Cuts> cuts() {
        double[] sizes = offers.stream().flatMap(o -> o.cuts().stream()).mapToDouble(Cut::percent).sorted().toArray();
        double[] first = offers.stream().filter(o -> !o.cuts().isEmpty()).mapToDouble(o -> o.cuts().get(0).day()).sorted().toArray();
        return sizes.length == 0 ? Optional.empty() : Optional.of(new Cuts(offers.size(), first.length, sizes.length,
                Quantiles.ofSorted(sizes, 0.5), new Range(Quantiles.ofSorted(sizes, 0.1), Quantiles.ofSorted(sizes, 0.9)),
                Quantiles.ofSorted(first, 0.5), new Range(Quantiles.ofSorted(first, 0.1), Quantiles.ofSorted(first, 0.9))));
    }

    /**
     * The cuts of asks together.
     *
     * @param cars cars on offer
     * @param cut cars whose ask was cut
     * @param cuts cuts in all
     * @param percent the middle size of a cut
     * @param percentRange eight of ten cuts lie within
     * @param firstAfterDays the middle number of days from the first sighting to the first cut
     * @param daysRange eight of ten first cuts lie within
     */
    public record Cuts(int cars, int cut, int cuts, double percent, Range percentRange, double firstAfterDays, Range daysRange) {
    }

    /**
     * How long such cars take to sell, how asks are cut, and what is paid in the end, as tables.
     *
     * @return three tables
     */
    public List<Table> tables() {
        return TimeOnMarketTables.of(this);
    }
}
