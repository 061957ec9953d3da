package swapworth.listing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.table.Cell;

/** The points of a pair of advertisements of one model line. */
final class PairScore {

    private static final double MOST_FOR_MILEAGE = 12;
    private static final double MOST_FOR_PRICE = 7;
    private static final double MOST_FOR_TRIM = 3;
    private static final double MOST_FOR_REGION = 4;
    private static final double MOST_FOR_SOURCE = 3;
    private static final double MOST_FOR_FURTHER = 2;
    private static final double MOST_FOR_ALL_FURTHER = 5;
    private static final double SAME_LONG_TEXT = 10;
    private static final double SAME_SHORT_TEXT = 2;
    private static final int LONG_TEXT = 25;
    private static final double MOST_FOR_GROWTH = 4;
    private static final double MILEAGE_FELL = -8;
    private static final double MILEAGE_JUMPED = -6;
    private static final double NEAR_PRICE = 2;
    private static final double SIMILAR_PRICE = 0.5;
    private static final double OTHER_PRICE = -1.5;
    private static final double FAR_PRICE = -5;
    private static final double OTHER_SELLER = -3;
    private static final double OTHER_REGION = -4;
    private static final double OTHER_TITLE = -6;
    private static final double OTHER_COLOUR = -5;
    private static final double OTHER_SOURCE = -1;
    private static final double OTHER_WORD = -1;
    private static final double OTHER_DAMAGE = -3;
    private static final double OTHER_MEASURE = -8;
    private static final double OVERLAP = -4;
    private static final double SOON_AFTER = 1.5;

    private static final double MILES_OF_ALL = 150_000;
    private static final double MONEY_OF_ALL = 20_000;
    private static final double MILES_A_DAY = 60;
    private static final double MILES_AT_LEAST = 50;
    private static final long SOON = 45;

    /** How often each value occurs among the advertisements of one line. */
    private static final class Line {
        int advertisements;
        final Map<String, int[]> counts = new HashMap<>();

        void count(String field, String value) {
            counts.computeIfAbsent(field + "\n" + value, key -> new int[1])[0]++;
        }

        int of(String field, String value) {
            int[] count = counts.get(field + "\n" + value);
            return count == null ? 0 : count[0];
        }
    }

    private record Cohort(String vehicle, int year) {
    }

    private final Map<String, Line> lines = new HashMap<>();
    private final Map<Cohort, int[]> cohorts = new HashMap<>();

    PairScore(List<Advertisement> advertisements) {
        for (Advertisement one : advertisements) {
            Line line = lines.computeIfAbsent(one.vehicle, vehicle -> new Line());
            line.advertisements++;
            cohorts.computeIfAbsent(new Cohort(one.vehicle, one.year), key -> new int[1])[0]++;
            if (!Double.isNaN(one.lastMiles)) {
                line.count("mileage", Double.toString(one.lastMiles));
            }
            line.count("price", Double.toString(one.lastPrice));
            if (!one.trim.isEmpty()) {
                line.count("trim", one.trim);
            }
            one.facts.region().ifPresent(region -> line.count("region", region));
            one.sightings.get(0).source().ifPresent(source -> line.count("source", source));
            for (Map.Entry<String, String> entry : one.facts.further().entrySet()) {
                line.count("+" + entry.getKey(), entry.getValue());
            }
        }
    }

    /** Whether two advertisements cannot show one car whatever else they agree in. */
    static boolean forbidden(Advertisement a, Advertisement b) {
        return a.year != 0 && b.year != 0 && a.year != b.year
                || !a.trim.isEmpty() && !b.trim.isEmpty() && !a.trim.equals(b.trim);
    }

    double points(Advertisement a, Advertisement b) {
        return sum(a, b, new ArrayList<>(0), false);
    }

    /** Why two advertisements are taken for one car. */
    String sentence(Advertisement a, Advertisement b) {
        List<String> parts = new ArrayList<>();
        double points = sum(a, b, parts, true);
        return a.origin() + " and " + b.origin() + ": " + Cell.format(points, 1) + " points (" + String.join(", ", parts) + ")";
    }

