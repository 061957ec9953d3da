package swapworth.listing;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import swapworth.reading.DistanceUnit;

/** How rare agreements are among the advertisements of one line: by how often each value of one field occurs, how many points it earns. */
final class Rarities {
    static final double MOST_FOR_MILEAGE = 14;
    static final double MOST_FOR_PRICE = 7;
    static final double MOST_FOR_TRIM = 3;
    static final double MOST_FOR_REGION = 4;
    static final double MOST_FOR_SOURCE = 5;
    static final double MOST_FOR_FURTHER = 2;
    static final double MILES_OF_ALL = 150_000;
    /** Prices spread over so many times the middle price of their line, in whatever currency. */
    static final double PRICES_OF_ALL = 2;

    private final Advertisements of;
    private final Orders orders;
    /** Over how much money prices spread. */
    private final double money;
    /** The points that an agreement in each trim earns, by its number; in each region and shared source likewise. */
    final double[] trims;
    final double[] regions;
    private final double[] sources;
    private final Counted<String> ownSources = new Counted<>();
    private final Counted<String> further = new Counted<>();
    /** What was found before of mileages that many share. */
    private final Map<Long, Integer> othersAt = new HashMap<>();

    Rarities(Advertisements of, Orders orders) {
        this.of = of;
        this.orders = orders;
        int n = of.count();
        money = PRICES_OF_ALL * orders.middlePrice();
        trims = points(of.trim, of.columns.trim.count(), MOST_FOR_TRIM);
        regions = points(of.region, of.columns.region.count(), MOST_FOR_REGION);
        sources = points(of.source, of.columns.source.count(), MOST_FOR_SOURCE);
        for (int i = 0; i < n; i++) {
            if (of.source[i] < 0) {
                ownSources.add(of.columns.source.get(of.firstRow(i)).orElse(""));
            }
            if (of.columns.hasFurther()) {
                for (Map.Entry<String, String> entry : of.further(i).entrySet()) {
                    further.add(entry.getKey() + "\n" + entry.getValue());
                }
            }
        }
    }

    private double[] points(int[] codes, int count, double most) {
        int[] counts = new int[count];
        for (int code : codes) {
            counts[Math.max(0, code)] += code < 0 ? 0 : 1;
        }
        double[] points = new double[count];
        for (int code = 0; code < count; code++) {
            points[code] = counts[code] == 0 ? 0 : rarity(share(counts[code]), most);
        }
        return points;
    }

    /** The most that trim, region and source earn any pair of one region. */
    double mostInOneRegion() {
        return most(trims) + most(regions) + mostForSource();
    }

    /** The most that they earn any pair of two regions. */
    double mostAcrossRegions() {
        return most(trims) + PairScore.OTHER_REGION + mostForSource();
    }

    private double mostForSource() {
        return ownSources.isEmpty() ? most(sources) : MOST_FOR_SOURCE;
    }

    private static double most(double[] points) {
        double most = 0;
        for (double its : points) {
            most = Math.max(most, its);
        }
        return most;
    }

    double ofSource(int i) {
        return of.source[i] >= 0 ? sources[of.source[i]]
                : rarity(share(ownSources.of(of.columns.source.get(of.firstRow(i)).orElse(""))), MOST_FOR_SOURCE);
    }

    double chanceOfMileage(double itsMiles) {
        return Math.max(grain(itsMiles) / Math.min(MILES_OF_ALL, 10 * itsMiles + 10),
                (double) others(Math.round(itsMiles)) / of.count());
    }

    /**
     * How many model years and trims share a mileage with those of the first row that has it. The chance of a mileage is that of
     * another car, so the rows of one year and trim at one mileage count once.
     */
    private int others(long whole) {
        int from = orders.placeOfMiles(whole);
        int to = orders.placeOfMiles(whole + 1);
        if (to - from < 2) {
            return from == to ? -1 : 0;
        }
        Integer known = othersAt.get(whole);
        if (known == null) {
            Set<Long> kinds = new HashSet<>();
            for (int k = from; k < to; k++) {
                int i = orders.byMiles[k];
                kinds.add(kind(of.year(i), of.trim[i]));
            }
            // A year of registration may be that of a car whose model year is told elsewhere.
            kinds.removeIf(kind -> kind < 0 && isAmong(kinds, kind));
            known = kinds.size() - 1;
            othersAt.put(whole, known);
        }
        return known;
    }

    private static long kind(int year, int trim) {
        return (long) year << 32 | trim;
    }

    private static boolean isAmong(Set<Long> kinds, long registered) {
        int year = (int) -(registered >> 32);
        int trim = (int) registered;
        return kinds.contains(kind(year, trim)) || kinds.contains(kind(year - 1, trim)) || kinds.contains(kind(year + 1, trim));
    }

    double chanceOfPrice(double price) {
        return Math.max(grain(price) / money, (orders.countOfPrice(price) - 2.0) / of.count());
    }

    double share(int count) {
        return (double) count / of.count();
    }

    /** How many points an agreement in each value of one advertisement earns. */
    static final class Profile {
        /** As many points as any agreement earns. */
        static final Profile RAREST = new Profile();

        final double cohort;
        final double mileage;
        final double price;
        final String[] furtherNames;
        final String[] further;
        final double[] furtherPoints;

        private Profile() {
            cohort = 0;
            mileage = MOST_FOR_MILEAGE;
            price = MOST_FOR_PRICE;
            furtherNames = new String[0];
            further = new String[0];
            furtherPoints = new double[0];
        }

        Profile(int one, Rarities line, double cohort) {
            Advertisements of = line.of;
            this.cohort = cohort;
            mileage = Double.isNaN(of.lastMiles[one]) ? 0 : rarity(line.chanceOfMileage(of.lastMiles[one]), MOST_FOR_MILEAGE);
            price = rarity(line.chanceOfPrice(of.lastPrice[one]), MOST_FOR_PRICE);
            Map<String, String> its = of.further(one);
            furtherNames = its.keySet().toArray(new String[0]);
            Arrays.sort(furtherNames);
            further = new String[furtherNames.length];
            furtherPoints = new double[furtherNames.length];
            for (int k = 0; k < further.length; k++) {
                further[k] = its.getOrDefault(furtherNames[k], "");
                furtherPoints[k] = rarity(line.share(line.further.of(furtherNames[k] + "\n" + further[k])), MOST_FOR_FURTHER);
            }
        }
    }

    /** The points of an agreement that two cars of one line reach by this chance. */
    static double rarity(double chance, double most) {
        return Math.min(most, Math.max(0, -log2(chance)));
    }

    /** How coarsely a number was typed: 1000 for 85,000, 1 for 85,412; for a distance in kilometres by its kilometres. */
    static double grain(double number) {
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

    static double log2(double value) {
        return Math.log(value) / Math.log(2);
    }
}
