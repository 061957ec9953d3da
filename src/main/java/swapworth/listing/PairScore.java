package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import swapworth.table.Cell;

/** The points of a pair of advertisements of one model line. */
final class PairScore {
    private static final double MOST_FOR_ALL_FURTHER = 5;
    private static final double MOST_FOR_GROWTH = 9;
    private static final double NO_MILEAGE = -2;
    private static final double MILEAGE_FELL = -8;
    static final double MILEAGE_JUMPED = -6;
    private static final double ALMOST_SAME_PRICE = 3.5;
    private static final double NEAR_PRICE = 2;
    private static final double SIMILAR_PRICE = 0.5;
    private static final double OTHER_PRICE = -1.5;
    private static final double FAR_PRICE = -5;
    private static final double EITHER_YEAR = -1.6;
    private static final double OTHER_SELLER = -3;
    static final double OTHER_REGION = -4;
    private static final double OTHER_TITLE = -6;
    private static final double OTHER_COLOUR = -5;
    private static final double OTHER_SOURCE = -1;
    private static final double OTHER_WORD = -1;
    private static final double OTHER_DAMAGE = -3;
    private static final double OTHER_MEASURE = -8;
    private static final double OVERLAP = -4;
    private static final double SOON_AFTER = 1.5;
    private static final double SOLD_TWICE = -4;

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
    /** Leaves room for the rounding of logarithms. */
    private static final double ROUNDING = 1.001;

    private final Advertisements of;
    private final Orders orders;
    private final Rarities line;
    /** Made when first needed: most advertisements are never compared. */
    private final Rarities.@Nullable Profile[] profiles;
    /** The logarithm to base 2 of the number of cars of each model year. */
    private final double[] cohorts;
    /** The mileages of the cars of each model year, ascending. */
    private final double[][] milesOfYear;
    private final double growthAmongSame;

    private PairScore(PairScore as, int[] cars, double growthAmongSame) {
        this.of = as.of;
        this.orders = as.orders;
        this.line = as.line;
        this.cohorts = logarithms(cars);
        this.profiles = new Rarities.Profile[as.profiles.length];
        this.milesOfYear = as.milesOfYear;
        this.growthAmongSame = growthAmongSame;
    }

    /** The points of pairs of one model line, whose advertisements these are. */
    PairScore(Advertisements ofLine, Orders orders) {
        this.of = ofLine;
        this.orders = orders;
        this.line = new Rarities(ofLine, orders);
        this.growthAmongSame = GROWTH_AMONG_SAME;
        // Rows of one year at one mileage count as one car, a row without a mileage as one of its own.
        int[] cars = new int[orders.years.length];
        milesOfYear = new double[cars.length][];
        int from = 0;
        for (int year = 0; year < cars.length; year++) {
            int to = from;
            while (to < orders.byYear.length && orders.yearOf[orders.byYear[to]] == year) {
                to++;
            }
            int known = to;
            while (known > from && Double.isNaN(ofLine.lastMiles[orders.byYear[known - 1]])) {
                known--;
            }
            milesOfYear[year] = distinctMiles(from, known);
            cars[year] = milesOfYear[year].length + to - known;
            from = to;
        }
        cohorts = logarithms(cars);
        profiles = new Rarities.Profile[ofLine.count()];
    }

    private static double[] logarithms(int[] numbers) {
        double[] logarithms = new double[numbers.length];
        Arrays.setAll(logarithms, i -> Rarities.log2(numbers[i]));
        return logarithms;
    }

    /** The distinct whole mileages of some advertisements of one model year. */
    private double[] distinctMiles(int from, int to) {
        double[] miles = new double[to - from];
        int kept = 0;
        for (int k = from; k < to; k++) {
            long its = orders.miles(orders.byYear[k]);
            if (kept == 0 || miles[kept - 1] != its) {
                miles[kept++] = its;
            }
        }
        return Arrays.copyOf(miles, kept);
    }

