package swapworth.world;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import swapworth.listing.Airbags;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Damage;
import swapworth.listing.Keys;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.listing.Title;

/**
 * Draws the facts of cars: who sells them, how old and worn they are, what is broken, and what the advertisement leaves
 * unsaid.
 */
final class CarMaker {

    private static final List<Title> TITLES = List.of(Title.CLEAN, Title.REBUILT, Title.SALVAGE, Title.PARTS_ONLY,
            Title.UNKNOWN);
    private static final List<Runs> RUNS = List.of(Runs.DRIVES, Runs.ENGINE_FIRES, Runs.ENGINE_DEAD, Runs.NO_ENGINE,
            Runs.NOT_TRIED, Runs.UNKNOWN);

    private final Chance chance;
    private final WorldSettings settings;

    CarMaker(Chance chance, WorldSettings settings) {
        this.chance = chance;
        this.settings = settings;
    }

    CarFacts make(Line line) {
        Seller seller = chance.oneOf(List.of(Seller.AUCTION, Seller.TRADE, Seller.PRIVATE), line.auctionShare(),
                line.tradeShare(), 1 - line.auctionShare() - line.tradeShare());
        boolean crashed = chance.happens(switch (seller) {
            case AUCTION -> line.crashedAtAuction();
            case TRADE -> 0.02;
            case PRIVATE, UNKNOWN -> 0.07;
        });
        int year = chance.whole(line.firstModelYear(), line.lastModelYear());
        double age = Math.max(0.8, settings.firstMonth().getYear() + settings.months() / 24.0 - year);
        CarFacts.Builder facts = CarFacts.of(line.vehicle())
                .trim(chance.oneOf(line.trims()))
                .body(line.body())
                .runningGear(line.gear())
                .powerKw(line.powerKw())
                .cylinders(line.cylinders())
                .weightKg(line.weightKg())
                .drivenWheels(line.drivenWheels())
                .modelYear(year)
                .mileage(new Mileage(miles(line, age), chance.oneOf(
                        List.of(MileageStatus.READ, MileageStatus.RECORDED, MileageStatus.UNKNOWN), 0.5, 0.15, 0.35)))
                .seller(seller)
                .region(chance.oneOf(Names.REGIONS))
                .distanceAway(chance.whole(4, 320))
                .title(title(seller, crashed))
                .runs(runs(line, seller, crashed));
        damage(seller, crashed, facts);
        keysAndAirbags(seller, crashed, facts);
        double known = seller == Seller.AUCTION ? 0.25 : seller == Seller.TRADE ? 0.6 : 0.75;
        facts.rust(condition(known, 0.05 + 0.025 * age, 0.01 + 0.008 * age))
                .paint(condition(known, 0.08 + 0.02 * age, 0.01 + 0.005 * age))
                .interior(condition(known, 0.08 + 0.02 * age, 0.01 + 0.004 * age))
                .mechanical(condition(known, 0.05 + 0.02 * age, 0.01 + 0.006 * age))
                .records(condition(known * 0.8, 0.25, 0.10));
        if (chance.happens(0.3)) {
            facts.options(chance.oneOf(List.of("heated seats", "better speakers", "tow bar; roof bars", "limited-slip axle",
                    "new tyres")));
        }
        facts.further(Map.of("colour", chance.oneOf(Names.COLOURS)));
        return facts.build();
    }

    /** Most people round to the thousand, some to the hundred, some read the figure off. */
    private int miles(Line line, double age) {
        double driven = line.milesPerYear() * StrictMath.pow(age, 0.95) * StrictMath.exp(chance.near(0, 0.32));
        int exact = (int) Math.max(900, driven);
        double rounding = chance.uniform();
        return rounding < 0.55 ? Math.max(1_000, (exact + 500) / 1_000 * 1_000)
                : rounding < 0.70 ? (exact + 50) / 100 * 100
                : exact;
    }

    private Title title(Seller seller, boolean crashed) {
        if (seller == Seller.AUCTION) {
            return crashed ? chance.oneOf(TITLES, 0.12, 0.05, 0.65, 0.08, 0.10)
                    : chance.oneOf(TITLES, 0.65, 0.12, 0.05, 0, 0.18);
        }
        return crashed ? chance.oneOf(TITLES, 0.45, 0.10, 0.25, 0.02, 0.18) : chance.oneOf(TITLES, 0.78, 0.08, 0.02, 0, 0.12);
    }

    private Runs runs(Line line, Seller seller, boolean crashed) {
        if (crashed) {
            return chance.oneOf(RUNS, 0.25, 0.25, 0.15, 0.02, 0.27, 0.06);
        }
        if (seller == Seller.AUCTION) {
            return chance.oneOf(RUNS, 0.72, 0.10, 0.04, 0.01, 0.08, 0.05);
        }
        if (line == Line.ROADSTER && seller == Seller.PRIVATE) {
            return chance.oneOf(RUNS, 0.72, 0.04, 0.09, 0.03, 0.03, 0.09);
        }
        return chance.oneOf(RUNS, 0.87, 0.02, 0.02, 0, 0.01, 0.08);
    }

    private void damage(Seller seller, boolean crashed, CarFacts.Builder facts) {
        if (!crashed) {
            if (chance.happens(seller == Seller.AUCTION ? 0.7 : 0.85)) {
                facts.damage(Set.of());
            }
            return;
        }
        if (chance.happens(0.05)) {
            return;
        }
        List<Damage> zones = List.of(Damage.values());
        Set<Damage> hit = EnumSet.of(chance.oneOf(zones, 0.42, 0.20, 0.11, 0.11, 0.04, 0.05, 0.05, 0.02));
        if (chance.happens(0.25)) {
            hit.add(chance.oneOf(zones, 0.20, 0.15, 0.25, 0.25, 0.05, 0.10, 0, 0));
        }
        facts.damage(hit);
    }

    private void keysAndAirbags(Seller seller, boolean crashed, CarFacts.Builder facts) {
        facts.keys(seller == Seller.AUCTION
                ? chance.oneOf(List.of(Keys.YES, Keys.NO, Keys.UNKNOWN), 0.68, 0.17, 0.15)
                : chance.oneOf(List.of(Keys.YES, Keys.NO, Keys.UNKNOWN), 0.30, 0.01, 0.69));
        facts.airbags(crashed
                ? chance.oneOf(List.of(Airbags.IN_PLACE, Airbags.FIRED, Airbags.GONE, Airbags.UNKNOWN), 0.28, 0.46, 0.06, 0.20)
                : chance.oneOf(List.of(Airbags.IN_PLACE, Airbags.GONE, Airbags.UNKNOWN), 0.2, 0.01, 0.79));
    }

    private Condition condition(double known, double worn, double bad) {
        return chance.happens(known)
                ? chance.oneOf(List.of(Condition.SOUND, Condition.WORN, Condition.BAD),
                        Math.max(0.1, 1 - worn - bad), worn, bad)
                : Condition.UNKNOWN;
    }
}
