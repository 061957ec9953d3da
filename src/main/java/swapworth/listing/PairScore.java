package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import swapworth.table.Cell;

/** The points of a pair of advertisements of one model line. */
final class PairScore {

    private static final double MOST_FOR_MILEAGE = 14;
    private static final double MOST_FOR_PRICE = 7;
    private static final double MOST_FOR_TRIM = 3;
    private static final double MOST_FOR_REGION = 4;
    private static final double MOST_FOR_SOURCE = 5;
    private static final double MOST_FOR_FURTHER = 2;
    private static final double MOST_FOR_ALL_FURTHER = 5;
    private static final double SAME_LONG_TEXT = 10;
    private static final double SAME_SHORT_TEXT = 2;
    private static final int LONG_TEXT = 25;
    private static final double MOST_FOR_GROWTH = 9;
    private static final double NO_MILEAGE = -2;
    private static final double MILEAGE_FELL = -8;
    private static final double MILEAGE_JUMPED = -6;
    private static final double ALMOST_SAME_PRICE = 3.5;
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
    private static final double GROWTH_AMONG_SAME = 0.15;
    private static final double MOST_GROWTH_AMONG_SAME = 0.9;
    /** Half of the mileages that grow do so by little: about so many miles, and so many for each day. */
    private static final double LITTLE_MILES = 15;
    private static final double LITTLE_MILES_A_DAY = 5;
    /** How thickly mileages of a model year lie is counted within so many miles to either side. */
    private static final int NEIGHBOURHOOD = 3_000;
    private static final long SOON = 45;

    /** How often each value of one field occurs among the advertisements of one line. */
    private static final class Line {
        private int advertisements;
        /** The chance of a mileage is that of another car, so the rows of one year and trim at one mileage count once. */
        private final Map<Long, Kinds> mileages = new HashMap<>();
        private final Counted<Long> prices = new Counted<>();
        private final Counted<String> trims = new Counted<>();
        private final Counted<String> regions = new Counted<>();
        private final Counted<String> sources = new Counted<>();
        private final Counted<String> further = new Counted<>();

        void count(Advertisement one) {
            advertisements++;
            if (!Double.isNaN(one.lastMiles)) {
                Kinds kinds = mileages.get(Math.round(one.lastMiles));
                if (kinds == null) {
                    mileages.put(Math.round(one.lastMiles), new Kinds(one.year, one.trim));
                } else {
                    kinds.add(one.year, one.trim);
                }
            }
            prices.add(Math.round(one.lastPrice));
            trims.add(one.trim);
            regions.add(one.region);
            sources.add(one.source);
            for (Map.Entry<String, String> entry : one.facts.further().entrySet()) {
                further.add(entry.getKey() + "\n" + entry.getValue());
            }
        }

        double chanceOfMileage(double miles) {
            Kinds kinds = mileages.get(Math.round(miles));
            double others = kinds == null ? -1 : kinds.others.size();
            return Math.max(grain(miles) / Math.min(MILES_OF_ALL, 10 * miles + 10), others / advertisements);
        }

        double chanceOfPrice(double price) {
            return Math.max(grain(price) / MONEY_OF_ALL, (prices.of(Math.round(price)) - 2.0) / advertisements);
        }

        double share(int count) {
            return (double) count / advertisements;
        }
    }

    /** The model years and trims that share a mileage; most mileages have one. */
    private static final class Kinds {
        private final int year;
        private final String trim;
        private Set<String> others = Set.of();

        Kinds(int year, String trim) {
            this.year = year;
            this.trim = trim;
        }

        void add(int anotherYear, String anotherTrim) {
            if (anotherYear != year || !anotherTrim.equals(trim)) {
                others = others.isEmpty() ? new HashSet<>() : others;
                others.add(anotherYear + anotherTrim);
            }
        }
    }

    /** How many points an agreement in each value of one advertisement earns. */
    private static final class Profile {
        /** As many points as any agreement earns. */
        private static final Profile RAREST = new Profile();

        private final double cohort;
        private final double mileage;
        private final double price;
        private final double trim;
        private final double region;
        private final double source;
        private final String[] furtherNames;
        private final String[] further;
        private final double[] furtherPoints;