    private Rarities.Profile profile(int i) {
        Rarities.Profile known = profiles[i];
        if (known == null) {
            known = new Rarities.Profile(i, line, cohort(i));
            profiles[i] = known;
        }
        return known;
    }

    /**
     * Whether two advertisements cannot show one car whatever else they agree in: another year, age or trim, or a mileage that falls
     * or rises beyond likely use without an equal text, of no other car, that would show it to be mistyped.
     */
    boolean forbidden(int a, int b) {
        if (Advertisements.yearsClash(of.modelYear[a], of.yearRegistered[a], of.modelYear[b], of.yearRegistered[b])
                || Advertisements.agesClash(of.born[a], of.born[b])) {
            return true;
        }
        if (of.trim[a] != of.trim[b] && of.trim[a] != 0 && of.trim[b] != 0) {
            return true;
        }
        return isUnlikelyDriven(a, b) && !sameNote(a, b);
    }

    /** Whether the mileage fell, or rose beyond likely use, from one advertisement to the other. */
    private boolean isUnlikelyDriven(int a, int b) {
        double last = of.lastMiles[a];
        if (last == of.lastMiles[b] || last == of.firstMiles[b] || Double.isNaN(last) || Double.isNaN(of.lastMiles[b])) {
            return false;
        }
        boolean swapped = swapped(a, b);
        double driven = swapped ? of.firstMiles[a] - of.lastMiles[b] : of.firstMiles[b] - last;
        return driven < 0 || driven > (swapped ? likelyMiles(b, a) : likelyMiles(a, b));
    }

    /** Whether two have a note in common that no other car has. */
    private boolean sameNote(int a, int b) {
        return note(a, b) > 0 && (of.note[a] < 0 || of.notePoints.isOfOneCar(of.note[a]));
    }

    /** The points of equal texts. */
    double texts(int a, int b) {
        return note(a, b) + options(a, b);
    }

    /** The points of equal notes; 0 if they differ, or are empty. */
    private double note(int a, int b) {
        int number = of.note[a];
        return number != of.note[b] ? 0
                : number >= 0 ? of.notePoints.of(number) : TextPoints.ofOwn(of.columns.note, of.firstRow(a), of.firstRow(b));
    }

    /** The points of equal options; 0 if they differ, or are empty. */
    private double options(int a, int b) {
        int number = of.options[a];
        return number != of.options[b] ? 0
                : number >= 0 ? of.optionPoints.of(number)
                : TextPoints.ofOwn(of.columns.options, of.rowOfOptions(a), of.rowOfOptions(b));
    }

    private double likelyMiles(int earlier, int later) {
        return likelyMiles(of.firstDay[later] - of.lastDay[earlier]);
    }

    private static double likelyMiles(int days) {
        return MILES_AT_LEAST + MILES_A_DAY * Math.max(0, days);
    }

    /** Whether so many miles may be driven in so many days. */
    static boolean isLikely(double driven, int days) {
        return driven <= likelyMiles(days);
    }

    double points(int first, int second) {
        return sum(first, second, Reasons.UNASKED);
    }

    /**
     * The points that a pair cannot exceed, without counting how rare its agreements are: each is taken for as rare as any. A pair that
     * does not come to the least that is asked for is not looked at more closely.
     */
    double most(int first, int second, double least) {
        boolean swapped = swapped(first, second);
        int a = swapped ? second : first;
        int b = swapped ? first : second;
        double mileage = of.lastMiles[a] == of.lastMiles[b] || of.lastMiles[a] == of.firstMiles[b] ? Rarities.MOST_FOR_MILEAGE
                : isUnlikelyDriven(a, b) ? MILEAGE_JUMPED : MOST_FOR_GROWTH;
        double rest = offer(a, b, Rarities.Profile.RAREST, Reasons.UNASKED) - Math.max(cohort(first), cohort(second))
                + (of.columns.hasFurther() ? MOST_FOR_ALL_FURTHER : 0) + texts(a, b, Reasons.UNASKED);
        if (rest + mileage < least) {
            return rest + mileage;
        }
        rest += mileage(a, b, Rarities.Profile.RAREST, Reasons.UNASKED);
        return rest < least ? rest : rest + facts(a, b, Reasons.UNASKED);
    }

