package swapworth.world;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Outcome;
import swapworth.listing.PriceIncludes;
import swapworth.listing.PriceKind;
import swapworth.listing.Saved;
import swapworth.listing.Seller;

/**
 * What a collector sees of one car on Tuesday and Friday evenings.
 *
 * <p>The last ask that was seen is the car's price at the level of asking on the day on which it was made, by the advertisement
 * or by the last cut, its own error included; earlier asks stood higher by the cuts. Dear cars stay longer and are cut more often,
 * 3 to 6 % at a time, for the first time after two to three weeks. A sale goes through at the level of sold prices on the day of
 * the sale, never above the last ask. An auction has one evening, or two when the first bid missed the reserve; that bid lies 2 to
 * 12 % below the car's price.
 */
final class History {

    /** Advertisements that began so long before the first evening may still stand on it. */
    private static final int DAYS_BEFORE = 90;

    private final Chance chance;
    private final Truths truths;
    private final LocalDate firstDay;
    private final List<LocalDate> evenings;

    History(Chance chance, Truths truths, WorldSettings settings) {
        this.chance = chance;
        this.truths = truths;
        this.firstDay = settings.firstMonth().atDay(1);
        LocalDate end = settings.firstMonth().plusMonths(settings.months()).atDay(1);
        this.evenings = firstDay.datesUntil(end)
                .filter(day -> switch (day.getDayOfWeek()) {
                    case TUESDAY, FRIDAY -> true;
                    default -> false;
                })
                .toList();
    }

    /** A car, and its sightings part by part: a second part is a repost, to be given an id of its own. */
    record Seen(CarOfWorld car, List<List<Sighting>> parts) {
    }

    LocalDate lastEvening() {
        return evenings.get(evenings.size() - 1);
    }

    Seen of(int number, Line line, CarFacts facts, double error) {
        return facts.seller() == Seller.AUCTION ? auctioned(number, line, facts, error)
                : advertised(number, line, facts, error);
    }

    private Seen auctioned(int number, Line line, CarFacts facts, double error) {
        LocalDate evening = chance.oneOf(evenings);
        PriceIncludes includes = chance.oneOf(List.of(PriceIncludes.NEITHER, PriceIncludes.FEES, PriceIncludes.BOTH),
                0.55, 0.30, 0.15);
        String source = chance.oneOf(Names.AUCTIONS);
        Saved saved = saved();
        List<Sighting> rows = new ArrayList<>();
        CarOfWorld.Fate fate = CarOfWorld.Fate.SOLD;
        LocalDate sale = evening;
        boolean missed = chance.happens(0.12);
        if (missed) {
            double bid = auctionPrice(facts, error, includes, evening) * (1 - chance.uniform(0.02, 0.12));
            rows.add(new Sighting(number, "", evening, miles(facts), PriceKind.BID_NOT_MET, rounded(bid, 25), includes,
                    Outcome.WITHDRAWN, Optional.of(evening), saved, source));
            sale = eveningFrom(evening.plusDays(chance.whole(14, 42))).orElse(LocalDate.MAX);
        }
        if (missed && (sale.equals(LocalDate.MAX) || chance.happens(0.4))) {
            fate = CarOfWorld.Fate.KEPT;
        } else {
            rows.add(new Sighting(number, "", sale, miles(facts), PriceKind.SOLD,
                    rounded(auctionPrice(facts, error, includes, sale), 25), includes, Outcome.SOLD, Optional.of(sale),
                    saved, source));
        }
        return new Seen(new CarOfWorld("", line, facts, error, List.of(), evening, 0, fate), List.of(rows));
    }

    private double auctionPrice(CarFacts facts, double error, PriceIncludes includes, LocalDate on) {
        return StrictMath.exp(truths.logTypicalValue(facts, LevelOfTrade.AUCTION, on) + error + included(includes));
    }

    private double included(PriceIncludes includes) {
        return switch (includes) {
            case NEITHER, UNKNOWN -> 0;
            case FEES -> truths.effect("includes_fees");
            case TAX -> truths.effect("includes_tax");
            case BOTH -> truths.effect("includes_fees") + truths.effect("includes_tax");
        };
    }

