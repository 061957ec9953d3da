package swapworth.world;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Damage;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Mileage;

/**
 * The true parameters of a sample world. All effects are natural logarithms of price ratios ("log points").
 *
 * <p>ln value = body + running gear + pair + trim + age and mileage (slope, curve, product, a departure by line) + vintage +
 * level of trade + title + runs + damage (zones add up) + condition + keys + airbags + region + market. An unstated title,
 * damage, engine or condition has a step of its own. Names of effects are those of the assumptions where such an assumption
 * exists.
 */
public final class Truths {

    /** The age at which slopes and levels are stated, years. */
    static final double REFERENCE_AGE = 7;
    /** The mileage at which slopes and levels are stated, miles. */
    static final double REFERENCE_MILES = 60_000;

    private final Map<String, Double> effects;
    private final TrueMarket market;
    private final double errorScale;

    private Truths(Map<String, Double> effects, TrueMarket market, double errorScale) {
        this.effects = Collections.unmodifiableMap(new LinkedHashMap<>(effects));
        this.market = market;
        this.errorScale = errorScale;
    }

    static Truths draw(long seed, WorldSettings settings) {
        Map<String, Double> effects = new LinkedHashMap<>();
        Draws draws = new Draws(effects, Chance.of(seed, "effects"));
        for (String base : List.of("level_private_asking", "title_clean", "runs_drives", "keys_yes", "keys_unknown",
                "airbags_in_place", "airbags_unknown")) {
            effects.put(base, 0.0);
        }
        // The middle values are those of common practice; the spreads make worlds differ as such markets do.
        draws.draw("age_slope_reference", -0.090, 0.015);
        draws.draw("age_curve", 0.003, 0.0008);
        draws.draw("mileage_slope_reference", -0.040, 0.010);
        draws.draw("mileage_curve", 0.0010, 0.0003);
        draws.draw("age_mileage_product", 0.0010, 0.0005);
        draws.draw("error_growth", 0.03, 0.01);
        draws.draw("level_trade_asking", 0.08, 0.03);
        draws.draw("level_private_sold", -0.06, 0.015);
        effects.put("level_trade_sold", effects.get("level_trade_asking") + draws.once(-0.025, 0.008));
        draws.draw("level_auction", -0.22, 0.05);
        draws.draw("includes_fees", 0.14, 0.03);
        draws.draw("includes_tax", 0.058, 0.005);
        draws.draw("title_rebuilt", -0.33, 0.06);
        draws.draw("title_salvage", -0.60, 0.10);
        draws.draw("title_parts_only", -1.10, 0.15);
        draws.draw("title_unknown", -0.06, 0.02);
        draws.draw("runs_engine_fires", -0.10, 0.03);
        draws.draw("runs_engine_dead", -0.42, 0.08);
        draws.draw("runs_no_engine", -0.55, 0.08);
        draws.draw("runs_not_tried", -0.18, 0.05);
        draws.draw("runs_unknown", -0.03, 0.015);
        draws.draw("damage_front", -0.30, 0.06);
        draws.draw("damage_rear", -0.22, 0.05);
        draws.draw("damage_left", -0.19, 0.04);
        draws.draw("damage_right", -0.19, 0.04);
        draws.draw("damage_roof", -0.34, 0.07);
        draws.draw("damage_underside", -0.28, 0.06);
        draws.draw("damage_flood", -0.55, 0.10);
        draws.draw("damage_fire", -0.75, 0.12);
        draws.draw("damage_unknown", -0.03, 0.015);
        draws.condition("rust", -0.05, -0.16);
        draws.condition("paint", -0.03, -0.08);
        draws.condition("interior", -0.03, -0.08);
        draws.condition("mechanical", -0.06, -0.19);
        draws.condition("records", -0.02, -0.05);
        draws.draw("keys_no", -0.06, 0.02);
        draws.draw("airbags_fired", -0.11, 0.03);
        draws.draw("airbags_gone", -0.11, 0.03);
        for (String region : Names.REGIONS) {
            draws.draw("region_" + region, 0, 0.02);
        }
        draws.draw("gear_" + Names.FOUR, 0, 0);
        // Half of the logarithm of the power, near enough.
        draws.draw("gear_" + Names.SIX, 0.275, 0.06);
        draws.draw("body_" + Line.ROADSTER.body(), 9.80, 0.10);
        draws.draw("body_" + Line.SALOON.body(), 9.72, 0.10);
        draws.draw("body_" + Line.OPEN_SIX.body(), 9.98, 0.10);
        draws.draw("body_" + Line.ESTATE.body(), 9.74, 0.10);
        draws.draw("body_" + Line.COUPE.body(), 9.71, 0.10);
        for (Line line : Line.values()) {
            for (String gear : new String[] {Names.FOUR, Names.SIX}) {
                String name = pairName(line.body(), gear);
                if (!effects.containsKey(name)) {
                    draws.draw(name, 0, settings.pairSpread());
                }
            }
        }
        for (Line line : Line.values()) {
            draws.draw("age_slope_departure_" + line.vehicle(), 0, 0.007);
            draws.draw("mileage_slope_departure_" + line.vehicle(), 0, 0.005);
            effects.put("trim_" + line.vehicle() + "_" + line.trims().get(0), 0.0);
            if (line.trims().size() > 1) {
                draws.draw("trim_" + line.vehicle() + "_" + line.trims().get(1), 0.07, 0.025);
            }
        }
        for (int year = 2011; year <= 2023; year++) {
            draws.draw("vintage_" + year, 0, 0.012);
        }
        return new Truths(effects, TrueMarket.draw(settings, Chance.of(seed, "market")), settings.errorScale());
    }