    /**
     * The points that mileage, price and texts of two advertisements of one model year and region, or of a region that is not known, must
     * earn together to come to so many: what else may speak for a pair is limited.
     *
     * @param year the place of the model year
     */
    double askedInOneRegion(int year, double least) {
        return asked(year, least, line.mostInOneRegion());
    }

    /** The same of two that are of different regions. */
    double askedAcrossRegions(int year, double least) {
        return asked(year, least, line.mostAcrossRegions());
    }

    private double asked(int year, double least, double mostForPlace) {
        return least + cohorts[year] - SOON_AFTER - mostForPlace - (of.columns.hasFurther() ? MOST_FOR_ALL_FURTHER : 0);
    }

    /** By how many miles, at most, a mileage may grow that earns so many points: the more were driven the less it earns. */
    double reach(double points) {
        // After d miles the chance of a growth is at most 0.5 / (e d) for those driven little and 0.5 / d for all others.
        return points <= 0 ? Double.POSITIVE_INFINITY : points > MOST_FOR_GROWTH ? 0
                : ROUNDING * growthAmongSame * (0.5 / Math.E + 0.5) * Rarities.MILES_OF_ALL / Math.pow(2, points);
    }

    /** Whether the second of two was seen first: by their days; where one has none by their mileages, not by their order in the file. */
    private boolean swapped(int one, int other) {
        return of.dated[one] && of.dated[other] ? of.firstDay[other] < of.firstDay[one] : of.lastMiles[other] < of.lastMiles[one];
    }

    /** The logarithm to base 2 of the number of cars of the line and model year of an advertisement. */
    private double cohort(int i) {
        return cohorts[orders.yearOf[i]];
    }

    /** Why two advertisements are taken for one car. */
    String sentence(int first, int second) {
        Reasons reasons = new Reasons(true);
        double points = sum(first, second, reasons);
        return of.origin(first) + " and " + of.origin(second) + ": " + Cell.format(points, 1)
                + " points (" + String.join(", ", reasons.said) + ")";
    }

    private double sum(int first, int second, Reasons reasons) {
        boolean swapped = swapped(first, second);
        int a = swapped ? second : first;
        int b = swapped ? first : second;
        Rarities.Profile p = profile(swapped ? second : first);
        Rarities.Profile q = profile(swapped ? first : second);
        double cohort = Math.max(p.cohort, q.cohort);
        double sum = reasons.add(-cohort, reasons.asked ? "among " + Math.round(Math.pow(2, cohort)) + " of the line and year" : "");
        sum += year(a, b, reasons);
        sum += mileage(a, b, p, reasons);
        sum += offer(a, b, p, reasons) + facts(a, b, reasons) + texts(a, b, reasons);
        return sum + further(p, q, reasons);
    }

    /** The points of price, time, trim, region and source, with the points that agreements of the first one earn. */
    private double offer(int a, int b, Rarities.Profile p, Reasons reasons) {
        double sum = price(a, b, p, reasons);
        sum += time(a, b, reasons);
        if (of.trim[a] != 0 && of.trim[a] == of.trim[b]) {
            sum += reasons.add(line.trims[of.trim[a]], "same trim");
        }
        if (of.region[a] != 0 && of.region[b] != 0) {
            sum += of.region[a] == of.region[b] ? reasons.add(line.regions[of.region[a]], "same region")
                    : reasons.add(OTHER_REGION, "another region");
        }
        if (of.source[a] != 0 && of.source[b] != 0) {
            boolean same = of.source[a] == of.source[b] && (of.source[a] > 0 || of.columns.source.same(of.firstRow(a), of.firstRow(b)));
            sum += same ? reasons.add(line.ofSource(a), "same source") : reasons.add(OTHER_SOURCE, "another source");
        }
        return sum;
    }