        private Profile() {
            cohort = 0;
            mileage = MOST_FOR_MILEAGE;
            price = MOST_FOR_PRICE;
            trim = MOST_FOR_TRIM;
            region = MOST_FOR_REGION;
            source = MOST_FOR_SOURCE;
            furtherNames = new String[0];
            further = new String[0];
            furtherPoints = new double[0];
        }

        Profile(Advertisement one, Line line, double cohort) {
            this.cohort = cohort;
            mileage = Double.isNaN(one.lastMiles) ? 0 : rarity(line.chanceOfMileage(one.lastMiles), MOST_FOR_MILEAGE);
            price = rarity(line.chanceOfPrice(one.lastPrice), MOST_FOR_PRICE);
            trim = rarity(line.share(line.trims.of(one.trim)), MOST_FOR_TRIM);
            region = rarity(line.share(line.regions.of(one.region)), MOST_FOR_REGION);
            source = rarity(line.share(line.sources.of(one.source)), MOST_FOR_SOURCE);
            furtherNames = one.facts.further().keySet().toArray(new String[0]);
            Arrays.sort(furtherNames);
            further = new String[furtherNames.length];
            furtherPoints = new double[furtherNames.length];
            for (int k = 0; k < further.length; k++) {
                further[k] = one.facts.further().getOrDefault(furtherNames[k], "");
                furtherPoints[k] = rarity(line.share(line.further.of(furtherNames[k] + "\n" + further[k])), MOST_FOR_FURTHER);
            }
        }
    }

    private final List<Advertisement> advertisements;
    private final Line line;
    /** The number of cars of each model year. */
    private final Counted<Integer> cohorts;
    /** Made when first needed: most advertisements are never compared. */
    private final @Nullable Profile[] profiles;
    private final double[] cohort;
    private final Map<Integer, double[]> milesOfYear;
    private final double growthAmongSame;

    private PairScore(PairScore as, Counted<Integer> cohorts, double growthAmongSame) {
        this.advertisements = as.advertisements;
        this.line = as.line;
        this.cohorts = cohorts;
        this.profiles = new Profile[as.profiles.length];
        this.cohort = new double[as.cohort.length];
        Arrays.fill(cohort, -1);
        this.milesOfYear = as.milesOfYear;
        this.growthAmongSame = growthAmongSame;
    }

    /** The points of pairs of one model line, whose advertisements these are. */
    PairScore(List<Advertisement> ofLine) {
        this.advertisements = ofLine;
        this.line = new Line();
        this.cohorts = new Counted<>();
        this.growthAmongSame = GROWTH_AMONG_SAME;
        long[] cars = new long[ofLine.size()];
        for (int i = 0; i < cars.length; i++) {
            Advertisement one = ofLine.get(i);
            line.count(one);
            // Rows of one year at one mileage count as one car, a row without a mileage as one of its own.
            cars[i] = (long) one.year << 32 | (Double.isNaN(one.lastMiles) ? 0x80000000L | i : Math.round(one.lastMiles) & 0x7FFFFFFFL);
        }
        Arrays.sort(cars);
        milesOfYear = new HashMap<>();
        int kept = 0;
        for (int i = 0; i < cars.length; i++) {
            if (i == 0 || cars[i] != cars[i - 1]) {
                cohorts.add((int) (cars[i] >> 32));
                cars[kept++] = cars[i];
            }
        }
        for (int from = 0; from < kept;) {
            int to = from;
            while (to < kept && cars[to] >> 32 == cars[from] >> 32) {
                to++;
            }
            milesOfYear.put((int) (cars[from] >> 32), known(cars, from, to));
            from = to;
        }
        profiles = new Profile[cars.length];
        cohort = new double[cars.length];
        Arrays.fill(cohort, -1);
    }

    /** The mileages of cars of one model year, ascending; those without one left out. */
    private static double[] known(long[] cars, int from, int to) {
        double[] miles = new double[to - from];
        int kept = 0;
        for (int i = from; i < to; i++) {
            if ((cars[i] & 0x80000000L) == 0) {
                miles[kept++] = cars[i] & 0x7FFFFFFFL;
            }
        }
        return Arrays.copyOf(miles, kept);
    }

    private Profile profile(int i) {
        Profile known = profiles[i];
        if (known == null) {
            Advertisement one = advertisements.get(i);
            known = new Profile(one, line, cohort(i));
            profiles[i] = known;
        }
        return known;
    }