    private Seen advertised(int number, Line line, CarFacts facts, double error) {
        boolean trade = facts.seller() == Seller.TRADE;
        PriceIncludes includes = trade && chance.happens(0.10) ? PriceIncludes.TAX : PriceIncludes.NEITHER;
        String source = chance.oneOf(trade ? Names.TRADE_SOURCES : Names.PRIVATE_SOURCES);
        Saved saved = saved();
        LocalDate offered = firstDay;
        int days = 0;
        CarOfWorld.Fate fate = CarOfWorld.Fate.SOLD;
        List<Double> cutDays = new ArrayList<>();
        List<LocalDate> noted = new ArrayList<>();
        while (noted.isEmpty()) {
            // A car that came and went between two evenings was never in the collection; draw another time for it.
            offered = firstDay.plusDays(chance.whole(-DAYS_BEFORE, (int) (lastEvening().toEpochDay() - firstDay.toEpochDay())));
            double untilSale = daysUntilSale(trade, error);
            double untilKept = -160 * StrictMath.log(1 - chance.uniform());
            fate = untilSale <= untilKept ? CarOfWorld.Fate.SOLD : CarOfWorld.Fate.KEPT;
            days = (int) Math.ceil(Math.min(untilSale, untilKept));
            cutDays = cutDays(days, error);
            noted = notedEvenings(offered, days, cutDays);
        }
        int repostAt = repostAt(noted, days);
        List<Cut> cuts = new ArrayList<>();
        for (double day : cutDays) {
            cuts.add(new Cut(offered.plusDays((long) day), chance.uniform(0.03, 0.06)));
        }
        if (repostAt > 0) {
            cuts.add(new Cut(noted.get(repostAt), chance.uniform(0.02, 0.04)));
        }
        int milesAtRepost = miles(facts) + chance.whole(0, 300);
        LocalDate lastNoted = noted.get(noted.size() - 1);
        LevelOfTrade asking = trade ? LevelOfTrade.TRADE_ASKING : LevelOfTrade.PRIVATE_ASKING;
        double lastAsk = StrictMath.exp(truths.logTypicalValue(facts, asking, made(offered, cuts, lastNoted)) + error + included(includes));
        List<Sighting> first = new ArrayList<>();
        List<Sighting> second = new ArrayList<>();
        for (int i = 0; i < noted.size(); i++) {
            LocalDate evening = noted.get(i);
            double ask = lastAsk;
            for (Cut cut : cuts) {
                if (cut.on().isAfter(evening) && !cut.on().isAfter(lastNoted)) {
                    ask /= 1 - cut.share();
                }
            }
            boolean reposted = repostAt > 0 && i >= repostAt;
            (reposted ? second : first).add(new Sighting(number, "", evening, reposted ? milesAtRepost : miles(facts),
                    PriceKind.ASKING, rounded(ask, 50), includes, Outcome.OPEN, Optional.empty(), saved, source));
        }
        if (repostAt > 0) {
            LocalDate vanished = eveningFrom(noted.get(repostAt - 1).plusDays(1)).orElseThrow();
            first.set(first.size() - 1, first.get(first.size() - 1).ended(Outcome.GONE, vanished));
        }
        ending(facts, error, trade, fate, offered.plusDays(days), includes, second.isEmpty() ? first : second);
        return new Seen(new CarOfWorld("", line, facts, error, List.of(), offered, days, fate),
                second.isEmpty() ? List.of(first) : List.of(first, second));
    }

    private record Cut(LocalDate on, double share) {
    }

    /** The day on which the ask was made that was seen last; of one from before the first day nothing is known but that day. */
    private LocalDate made(LocalDate offered, List<Cut> cuts, LocalDate lastNoted) {
        LocalDate made = offered.isBefore(firstDay) ? firstDay : offered;
        for (Cut cut : cuts) {
            made = !cut.on().isAfter(lastNoted) && cut.on().isAfter(made) ? cut.on() : made;
        }
        return made;
    }