    /** The points of facts in which one car cannot differ from itself, or seldom. */
    private double facts(int a, int b, Reasons reasons) {
        double sum = 0;
        ListingColumns columns = of.columns;
        if (differ(of.latest(columns.seller, a), of.latest(columns.seller, b))) {
            sum += reasons.add(OTHER_SELLER, "another kind of seller");
        }
        if (differ(of.latest(columns.title, a), of.latest(columns.title, b))) {
            sum += reasons.add(OTHER_TITLE, "another title");
        }
        if (differ(of.latest(columns.damage, a), of.latest(columns.damage, b))) {
            sum += reasons.add(OTHER_DAMAGE, "other damage");
        }
        if (differ(of.latest(columns.cylinders, a), of.latest(columns.cylinders, b))
                || differ(of.latest(columns.powerKw, a), of.latest(columns.powerKw, b))) {
            sum += reasons.add(OTHER_MEASURE, "another engine");
        }
        return sum;
    }

    private double texts(int a, int b, Reasons reasons) {
        return reasons.add(note(a, b), "same text") + reasons.add(options(a, b), "same text");
    }

    /** Three model years may be that of a car whose year of registration is told, so that chance has three times as many cars. */
    private double year(int a, int b, Reasons reasons) {
        return differ(of.year(a), of.year(b)) && of.yearRegistered[a] != of.yearRegistered[b]
                ? reasons.add(EITHER_YEAR, "model year against year of registration") : 0;
    }

    private double mileage(int a, int b, Rarities.Profile p, Reasons reasons) {
        if (Double.isNaN(of.lastMiles[a]) || Double.isNaN(of.lastMiles[b])) {
            return reasons.add(NO_MILEAGE, "no mileage to compare");
        }
        double driven = of.firstMiles[b] - of.lastMiles[a];
        if (driven == 0 || of.lastMiles[a] == of.lastMiles[b]) {
            return reasons.add(p.mileage, "same mileage");
        }
        if (driven < 0) {
            return reasons.add(MILEAGE_FELL, "mileage fell");
        }
        double likely = likelyMiles(a, b);
        if (driven > likely) {
            return reasons.add(MILEAGE_JUMPED, "mileage rose beyond likely use");
        }
        return reasons.add(Math.min(MOST_FOR_GROWTH, Math.max(0, Rarities.log2(growthAmongSame * chanceOfGrowth(a, b, driven, likely)
                / (p == Rarities.Profile.RAREST ? 1 / Rarities.MILES_OF_ALL : chanceOfMileage(b))))),
                "mileage rose a little");
    }

    /** The chance, for each mile, that one car was driven so far between two advertisements. */
    private double chanceOfGrowth(int a, int b, double driven, double likely) {
        double little = LITTLE_MILES + LITTLE_MILES_A_DAY * Math.max(0, of.firstDay[b] - of.lastDay[a]);
        return 0.5 * Math.exp(-driven / little) / little + 0.5 / likely;
    }

    /** The chance, for each mile, that another car of the model year stands at the first mileage of an advertisement. */
    private double chanceOfMileage(int one) {
        double[] miles = milesOfYear[orders.yearOf[one]];
        int near = place(miles, of.firstMiles[one] + NEIGHBOURHOOD) - place(miles, of.firstMiles[one] - NEIGHBOURHOOD);
        return Math.max(1 / Rarities.MILES_OF_ALL, (double) near / (2 * NEIGHBOURHOOD * miles.length));
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
        int[] cars = new int[cohorts.length];
        boolean[] known = new boolean[carOf.length];
        for (int i = 0; i < carOf.length; i++) {
            cars[orders.yearOf[i]] += known[carOf[i]] ? 0 : 1;
            known[carOf[i]] = true;
        }
        return new PairScore(this, cars, Math.max(GROWTH_AMONG_SAME, Math.min(MOST_GROWTH_AMONG_SAME, among)));
    }