    private double sum(Advertisement one, Advertisement other, List<String> parts, boolean explain) {
        boolean swapped = one.dated && other.dated && other.firstDay < one.firstDay;
        Advertisement a = swapped ? other : one;
        Advertisement b = swapped ? one : other;
        Line line = lines.getOrDefault(a.vehicle, new Line());
        int cohort = Math.max(cohorts.getOrDefault(new Cohort(a.vehicle, a.year), new int[] {1})[0],
                cohorts.getOrDefault(new Cohort(b.vehicle, b.year), new int[] {1})[0]);
        double sum = add(-log2(cohort), "of " + cohort + " of the line and year", parts, explain);
        sum += mileage(a, b, line, parts, explain);
        sum += price(a, b, line, parts, explain);
        sum += time(a, b, parts, explain);
        if (!a.trim.isEmpty() && a.trim.equals(b.trim)) {
            sum += add(rarity(line, "trim", a.trim, MOST_FOR_TRIM), "same trim", parts, explain);
        }
        sum += word(a.facts.region(), b.facts.region(), line, "region", MOST_FOR_REGION, OTHER_REGION, parts, explain);
        sum += word(a.sightings.get(0).source(), b.sightings.get(0).source(), line, "source", MOST_FOR_SOURCE, OTHER_SOURCE, parts,
                explain);
        if (differ(a.facts.seller(), b.facts.seller(), Seller.UNKNOWN)) {
            sum += add(OTHER_SELLER, "another kind of seller", parts, explain);
        }
        if (differ(a.facts.title(), b.facts.title(), Title.UNKNOWN)) {
            sum += add(OTHER_TITLE, "another title", parts, explain);
        }
        if (a.facts.damage().isPresent() && b.facts.damage().isPresent() && !a.facts.damage().equals(b.facts.damage())) {
            sum += add(OTHER_DAMAGE, "other damage", parts, explain);
        }
        if (a.facts.cylinders().isPresent() && b.facts.cylinders().isPresent() && !a.facts.cylinders().equals(b.facts.cylinders())
                || a.facts.powerKw().isPresent() && b.facts.powerKw().isPresent() && !a.facts.powerKw().equals(b.facts.powerKw())) {
            sum += add(OTHER_MEASURE, "another engine", parts, explain);
        }
        sum += text(note(a), note(b), parts, explain) + text(a.facts.options(), b.facts.options(), parts, explain);
        return sum + further(a, b, line, parts, explain);
    }

    private static double mileage(Advertisement a, Advertisement b, Line line, List<String> parts, boolean explain) {
        if (Double.isNaN(a.lastMiles) || Double.isNaN(b.lastMiles)) {
            return 0;
        }
        double driven = b.firstMiles - a.lastMiles;
        if (driven == 0 || a.lastMiles == b.lastMiles) {
            int others = Math.max(0, line.of("mileage", Double.toString(a.lastMiles)) - 2);
            double chance = Math.max(grain(a.lastMiles) / MILES_OF_ALL, others / (double) line.advertisements);
            return add(Math.min(MOST_FOR_MILEAGE, -log2(Math.min(1, chance))),
                    "same mileage", parts, explain);
        }
        double likely = MILES_AT_LEAST + MILES_A_DAY * Math.max(0, b.firstDay - a.lastDay);
        if (driven < 0) {
            return add(MILEAGE_FELL, "mileage fell", parts, explain);
        }
        if (driven > likely) {
            return add(MILEAGE_JUMPED, "mileage rose beyond likely use", parts, explain);
        }
        return add(Math.min(MOST_FOR_GROWTH, Math.max(0, log2(0.3 * MILES_OF_ALL / 2 / likely))), "mileage rose a little", parts, explain);
    }

    private static double price(Advertisement a, Advertisement b, Line line, List<String> parts, boolean explain) {
        if (a.lastPrice == b.firstPrice || a.lastPrice == b.lastPrice) {
            int others = Math.max(0, line.of("price", Double.toString(a.lastPrice)) - 2);
            double chance = Math.max(grain(a.lastPrice) / MONEY_OF_ALL, others / (double) line.advertisements);
            return add(Math.min(MOST_FOR_PRICE, Math.max(0, -log2(chance))), "same price", parts, explain);
        }
        double gap = Math.abs(Math.log(a.lastPrice / b.firstPrice));
        double points = gap < 0.05 ? NEAR_PRICE : gap < 0.15 ? SIMILAR_PRICE : gap < 0.5 ? OTHER_PRICE : FAR_PRICE;
        return add(points, points > 0 ? "price near" : "another price", parts, explain);
    }

    private static double time(Advertisement a, Advertisement b, List<String> parts, boolean explain) {
        if (!a.dated || !b.dated) {
            return 0;
        }
        long gap = b.firstDay - a.lastDay;
        if (gap < 0 || gap == 0 && a.sightings.get(0).id().isPresent() && b.sightings.get(0).id().isPresent()) {
            return add(OVERLAP, "both on offer at one time", parts, explain);
        }
        return gap > 0 && gap <= SOON ? add(SOON_AFTER, "begins soon after the other", parts, explain) : 0;
    }

    private static double word(Optional<String> a, Optional<String> b, Line line, String field, double most, double conflict,
            List<String> parts, boolean explain) {
        if (a.isEmpty() || b.isEmpty()) {
            return 0;
        }
        return a.get().equals(b.get()) ? add(rarity(line, field, a.get(), most), "same " + field, parts, explain)
                : add(conflict, "another " + field, parts, explain);
    }

    private static Optional<String> note(Advertisement advertisement) {
        return advertisement.sightings.get(0).note();
    }

    private static double text(Optional<String> a, Optional<String> b, List<String> parts, boolean explain) {
        if (a.isEmpty() || b.isEmpty() || !a.get().equals(b.get())) {
            return 0;
        }
        return add(a.get().length() >= LONG_TEXT ? SAME_LONG_TEXT : SAME_SHORT_TEXT, "same text", parts, explain);
    }

