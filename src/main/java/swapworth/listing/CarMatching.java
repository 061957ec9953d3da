package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import swapworth.reading.RowProblem;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Joins sightings into cars.
 *
 * <p>First, sightings with the same id are one advertisement, unless line, model year, mileage or a recorded end speak against it, or the
 * ids of the files contradict themselves ({@link #table} tells when). Then advertisements, and rows without an id, are joined if they
 * agree in more than chance explains. The score of two of them is a sum of points, each the logarithm to base 2 of how much more often
 * the two agree in this way if they show the same car than if they show two cars of one line (Fellegi and Sunter, A Theory for Record
 * Linkage, JASA 64, 1969). A rare agreement earns more than a common one: an equal mileage of 87,412 says much, one of 100,000 little.
 * From the sum is taken the logarithm to base 2 of the number of cars of the same line and model year (rows at one mileage counted
 * once), because with more of them a chance agreement becomes likelier. Two advertisements are joined if what is left reaches the
 * threshold of 7 points, or 2 points less where each is the other's best partner by far. {@link #table} prints all points.
 *
 * <p>Different model years or trims forbid a join, and without model years different years of first registration; a model year and a year
 * of registration do so where they lie more than one apart, for a car is mostly registered in its model year or the year before or
 * after; and, where no year is known, ages that lie further apart than whole years can. So does a mileage that fell or grew beyond likely
 * use, unless both have the same note, and no other car has it. Joins are made in the order of their scores, and none is made that would
 * bring two such years or ages, two trims, or mileages that fall from one day to a later one into one car. Each join is written into
 * {@link Car#joinedBy}.
 */
public final class CarMatching {

    /** The points that join a pair. */
    private static final double THRESHOLD = 7;
    /** A pair that is the best of both its advertisements, and by far, is joined at so many points less. */
    private static final double LESS_FOR_THE_ONLY_ONE = 2;
    /** By how many points a pair must be better than any other of its advertisements to be so joined. */
    private static final double BY_FAR = 1.5;
    /** Mileages are looked at again where more than one in so many pairs of a line, and not just a few, grew. */
    private static final int ENOUGH_GROWTH = 3;
    private static final int LEAST_GROWTH = 15;
    /** One pair in so many advertisements, or more: few pairs among very many are chance, and chance must not teach. */
    private static final int ENOUGH_PAIRS = 20;
    private static final int MOST_LOOKS = 3;

    private CarMatching() {
    }

    /**
     * The cars that the sightings show, and what looked odd on the way.
     *
     * @param cars in the order of their first rows
     * @param oddities ids that stand for more than one car; where most do, one question in their place
     */
    public record Result(List<Car> cars, List<RowProblem> oddities) {

        /** Copies the lists in. */
        public Result {
            cars = KeptList.copyOf(cars);
            oddities = List.copyOf(oddities);
        }
    }

    /** How many points join a pair, in words. */
    static String needed() {
        return Cell.format(THRESHOLD, 0) + " points, or " + Cell.format(THRESHOLD - LESS_FOR_THE_ONLY_ONE, 0)
                + " where neither has another partner within " + Cell.format(BY_FAR, 1) + " points of it";
    }

    /**
     * The rules and their points, as a table.
     *
     * @return one row a rule
     */
    public static Table table() {
        Table.Builder table = Table.titled("How advertisements are joined into cars: points of a pair")
                .note("Two advertisements of one model line are joined at " + needed() + ", after the logarithm to base 2 of the number of "
                        + "cars of the line and model year, rows at one mileage counted once, is taken off.")
                .note(SharedIds.rules())
                .note("Different model years or trims forbid a join; so do different years of first registration where no model years are"
                        + " known, a model year and a year of registration more than one apart, ages more than a year apart where no"
                        + " year is known, and a mileage that fell, or grew by more than " + PairScore.likelyGrowth()
                        + ", unless the notes are equal and those of no other car.")
                .columns(Column.words("fact"), Column.words("agreement"), Column.words("points"));
        for (String[] rule : PairScore.rules()) {
            table.row(Cell.words(rule[0]), Cell.words(rule[1]), Cell.words(rule[2]));
        }
        return table.build();
    }

    /**
     * Joins sightings into cars.
     *
     * @param listings the sightings, in the order of their files
     * @return the cars
     */
    public static Result match(List<Listing> listings) {
        StoredListings stored = StoredListings.of(listings);
        return match(stored, SameId.firsts(stored.columns().id, stored.columns().size()));
    }

    /** The same where it is known of each row of the columns which is the first with its id. */
    static Result match(StoredListings stored, int[] firsts) {
        List<RowProblem> oddities = new ArrayList<>();
        ListingColumns columns = stored.columns();
        Advertisements.Rows groups = SharedIds.advertisements(columns, stored.rows(), firsts, oddities);
        int[] root = new int[groups.count()];
        for (int i = 0; i < root.length; i++) {
            root[i] = i;
        }
        Map<Integer, List<String>> reasons = new HashMap<>();
        join(columns, groups, root, reasons);
        return new Result(cars(columns, groups, root, reasons), oddities);
    }

    /** The cars. The root of one is its first advertisement, so that they come in the order of their roots. */
    private static StoredCars cars(ListingColumns columns, Advertisements.Rows groups, int[] root, Map<Integer, List<String>> reasons) {
        int[] carOf = new int[root.length];
        int[] begin = new int[root.length + 1];
        BitSet joined = new BitSet();
        int count = 0;
        for (int i = 0; i < root.length; i++) {
            int first = find(root, i);
            carOf[i] = first == i ? count++ : carOf[first];
            if (first != i) {
                joined.set(carOf[i]);
            }
            begin[carOf[i] + 1] += groups.begin()[i + 1] - groups.begin()[i];
        }
        for (int car = 0; car < count; car++) {
            begin[car + 1] += begin[car];
        }
        begin = Arrays.copyOf(begin, count + 1);
        int[] next = begin.clone();
        int[] rows = new int[groups.rows().length];
        for (int i = 0; i < root.length; i++) {
            for (int k = groups.begin()[i]; k < groups.begin()[i + 1]; k++) {
                rows[next[carOf[i]]++] = groups.rows()[k];
            }
        }
        for (int car = joined.nextSetBit(0); car >= 0; car = joined.nextSetBit(car + 1)) {
            columns.sortByDay(rows, begin[car], begin[car + 1]);
        }
        Map<Integer, List<String>> joinedBy = new HashMap<>();
        reasons.forEach((one, why) -> joinedBy.put(carOf[one], why));
        return new StoredCars(columns, rows, begin, joinedBy);
    }

    /** Two advertisements of a line, by their places in it. */
    private record Link(int first, int second, double points) {
    }

    /** The advertisements of one line and the points of their pairs, as far as the line itself has taught them. */
    private record Line(Advertisements advertisements, PairScore score, List<Link> links) {
    }

    /** One line with the pairs that come near the threshold. */
    private static Line line(Advertisements ofLine) {
        Orders orders = new Orders(ofLine);
        PairScore first = new PairScore(ofLine, orders);
        Line line = new Line(ofLine, first, links(ofLine, orders, first));
        // Where a line shows that mileages grow from one look to the next, the pairs are looked at again.
        for (int look = 0; look < MOST_LOOKS; look++) {
            int[] counts = new int[2];
            int[] carOf = new int[ofLine.count()];
            Arrays.setAll(carOf, i -> i);
            for (Link link : line.links) {
                if (link.points >= THRESHOLD) {
                    int growth = first.growth(link.first, link.second);
                    counts[Math.max(0, growth)] += growth < 0 ? 0 : 1;
                    carOf[find(carOf, link.first)] = find(carOf, link.second);
                }
            }
            if (counts[1] * ENOUGH_GROWTH < counts[0] + LEAST_GROWTH || (counts[0] + counts[1]) * ENOUGH_PAIRS < ofLine.count()) {
                break;
            }
            for (int i = 0; i < carOf.length; i++) {
                carOf[i] = find(carOf, i);
            }
            PairScore taught = first.learning(counts[1], counts[0], carOf);
            line = new Line(ofLine, taught, links(ofLine, orders, taught));
        }
        return line;
    }

    private static List<Link> links(Advertisements ofLine, Orders orders, PairScore score) {
        List<Link> links = new ArrayList<>();
        double least = THRESHOLD - LESS_FOR_THE_ONLY_ONE;
        Candidates.of(ofLine, orders, score, least, (a, b) -> {
            if (score.most(a, b, least) < least) {
                return;
            }
            double points = score.points(a, b);
            if (points >= least) {
                links.add(new Link(a, b, points));
            }
        });
        links.sort(Comparator.comparingDouble(Link::points).reversed().thenComparingInt(Link::first).thenComparingInt(Link::second));
        return links;
    }

    /** The places of advertisements line by line, and where each line begins and the last one ends. */
    private record Lines(int[] members, int[] begin) {

        static Lines of(ListingColumns columns, Advertisements.Rows groups) {
            int[] line = new int[groups.count()];
            for (int i = 0; i < line.length; i++) {
                line[i] = columns.vehicle.code(groups.rows()[groups.begin()[i]]);
            }
            int[] begin = new int[columns.vehicle.count() + 1];
            int[] members = Orders.grouped(line, begin);
            return new Lines(members, begin);
        }
    }

    /** Advertisements that were taken for one car. */
    private static final class Joined {
        private int[] rows;
        private int modelYear;
        private int registered;
        private float born;
        private int trim;
        private final List<String> reasons = new ArrayList<>();

        Joined(Advertisements of, int one) {
            rows = of.rows(one);
            modelYear = of.modelYear[one];
            registered = of.yearRegistered[one];
            born = of.born[one];
            trim = of.trim[one];
        }

        boolean clashesWith(Joined other) {
            return Advertisements.yearsClash(modelYear, registered, other.modelYear, other.registered)
                    || Advertisements.agesClash(born, other.born)
                    || trim != 0 && other.trim != 0 && trim != other.trim;
        }

        void takeIn(Joined other, int[] both, String why) {
            rows = both;
            modelYear = modelYear == 0 ? other.modelYear : modelYear;
            registered = registered == 0 ? other.registered : registered;
            born = Float.isNaN(born) ? other.born : born;
            trim = trim == 0 ? other.trim : trim;
            reasons.addAll(other.reasons);
            reasons.add(why);
        }
    }

    /** The cars of one line as they are joined, pair by pair: places in the line, the first of a car being its root. */
    private static final class Joining {
        private final Line line;
        private final int[] root;
        private final Map<Integer, Joined> joined = new HashMap<>();

        Joining(Line line) {
            this.line = line;
            this.root = new int[line.advertisements.count()];
            Arrays.setAll(root, i -> i);
        }

        void join(Link link) {
            int a = find(root, link.first);
            int b = find(root, link.second);
            if (a == b) {
                return;
            }
            int kept = Math.min(a, b);
            int gone = Math.max(a, b);
            Joined first = joined.computeIfAbsent(kept, i -> new Joined(line.advertisements, i));
            Joined second = joined.computeIfAbsent(gone, i -> new Joined(line.advertisements, i));
            int[] of = (a < b ? first : second).rows;
            int[] and = (a < b ? second : first).rows;
            int[] both = Arrays.copyOf(of, of.length + and.length);
            System.arraycopy(and, 0, both, of.length, and.length);
            ListingColumns columns = line.advertisements.columns;
            columns.sortByDay(both, 0, both.length);
            if (first.clashesWith(second) || mileageFalls(columns, both)) {
                return;
            }
            root[gone] = kept;
            first.takeIn(second, both, line.score.sentence(link.first, link.second));
            joined.remove(gone);
        }
    }

    /** What was joined in one line: to which place each belongs, and why. */
    private record JoinedLine(int[] root, Map<Integer, List<String>> reasons) {
    }

    /** The lines one by one, several at a time; of each only what was joined is kept. */
    private static void join(ListingColumns columns, Advertisements.Rows groups, int[] root, Map<Integer, List<String>> reasons) {
        Lines lines = Lines.of(columns, groups);
        int[] begin = lines.begin;
        Advertisements all = new Advertisements(columns, groups, lines.members);
        List<JoinedLine> joined = IntStream.range(0, begin.length - 1).parallel()
                .mapToObj(k -> joined(line(all.part(begin[k], begin[k + 1])))).toList();
        for (int k = 0; k < joined.size(); k++) {
            JoinedLine line = joined.get(k);
            int from = begin[k];
            for (int i = from; i < begin[k + 1]; i++) {
                root[lines.members[i]] = lines.members[from + find(line.root, i - from)];
            }
            line.reasons.forEach((place, sentences) -> reasons.put(lines.members[from + place], sentences));
        }
    }

    private static JoinedLine joined(Line line) {
        Joining joining = new Joining(line);
        int sure = 0;
        while (sure < line.links.size() && line.links.get(sure).points >= THRESHOLD) {
            sure++;
        }
        line.links.subList(0, sure).forEach(joining::join);
        onlyOnes(line.links.subList(sure, line.links.size()), joining.root).forEach(joining::join);
        Map<Integer, List<String>> reasons = new HashMap<>();
        joining.joined.forEach((place, car) -> {
            if (!car.reasons.isEmpty()) {
                reasons.put(place, car.reasons);
            }
        });
        return new JoinedLine(joining.root, reasons);
    }

    /** Of pairs below the threshold those that are the best of both their cars, as joined so far, and by far. */
    private static List<Link> onlyOnes(List<Link> ordered, int[] root) {
        Map<Integer, Link> best = new HashMap<>();
        Map<Integer, Double> second = new HashMap<>();
        for (Link link : ordered) {
            int a = find(root, link.first);
            int b = find(root, link.second);
            for (int of : a == b ? new int[0] : new int[] {a, b}) {
                Link before = best.putIfAbsent(of, link);
                if (before != null && other(before, of, root) != other(link, of, root)) {
                    second.putIfAbsent(of, link.points);
                }
            }
        }
        return ordered.stream().filter(link -> {
            int a = find(root, link.first);
            int b = find(root, link.second);
            return a != b && best.get(a) == link && best.get(b) == link
                    && link.points - Math.max(second.getOrDefault(a, -99.0), second.getOrDefault(b, -99.0)) >= BY_FAR;
        }).toList();
    }

    private static int other(Link link, int of, int[] root) {
        int a = find(root, link.first);
        return a == of ? find(root, link.second) : a;
    }

    /** Two cars seen side by side betray themselves: put in order of the days, their mileages go up and down. */
    private static boolean mileageFalls(ListingColumns columns, int[] ordered) {
        double most = 0;
        for (int i = 0; i < ordered.length; i++) {
            double miles = columns.miles(ordered[i]);
            if (!columns.isDated(ordered[i]) || Double.isNaN(miles)) {
                continue;
            }
            double before = i > 0 && columns.isDated(ordered[i - 1]) && columns.day(ordered[i - 1]) == columns.day(ordered[i])
                    ? columns.miles(ordered[i - 1]) : Double.NaN;
            if (miles < most || !Double.isNaN(before) && before != miles) {
                return true;
            }
            most = miles;
        }
        return false;
    }

    private static int find(int[] root, int i) {
        int r = i;
        while (root[r] != r) {
            root[r] = root[root[r]];
            r = root[r];
        }
        return r;
    }
}