    /** Whether a pair is one of two days, and whether its mileage grew between them: -1 if not of two days, 0 if equal, 1 if it grew. */
    int growth(int first, int second) {
        int a = first;
        int b = second;
        if (!of.dated[a] || !of.dated[b] || of.firstDay[a] == of.firstDay[b] || Double.isNaN(of.lastMiles[a])
                || Double.isNaN(of.lastMiles[b])) {
            return -1;
        }
        return of.lastMiles[a] == of.lastMiles[b] || of.lastMiles[a] == of.firstMiles[b] || of.firstMiles[a] == of.lastMiles[b] ? 0 : 1;
    }

    private double price(int a, int b, Rarities.Profile p, Reasons reasons) {
        if (of.lastPrice[a] == of.firstPrice[b] || of.lastPrice[a] == of.lastPrice[b]) {
            return reasons.add(p.price, "same price");
        }
        double points = otherPrice(of.lastPrice[a], of.firstPrice[b]);
        return reasons.add(points, points > 0 ? "price near" : "another price");
    }

    /** The points of two prices that are not equal. */
    static double otherPrice(double one, double other) {
        double ratio = one > other ? one / other : other / one;
        return ratio < 1.005 ? ALMOST_SAME_PRICE : ratio < 1.05 ? NEAR_PRICE : ratio < 1.15 ? SIMILAR_PRICE
                : ratio < 1.65 ? OTHER_PRICE : FAR_PRICE;
    }

    private double time(int a, int b, Reasons reasons) {
        if (!of.dated[a] || !of.dated[b]) {
            return 0;
        }
        long gap = of.firstDay[b] - of.lastDay[a];
        if (gap < 0 || gap == 0 && (of.columns.id.has(of.firstRow(a)) && of.columns.id.has(of.firstRow(b)) || areTwoPrices(a, b))) {
            return reasons.add(OVERLAP, "both on offer at one time");
        }
        if (of.columns.areSoldAlike(of.lastRow(a), of.firstRow(b))) {
            return reasons.add(SOLD_TWICE, "sold twice");
        }
        return gap > 0 && gap <= SOON ? reasons.add(SOON_AFTER, "begins soon after the other") : 0;
    }

    /** Whether the later price is another one than the earlier, by more than rounding. */
    private boolean areTwoPrices(int a, int b) {
        return of.lastPrice[a] != of.firstPrice[b] && of.lastPrice[a] != of.lastPrice[b]
                && otherPrice(of.lastPrice[a], of.firstPrice[b]) < ALMOST_SAME_PRICE;
    }

    private static double further(Rarities.Profile p, Rarities.Profile q, Reasons reasons) {
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
        return points == 0 ? 0 : reasons.add(points, "further columns");
    }

    /** Whether two numbers stand for different things, both of them known. */
    private static boolean differ(long a, long b) {
        return a != b && a != 0 && b != 0;
    }

    /** What earns or costs a pair its points, in words, where somebody asks for it. */
    private static final class Reasons {
        /** Words cost time, and of millions of pairs nobody asks for them. */
        static final Reasons UNASKED = new Reasons(false);

        private final boolean asked;
        private final List<String> said = new ArrayList<>();

        Reasons(boolean asked) {
            this.asked = asked;
        }

        /** Keeps why there are such points, if they are not 0; the points. */
        double add(double points, String why) {
            if (asked && points != 0) {
                said.add(why + " " + (points > 0 ? "+" : "") + Cell.format(points, 1));
            }
            return points;
        }
    }