    /** Weibull of shape 1.3 with a median of 28 days (trade: 40) at the fair ask, longer above it. */
    private double daysUntilSale(boolean trade, double error) {
        double median = (trade ? 40 : 28) * StrictMath.exp(1.5 * Math.max(-0.4, Math.min(0.4, error)));
        double exponential = -StrictMath.log(1 - chance.uniform());
        return median * StrictMath.pow(exponential / StrictMath.log(2), 1 / 1.3);
    }

    private List<Double> cutDays(int days, double error) {
        List<Double> found = new ArrayList<>();
        double tendency = 1 / (1 + StrictMath.exp(0.4 - 8 * error));
        for (double day = chance.uniform(14, 21); day < days; day += chance.uniform(14, 28)) {
            if (chance.happens(tendency)) {
                found.add(day);
            }
        }
        return found;
    }

    private List<LocalDate> notedEvenings(LocalDate offered, int days, List<Double> cutDays) {
        LocalDate end = offered.plusDays(days);
        List<LocalDate> noted = new ArrayList<>();
        LocalDate lastNoted = offered;
        boolean seenBefore = false;
        for (LocalDate evening : evenings) {
            if (evening.isBefore(offered)) {
                continue;
            }
            if (!evening.isBefore(end)) {
                break;
            }
            LocalDate since = lastNoted;
            boolean cut = seenBefore && cutDays.stream().map(day -> offered.plusDays(day.longValue()))
                    .anyMatch(on -> on.isAfter(since) && !on.isAfter(evening));
            if (chance.happens(!seenBefore || cut ? 0.65 : 0.20)) {
                noted.add(evening);
                lastNoted = evening;
                seenBefore = true;
            }
        }
        return noted;
    }

    /** The number of the first evening after a repost, or 0. */
    private int repostAt(List<LocalDate> noted, int days) {
        if (noted.size() < 2 || days < 25 || !chance.happens(0.16)) {
            return 0;
        }
        int at = chance.whole(1, noted.size() - 1);
        return noted.get(at).toEpochDay() - noted.get(at - 1).toEpochDay() >= 7 ? at : 0;
    }

    private void ending(CarFacts facts, double error, boolean trade, CarOfWorld.Fate fate, LocalDate end, PriceIncludes includes,
            List<Sighting> rows) {
        Optional<LocalDate> found = eveningFrom(end);
        if (found.isEmpty()) {
            return;
        }
        int last = rows.size() - 1;
        Sighting ask = rows.get(last);
        if (fate == CarOfWorld.Fate.KEPT) {
            rows.set(last, ask.ended(chance.happens(0.5) ? Outcome.WITHDRAWN : Outcome.GONE, found.get()));
            return;
        }
        double told = chance.uniform();
        if (told < 0.38) {
            double price = StrictMath.exp(truths.logTypicalValue(facts,
                    trade ? LevelOfTrade.TRADE_SOLD : LevelOfTrade.PRIVATE_SOLD, end)
                    + error + included(includes) + 0.01 * chance.normal());
            rows.add(new Sighting(ask.car(), "", found.get(), ask.miles(), PriceKind.SOLD,
                    Math.min(ask.price(), rounded(price, 50)), includes, Outcome.SOLD, Optional.of(end), ask.saved(),
                    ask.source()));
        } else {
            rows.set(last, ask.ended(told < 0.55 ? Outcome.SOLD : Outcome.GONE, found.get()));
        }
    }

    private Saved saved() {
        return chance.oneOf(List.of(Saved.WHOLE_SEARCH, Saved.PICKED, Saved.UNKNOWN), 0.75, 0.15, 0.10);
    }

    private Optional<LocalDate> eveningFrom(LocalDate day) {
        return evenings.stream().filter(evening -> !evening.isBefore(day)).findFirst();
    }

    private static int miles(CarFacts facts) {
        return (int) facts.mileage().orElseThrow().miles();
    }

    /** People round: to the step below 10,000, to twice the step above. */
    private static long rounded(double price, int step) {
        int coarse = price < 10_000 ? step : 2 * step;
        return Math.max(coarse, Math.round(price / coarse) * coarse);
    }
}