    /**
     * Whether two advertisements cannot show one car whatever else they agree in: another model year, another trim, or a mileage
     * that falls or rises beyond likely use without an equal text that would show it to be mistyped.
     */
    static boolean forbidden(Advertisement a, Advertisement b) {
        if (a.year != b.year && a.year != 0 && b.year != 0) {
            return true;
        }
        if (!a.trim.equals(b.trim) && !a.trim.isEmpty() && !b.trim.isEmpty()) {
            return true;
        }
        if (a.lastMiles != b.lastMiles && a.lastMiles != b.firstMiles && !Double.isNaN(a.lastMiles)
                && !Double.isNaN(b.lastMiles)) {
            boolean swapped = a.dated && b.dated && b.firstDay < a.firstDay;
            double driven = swapped ? a.firstMiles - b.lastMiles : b.firstMiles - a.lastMiles;
            double likely = likelyMiles(swapped ? b : a, swapped ? a : b);
            if ((driven < 0 || driven > likely) && (a.note.isEmpty() || !a.note.equals(b.note))) {
                return true;
            }
        }
        return false;
    }

    private static double likelyMiles(Advertisement earlier, Advertisement later) {
        return MILES_AT_LEAST + MILES_A_DAY * Math.max(0, later.firstDay - earlier.lastDay);
    }

    double points(int first, int second) {
        return sum(first, second, List.of(), false);
    }

    /**
     * The points that a pair cannot exceed, without counting how rare its agreements are: each is taken for as rare as any. A pair that
     * does not come to the least that is asked for is not looked at more closely.
     */
    double most(int first, int second, double least) {
        Advertisement one = advertisements.get(first);
        Advertisement other = advertisements.get(second);
        boolean swapped = swapped(one, other);
        Advertisement a = swapped ? other : one;
        Advertisement b = swapped ? one : other;
        double most = offer(a, b, Profile.RAREST, List.of(), false) + texts(a, b, List.of(), false)
                - Math.max(cohort(first), cohort(second));
        double mileage = a.lastMiles == b.lastMiles || a.lastMiles == b.firstMiles ? MOST_FOR_MILEAGE : MOST_FOR_GROWTH;
        if (most + mileage + MOST_FOR_ALL_FURTHER < least) {
            return most + mileage + MOST_FOR_ALL_FURTHER;
        }
        most += facts(a, b, List.of(), false);
        most += a.facts.further().isEmpty() || b.facts.further().isEmpty() ? 0 : MOST_FOR_ALL_FURTHER;
        return most + mileage < least ? most + mileage : most + mileage(a, b, Profile.RAREST, List.of(), false);
    }

    private static boolean swapped(Advertisement one, Advertisement other) {
        return one.dated && other.dated && other.firstDay < one.firstDay;
    }

    /** The logarithm to base 2 of the number of cars of the line and model year of an advertisement. */
    private double cohort(int i) {
        if (cohort[i] < 0) {
            cohort[i] = log2(cohorts.of(advertisements.get(i).year));
        }
        return cohort[i];
    }

    /** Why two advertisements are taken for one car. */
    String sentence(int first, int second) {
        List<String> parts = new ArrayList<>();
        double points = sum(first, second, parts, true);
        return advertisements.get(first).origin() + " and " + advertisements.get(second).origin() + ": " + Cell.format(points, 1)
                + " points (" + String.join(", ", parts) + ")";
    }

    private double sum(int first, int second, List<String> parts, boolean explain) {
        Advertisement one = advertisements.get(first);
        Advertisement other = advertisements.get(second);
        boolean swapped = swapped(one, other);
        Advertisement a = swapped ? other : one;
        Advertisement b = swapped ? one : other;
        Profile p = profile(swapped ? second : first);
        Profile q = profile(swapped ? first : second);
        double cohort = Math.max(p.cohort, q.cohort);
        double sum = add(-cohort, explain ? "among " + Math.round(Math.pow(2, cohort)) + " of the line and year" : "", parts,
                explain);
        sum += mileage(a, b, p, parts, explain);
        sum += offer(a, b, p, parts, explain) + facts(a, b, parts, explain) + texts(a, b, parts, explain);
        return sum + further(p, q, parts, explain);
    }