    Truths withMedianCar(double age, double miles) {
        Map<String, Double> more = new LinkedHashMap<>();
        double pastAge = age - REFERENCE_AGE;
        double pastMiles = (miles - REFERENCE_MILES) / 10_000;
        double product = effect("age_mileage_product");
        more.put("median_age", age);
        more.put("median_mileage", miles);
        more.put("age_slope", effect("age_slope_reference") + 2 * effect("age_curve") * pastAge + product * pastMiles);
        more.put("mileage_slope",
                effect("mileage_slope_reference") + 2 * effect("mileage_curve") * pastMiles + product * pastAge);
        more.putAll(effects);
        return new Truths(more, market, errorScale);
    }

    /**
     * An effect by its name, in log points: {@code age_slope} (a year, at the median car), {@code mileage_slope} (10,000
     * miles, at the median car), {@code level_trade_asking} (against private asking), {@code title_salvage} (against clean),
     * ...
     *
     * @throws IllegalArgumentException if the world has no such effect
     */
    public double effect(String name) {
        Double effect = effects.get(name);
        if (effect == null) {
            throw new IllegalArgumentException("no effect is named " + name + "; there are " + effects.keySet());
        }
        return effect;
    }

    /** All effects by name, the median car first. */
    public Map<String, Double> effects() {
        return effects;
    }

    /** The number of months of collecting. */
    public int months() {
        return market.months();
    }

    /** The calendar month of a number, 0 being the first. */
    public YearMonth month(int k) {
        return market.month(k);
    }

    /** The level of the market in the middle of a month, season included, log points; the trend is 0 in month 0. */
    public double market(int k) {
        return market.level(k);
    }

    /** The level of the market on a day, season included, log points. */
    public double market(LocalDate on) {
        return market.level(on);
    }

    /** The trend without the season, log points. */
    public double trend(int k) {
        return market.trend(k);
    }

    /** The season alone, log points. */
    public double season(int k) {
        return market.season(k);
    }

    /** The index of a month, season included, the base month being 100. */
    public double index(int k, int base) {
        return 100 * StrictMath.exp(market.level(k) - market.level(base));
    }

    /** The month in which the trend stands highest. */
    public int peakMonth() {
        return market.peak();
    }

    /** The mean change of the trend over the last so many months, log points a month. */
    public double drift(int window) {
        return market.drift(window);
    }