    private static double further(Advertisement a, Advertisement b, Line line, List<String> parts, boolean explain) {
        double earned = 0;
        double cost = 0;
        for (Map.Entry<String, String> entry : a.facts.further().entrySet()) {
            String other = b.facts.further().getOrDefault(entry.getKey(), "");
            if (other.isEmpty()) {
                continue;
            }
            if (other.equalsIgnoreCase(entry.getValue())) {
                earned += rarity(line, "+" + entry.getKey(), entry.getValue(), MOST_FOR_FURTHER);
            } else if (entry.getKey().contains("colour") || entry.getKey().contains("color")) {
                cost += OTHER_COLOUR;
            } else if (!Character.isDigit(other.charAt(0))) {
                cost += OTHER_WORD;
            }
        }
        double points = Math.min(MOST_FOR_ALL_FURTHER, earned) + cost;
        return points == 0 ? 0 : add(points, "further columns", parts, explain);
    }

    private static <E> boolean differ(E a, E b, E unknown) {
        return a != b && a != unknown && b != unknown;
    }

    private static double rarity(Line line, String field, String value, double most) {
        int count = line.of(field, value);
        return count == 0 ? 0 : Math.min(most, log2((double) line.advertisements / count));
    }

    /** How coarsely a number was typed: 1000 for 85,000, 1 for 85,412; for a distance in kilometres by its kilometres. */
    private static double grain(double number) {
        double best = 0.5;
        for (double value : new double[] {number, DistanceUnit.KM.fromMiles(number)}) {
            double whole = Math.rint(value);
            double step = 1;
            if (whole == 0 || Math.abs(value - whole) > 1e-6) {
                continue;
            }
            while (step < 1e6 && Math.rint(whole / (step * 10)) * step * 10 == whole) {
                step *= 10;
            }
            boolean half = Math.rint(whole / (step * 5)) * step * 5 == whole;
            best = Math.max(best, half ? step * 5 : step);
        }
        return best;
    }

    private static double add(double points, String why, List<String> parts, boolean explain) {
        if (explain && points != 0) {
            parts.add(why + " " + (points > 0 ? "+" : "") + Cell.format(points, 1));
        }
        return points;
    }

    private static double log2(double value) {
        return Math.log(value) / Math.log(2);
    }

    /** Fact, agreement and points of every rule, for people. */
    static List<String[]> rules() {
        List<String[]> rules = new ArrayList<>();
        rule(rules, "mileage", "equal", "log2 of 1 / chance, at most " + shown(MOST_FOR_MILEAGE)
                + "; the chance is the share of other rows of the line with this mileage, at least its roundness / 150,000");
        rule(rules, "mileage", "grew by at most 50 miles and 60 a day", "at most " + shown(MOST_FOR_GROWTH) + ", less the longer the time");
        rule(rules, "mileage", "grew by more", shown(MILEAGE_JUMPED));
        rule(rules, "mileage", "fell", shown(MILEAGE_FELL));
        rule(rules, "price", "equal", "log2 of 1 / chance, at most " + shown(MOST_FOR_PRICE)
                + "; the chance is the share of other rows of the line with this price, at least its roundness / 20,000");
        rule(rules, "price", "within 5 %", shown(NEAR_PRICE));
        rule(rules, "price", "within 15 %", shown(SIMILAR_PRICE));
        rule(rules, "price", "within a factor 1.65", shown(OTHER_PRICE));
        rule(rules, "price", "farther", shown(FAR_PRICE));
        rule(rules, "time", "one begins within 45 days after the other ended", shown(SOON_AFTER));
        rule(rules, "time", "both on offer at one time", shown(OVERLAP));
        rule(rules, "trim", "equal", "log2 of 1 / share of the line, at most " + shown(MOST_FOR_TRIM));
        rule(rules, "region", "equal", "log2 of 1 / share of the line, at most " + shown(MOST_FOR_REGION));
        rule(rules, "region", "different", shown(OTHER_REGION));
        rule(rules, "source", "equal", "log2 of 1 / share of the line, at most " + shown(MOST_FOR_SOURCE));
        rule(rules, "source", "different", shown(OTHER_SOURCE));
        rule(rules, "seller", "different kinds", shown(OTHER_SELLER));
        rule(rules, "title", "different", shown(OTHER_TITLE));
        rule(rules, "damage", "different", shown(OTHER_DAMAGE));
        rule(rules, "cylinders, power", "different", shown(OTHER_MEASURE));
        rule(rules, "note, options", "equal", shown(SAME_LONG_TEXT) + "; " + shown(SAME_SHORT_TEXT) + " below " + LONG_TEXT + " characters");
        rule(rules, "each further column", "equal", "log2 of 1 / share of the line, at most " + shown(MOST_FOR_FURTHER) + " each and "
                + shown(MOST_FOR_ALL_FURTHER) + " in all");
        rule(rules, "a colour", "different", shown(OTHER_COLOUR));
        rule(rules, "each further column of words", "different", shown(OTHER_WORD));
        return rules;
    }

    private static void rule(List<String[]> rules, String fact, String agreement, String points) {
        rules.add(new String[] {fact, agreement, points});
    }

    private static String shown(double points) {
        return (points > 0 ? "+" : "") + Cell.format(points, points == Math.rint(points) ? 0 : 1);
    }
}