    /** The points of price, time, trim, region and source, with the points that agreements of the first one earn. */
    private static double offer(Advertisement a, Advertisement b, Profile p, List<String> parts, boolean explain) {
        double sum = price(a, b, p, parts, explain);
        sum += time(a, b, parts, explain);
        if (!a.trim.isEmpty() && a.trim.equals(b.trim)) {
            sum += add(p.trim, "same trim", parts, explain);
        }
        sum += word(a.region, b.region, "region", p.region, OTHER_REGION, parts, explain);
        return sum + word(a.source, b.source, "source", p.source, OTHER_SOURCE, parts, explain);
    }

    /** The points of facts in which one car cannot differ from itself, or seldom. */
    private static double facts(Advertisement a, Advertisement b, List<String> parts, boolean explain) {
        double sum = 0;
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
                || a.facts.powerKw().isPresent() && b.facts.powerKw().isPresent()
                        && !a.facts.powerKw().equals(b.facts.powerKw())) {
            sum += add(OTHER_MEASURE, "another engine", parts, explain);
        }
        return sum;
    }

    private static double texts(Advertisement a, Advertisement b, List<String> parts, boolean explain) {
        return text(a.note, b.note, parts, explain) + text(a.options, b.options, parts, explain);
    }

    private double mileage(Advertisement a, Advertisement b, Profile p, List<String> parts, boolean explain) {
        if (Double.isNaN(a.lastMiles) || Double.isNaN(b.lastMiles)) {
            return add(NO_MILEAGE, "no mileage to compare", parts, explain);
        }
        double driven = b.firstMiles - a.lastMiles;
        if (driven == 0 || a.lastMiles == b.lastMiles) {
            return add(p.mileage, "same mileage", parts, explain);
        }
        if (driven < 0) {
            return add(MILEAGE_FELL, "mileage fell", parts, explain);
        }
        double likely = likelyMiles(a, b);
        if (driven > likely) {
            return add(MILEAGE_JUMPED, "mileage rose beyond likely use", parts, explain);
        }
        return add(Math.min(MOST_FOR_GROWTH, Math.max(0, log2(growthAmongSame * chanceOfGrowth(a, b, driven, likely)
                / (p == Profile.RAREST ? 1 / MILES_OF_ALL : chanceOfMileage(b))))), "mileage rose a little", parts, explain);
    }

    /** The chance, for each mile, that one car was driven so far between two advertisements. */
    private static double chanceOfGrowth(Advertisement a, Advertisement b, double driven, double likely) {
        double little = LITTLE_MILES + LITTLE_MILES_A_DAY * Math.max(0, b.firstDay - a.lastDay);
        return 0.5 * Math.exp(-driven / little) / little + 0.5 / likely;
    }

    /** The chance, for each mile, that another car of the model year stands at the first mileage of an advertisement. */
    private double chanceOfMileage(Advertisement one) {
        double[] miles = milesOfYear.getOrDefault(one.year, new double[0]);
        int near = place(miles, one.firstMiles + NEIGHBOURHOOD) - place(miles, one.firstMiles - NEIGHBOURHOOD);
        return Math.max(1 / MILES_OF_ALL, (double) near / (2 * NEIGHBOURHOOD * miles.length));
    }

    /** How many of some ascending numbers lie below one. */
    private static int place(double[] ascending, double number) {
        int at = Arrays.binarySearch(ascending, number);
        return at < 0 ? -at - 1 : at;
    }

    /**
     * The same points where mileages were found to grow between advertisements of one car so often.
     *
     * @param grown pairs joined whose mileage grew
     * @param same pairs joined, on different days, whose mileage is equal
     * @param carOf for each advertisement a number that those of one car, as far as it is known, share
     */
    PairScore learning(int grown, int same, int[] carOf) {
        double among = (grown + 10 * GROWTH_AMONG_SAME) / (grown + same + 10);
        // Cars whose mileage grows are counted once for each mileage, until it is known that they are one.
        Counted<Integer> cars = new Counted<>();
        Set<Integer> known = new HashSet<>();
        for (int i = 0; i < carOf.length; i++) {
            if (known.add(carOf[i])) {
                cars.add(advertisements.get(i).year);
            }
        }
        return new PairScore(this, cars, Math.max(GROWTH_AMONG_SAME, Math.min(MOST_GROWTH_AMONG_SAME, among)));
    }

    /** Whether a pair is one of two days, and whether its mileage grew between them: -1 if not of two days, 0 if equal, 1 if it grew. */
    int growth(int first, int second) {
        Advertisement a = advertisements.get(first);
        Advertisement b = advertisements.get(second);
        if (!a.dated || !b.dated || a.firstDay == b.firstDay || Double.isNaN(a.lastMiles) || Double.isNaN(b.lastMiles)) {
            return -1;
        }
        return a.lastMiles == b.lastMiles || a.lastMiles == b.firstMiles || a.firstMiles == b.lastMiles ? 0 : 1;
    }

    private static double price(Advertisement a, Advertisement b, Profile p, List<String> parts, boolean explain) {
        if (a.lastPrice == b.firstPrice || a.lastPrice == b.lastPrice) {
            return add(p.price, "same price", parts, explain);
        }
        double ratio = a.lastPrice > b.firstPrice ? a.lastPrice / b.firstPrice : b.firstPrice / a.lastPrice;
        double points = ratio < 1.005 ? ALMOST_SAME_PRICE : ratio < 1.05 ? NEAR_PRICE : ratio < 1.15 ? SIMILAR_PRICE : ratio < 1.65 ? OTHER_PRICE : FAR_PRICE;
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

    private static double word(String a, String b, String field, double agreement, double conflict,
            List<String> parts, boolean explain) {
        if (a.isEmpty() || b.isEmpty()) {
            return 0;
        }
        return a.equals(b) ? add(agreement, explain ? "same " + field : "", parts, explain)
                : add(conflict, explain ? "another " + field : "", parts, explain);
    }

    private static double text(String a, String b, List<String> parts, boolean explain) {
        if (a.isEmpty() || !a.equals(b)) {
            return 0;
        }
        return add(a.length() >= LONG_TEXT ? SAME_LONG_TEXT : SAME_SHORT_TEXT, "same text", parts, explain);
    }

    private static double further(Profile p, Profile q, List<String> parts, boolean explain) {
        double earned = 0;
        double cost = 0;
        int j = 0;
        for (int i = 0; i < p.furtherNames.length; i++) {
            String name = p.furtherNames[i];
            while (j < q.furtherNames.length && q.furtherNames[j].compareTo(name) < 0) {
                j++;
            }
            if (j == q.furtherNames.length || !q.furtherNames[j].equals(name)) {
                continue;
            }
            String other = q.further[j];
            if (other.equalsIgnoreCase(p.further[i])) {
                earned += p.furtherPoints[i];
            } else if (name.contains("colour") || name.contains("color")) {
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

    /** The points of an agreement that two cars of one line reach by this chance. */
    private static double rarity(double chance, double most) {
        return Math.min(most, Math.max(0, -log2(chance)));
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
                + "; the chance is the share of other years and trims of the line with this mileage, at least its roundness"
                + " / 150,000, or / 10 times itself");
        rule(rules, "mileage", "grew by at most 50 miles and 60 a day", "log2 of the chance of such a growth / the chance of another car"
                + " of the model year there, at most " + shown(MOST_FOR_GROWTH) + "; " + Cell.format(100 * GROWTH_AMONG_SAME, 0)
                + " % of one car's mileages are taken to grow, more where the line shows more");
        rule(rules, "mileage", "grew by more, and the notes are equal; forbidden if not", shown(MILEAGE_JUMPED));
        rule(rules, "mileage", "fell, and the notes are equal; forbidden if not", shown(MILEAGE_FELL));
        rule(rules, "mileage", "missing in one or both", shown(NO_MILEAGE));
        rule(rules, "price", "equal", "log2 of 1 / chance, at most " + shown(MOST_FOR_PRICE)
                + "; the chance is the share of other rows of the line with this price, at least its roundness / 20,000");
        rule(rules, "price", "within 0.5 %", shown(ALMOST_SAME_PRICE));
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
        rule(rules, "note, options", "equal", shown(SAME_LONG_TEXT) + "; " + shown(SAME_SHORT_TEXT) + " below " + LONG_TEXT
                + " characters");
        rule(rules, "each further column", "equal", "log2 of 1 / share of the line, at most " + shown(MOST_FOR_FURTHER)
                + " each and "
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