    /** Fact, agreement and points of every rule, for people. */
    static List<String[]> rules() {
        List<String[]> rules = new ArrayList<>();
        rule(rules, "mileage", "equal", "log2 of 1 / chance, at most " + shown(Rarities.MOST_FOR_MILEAGE)
                + "; the chance is the share of other years and trims of the line with this mileage, at least its roundness"
                + " / " + Cell.format(Rarities.MILES_OF_ALL, 0) + ", or / 10 times itself");
        rule(rules, "mileage", "grew by at most " + likelyGrowth(), "log2 of the chance of such a growth / the chance of another car"
                + " of the model year there, at most " + shown(MOST_FOR_GROWTH) + "; " + Cell.format(100 * GROWTH_AMONG_SAME, 0)
                + " % of one car's mileages are taken to grow, more where the line shows more");
        rule(rules, "mileage", "grew by more, and the notes are equal and those of no other car; forbidden if not", shown(MILEAGE_JUMPED));
        rule(rules, "mileage", "fell, and the notes are equal and those of no other car; forbidden if not", shown(MILEAGE_FELL));
        rule(rules, "mileage", "missing in one or both", shown(NO_MILEAGE));
        rule(rules, "year", "a model year, and a year of registration at most one apart; forbidden if farther", shown(EITHER_YEAR));
        rule(rules, "price", "equal", "log2 of 1 / chance, at most " + shown(Rarities.MOST_FOR_PRICE)
                + "; the chance is the share of other rows of the line with this price, at least its roundness / "
                + Cell.format(Rarities.PRICES_OF_ALL, 0) + " times the middle price of the line");
        rule(rules, "price", "within 0.5 %", shown(ALMOST_SAME_PRICE));
        rule(rules, "price", "within 5 %", shown(NEAR_PRICE));
        rule(rules, "price", "within 15 %", shown(SIMILAR_PRICE));
        rule(rules, "price", "within a factor 1.65", shown(OTHER_PRICE));
        rule(rules, "price", "farther", shown(FAR_PRICE));
        rule(rules, "time", "one begins within " + SOON + " days after the other ended", shown(SOON_AFTER));
        rule(rules, "time", "both on offer at one time; of one day where both have an id, or prices that lie more than 0.5 % apart",
                shown(OVERLAP));
        rule(rules, "time", "sold twice, by sellers of one kind", shown(SOLD_TWICE));
        rule(rules, "trim", "equal", "log2 of 1 / share of the line, at most " + shown(Rarities.MOST_FOR_TRIM));
        rule(rules, "region", "equal", "log2 of 1 / share of the line, at most " + shown(Rarities.MOST_FOR_REGION));
        rule(rules, "region", "different", shown(OTHER_REGION));
        rule(rules, "source", "equal", "log2 of 1 / share of the line, at most " + shown(Rarities.MOST_FOR_SOURCE));
        rule(rules, "source", "different", shown(OTHER_SOURCE));
        rule(rules, "seller", "different kinds", shown(OTHER_SELLER));
        rule(rules, "title", "different", shown(OTHER_TITLE));
        rule(rules, "damage", "different", shown(OTHER_DAMAGE));
        rule(rules, "cylinders, power", "different", shown(OTHER_MEASURE));
        rule(rules, "note, options", "equal", shown(TextPoints.SAME_LONG_TEXT) + "; " + shown(TextPoints.SAME_SHORT_TEXT) + " below "
                + TextPoints.LONG_TEXT + " characters; where other cars have the text too, at most log2 of 1 / chance: the chance is the"
                + " share of other lines and model years with it among all advertisements and twenty more");
        rule(rules, "each further column", "equal", "log2 of 1 / share of the line, at most " + shown(Rarities.MOST_FOR_FURTHER)
                + " each and "
                + shown(MOST_FOR_ALL_FURTHER) + " in all");
        rule(rules, "a colour", "different", shown(OTHER_COLOUR));
        rule(rules, "each further column of words", "different", shown(OTHER_WORD));
        return rules;
    }

    /** By how much a mileage may grow, in words. */
    static String likelyGrowth() {
        return Cell.format(MILES_AT_LEAST, 0) + " miles and " + Cell.format(MILES_A_DAY, 0) + " a day";
    }

    private static void rule(List<String[]> rules, String fact, String agreement, String points) {
        rules.add(new String[] {fact, agreement, points});
    }

    private static String shown(double points) {
        return (points > 0 ? "+" : "") + Cell.format(points, points == Math.rint(points) ? 0 : 1);
    }
}