    /** The scale of the Student-t error (5 degrees of freedom) of cars of an age, log points. */
    public double errorScale(double age) {
        return errorScale * StrictMath.exp(effect("error_growth") * (age - REFERENCE_AGE));
    }

    /**
     * The level of a pair of body and running gear at the reference car, log of money; pairs that no line has are there too.
     */
    public double pairLevel(String body, String gear) {
        return effect("body_" + body) + effect("gear_" + gear) + effect(pairName(body, gear));
    }

    /**
     * The logarithm of the median price of such cars, fees and tax not included.
     *
     * @param facts with mileage and model year; body and gear default to the line's own; where {@code gearMileage} is stated
     *        the mileage effect is that of the two in equal shares
     * @param level the level of trade
     * @param on the day
     */
    public double logTypicalValue(CarFacts facts, LevelOfTrade level, LocalDate on) {
        Line line = Line.named(facts.vehicle());
        double age = facts.ageOn(on).orElseThrow() - REFERENCE_AGE;
        double chassis = pastMiles(facts.mileage().orElseThrow());
        double gear = facts.gearMileage().map(Truths::pastMiles).orElse(chassis);
        return pairLevel(facts.body().orElse(line.body()), facts.runningGear().orElse(line.gear()))
                + facts.trim().map(trim -> effect("trim_" + line.vehicle() + "_" + trim)).orElse(0.0)
                + (effect("age_slope_reference") + effect("age_slope_departure_" + line.vehicle())) * age
                + effect("age_curve") * age * age
                + (mileagePart(line, chassis, age) + mileagePart(line, gear, age)) / 2
                + effect("vintage_" + facts.modelYear().orElseThrow())
                + effect("level_" + key(level.words()))
                + effect("title_" + key(facts.title().words()))
                + effect("runs_" + key(facts.runs().words()))
                + facts.damage().map(this::damage).orElse(effect("damage_unknown"))
                + condition("rust", facts.rust()) + condition("paint", facts.paint()) + condition("interior", facts.interior())
                + condition("mechanical", facts.mechanical()) + condition("records", facts.records())
                + effect("keys_" + facts.keys().words())
                + effect("airbags_" + key(facts.airbags().words()))
                + facts.region().map(region -> effect("region_" + region)).orElse(0.0)
                + market.level(on);
    }

    /** The median price of such cars, fees and tax not included; see {@link #logTypicalValue}. */
    public double typicalValue(CarFacts facts, LevelOfTrade level, LocalDate on) {
        return StrictMath.exp(logTypicalValue(facts, level, on));
    }

    /** The price of this one car, its own error included. */
    public double trueValue(CarOfWorld car, LevelOfTrade level, LocalDate on) {
        return StrictMath.exp(logTypicalValue(car.facts(), level, on) + car.error());
    }

    private static double pastMiles(Mileage mileage) {
        return (mileage.miles() - REFERENCE_MILES) / 10_000;
    }

    private double mileagePart(Line line, double pastMiles, double pastAge) {
        return (effect("mileage_slope_reference") + effect("mileage_slope_departure_" + line.vehicle())
                + effect("mileage_curve") * pastMiles + effect("age_mileage_product") * pastAge) * pastMiles;
    }

    private double damage(Set<Damage> zones) {
        return zones.stream().sorted().mapToDouble(zone -> effect("damage_" + zone.words())).sum();
    }

    private double condition(String of, Condition state) {
        return effect(of + "_" + state.words());
    }

    private static String key(String words) {
        return words.replace(' ', '_');
    }

    private static String pairName(String body, String gear) {
        return "pair_" + body + " x " + gear;
    }

    private record Draws(Map<String, Double> effects, Chance chance) {

        double once(double middle, double spread) {
            return chance.near(middle, spread);
        }

        void draw(String name, double middle, double spread) {
            effects.put(name, once(middle, spread));
        }

        void condition(String of, double worn, double bad) {
            effects.put(of + "_sound", 0.0);
            draw(of + "_worn", worn, -worn / 3);
            draw(of + "_bad", bad, -bad / 4);
            draw(of + "_unknown", -0.01, 0.005);
        }
    }
}
