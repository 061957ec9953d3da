package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Joins sightings into cars.
 *
 * <p>First, sightings with the same id within a model line are one advertisement. Then advertisements, and rows without an id,
 * are joined if they agree in more than chance explains. The score of two of them is a sum of points, each the logarithm to base
 * 2 of how much more often the two agree in this way if they show the same car than if they show two cars of one line (Fellegi
 * and Sunter, A Theory for Record Linkage, JASA 64, 1969). A rare agreement earns more than a common one: an equal mileage of
 * 87,412 says much, one of 100,000 little. From the sum is taken the logarithm to base 2 of the number of advertisements of the
 * same line and model year, because with more of them a chance agreement becomes likelier. Two advertisements are joined if what
 * is left reaches the threshold. {@link #table()} prints all points.
 *
 * <p>Different model years or trims forbid a join, and so does a mileage that fell or grew beyond likely use, unless both have
 * the same note. Joins are made in the order of their scores, and none is made that would bring
 * two model years, two trims, or mileages that fall from one day to a later one into one car. Each join is written into {@link
 * Car#joinedBy}.
 */
public final class CarMatching {

    private static final double DEFAULT_THRESHOLD = 7;
    private static final CarMatching DEFAULTS = new CarMatching(DEFAULT_THRESHOLD);

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

    private final double threshold;

    private CarMatching(double threshold) {
        this.threshold = threshold;
    }

    /**
     * The rules with the threshold of {@code 7} points.
     *
     * @return the matching
     */
    public static CarMatching withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same rules with another threshold.
     *
     * @param points the points that a pair must reach; {@link Double#POSITIVE_INFINITY} joins by id alone
     * @return a copy
     * @throws IllegalArgumentException if the threshold is not a number
     */
    public CarMatching withThreshold(double points) {
        if (Double.isNaN(points)) {
            throw new IllegalArgumentException("the threshold must be a number");
        }
        return new CarMatching(points);
    }

    /**
     * The points that a pair must reach.
     *
     * @return the threshold
     */
    public double threshold() {
        return threshold;
    }

    /**
     * The cars that the sightings show, and what looked odd on the way.
     *
     * @param cars in the order of their first rows
     * @param oddities ids that stand for more than one model line
     */
    public record Result(List<Car> cars, List<RowProblem> oddities) {

        /** Copies the lists in. */
        public Result {
            cars = KeptList.copyOf(cars);
            oddities = List.copyOf(oddities);
        }
    }

    /**
     * The rules and their points, as a table.
     *
     * @return one row a rule
     */
    public Table table() {
        Table.Builder table = Table.titled("How advertisements are joined into cars: points of a pair")
                .note("Two advertisements of one model line are joined at " + Cell.format(threshold, 1)
                        + " points, after the logarithm to base 2 of the number of advertisements of the line and model year is"
                        + " taken off.")
                .note("Different model years or trims forbid a join; so does a mileage that fell, or grew by more than 50 miles"
                        + " and 60 a day, unless the notes are equal.")
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
    public Result match(List<Listing> listings) {
        List<RowProblem> oddities = new ArrayList<>();
        List<List<Listing>> groups = advertisements(listings, oddities);
        int[] root = new int[groups.size()];
        for (int i = 0; i < root.length; i++) {
            root[i] = i;
        }
        Map<Integer, List<String>> reasons = new HashMap<>();
        if (threshold < Double.POSITIVE_INFINITY) {
            join(groups, root, reasons);
        }
        // The root of a car is its first advertisement, so that cars come in the order of their roots.
        Map<Integer, List<Integer>> joined = new HashMap<>();
        int count = root.length;
        for (int i = 0; i < root.length; i++) {
            int first = find(root, i);
            if (first != i) {
                joined.computeIfAbsent(first, f -> new ArrayList<>(List.of(f))).add(i);
                count--;
            }
        }
        List<Car> cars = new ArrayList<>(count);
        for (int i = 0; i < root.length; i++) {
            if (root[i] == i) {
                cars.add(car(groups, joined.getOrDefault(i, List.of(i)), reasons.getOrDefault(i, List.of())));
            }
        }
        return new Result(cars, oddities);
    }

    /** The rows of each advertisement, in the order of their days. */
    private static List<List<Listing>> advertisements(List<Listing> listings, List<RowProblem> oddities) {
        List<List<Listing>> groups = new ArrayList<>(listings.size());
        SameId<List<Listing>> ids = new SameId<>(groups, group -> group.get(0).id(), listings.size());
        // Of the few ids that stand for several lines, the groups of all lines but the first.
        Map<String, int[]> furtherGroups = new HashMap<>();
        for (Listing listing : listings) {
            if (listing.id().isEmpty()) {
                groups.add(List.of(listing));
                continue;
            }
            int known = ids.firstOr(listing.id().get(), groups.size());
            if (known < 0) {
                groups.add(List.of(listing));
                continue;
            }
            String id = Spelling.key(listing.id().get());
            int[] further = furtherGroups.getOrDefault(id, new int[0]);
            int at = ofLine(listing.facts().vehicle(), known, further, groups);
            if (at >= 0) {
                List<Listing> grown = groups.get(at) instanceof ArrayList<Listing> several ? several : new ArrayList<>(groups.get(at));
                grown.add(listing);
                groups.set(at, grown);
                continue;
            }
            Listing first = groups.get(known).get(0);
            oddities.add(new RowProblem(listing.origin().file(), listing.origin().line(), "id", listing.id().get(),
                    RowProblem.Kind.ODD, "the id stands for a " + Spelling.shortened(first.facts().vehicle(), 40) + " in "
                            + first.origin() + "; taken for another car"));
            int[] more = Arrays.copyOf(further, further.length + 1);
            more[more.length - 1] = groups.size();
            furtherGroups.put(id, more);
            groups.add(List.of(listing));
        }
        for (List<Listing> group : groups) {
            if (group.size() > 1) {
                group.sort(Advertisement.BY_DAY);
            }
        }
        return groups;
    }

    private static int ofLine(String vehicle, int known, int[] further, List<List<Listing>> groups) {
        if (groups.get(known).get(0).facts().vehicle().equals(vehicle)) {
            return known;
        }
        for (int group : further) {
            if (groups.get(group).get(0).facts().vehicle().equals(vehicle)) {
                return group;
            }
        }
        return -1;
    }

    /** Two advertisements of a line, by their places in it. */
    private record Link(int first, int second, double points) {
    }

    /** The advertisements of one line and the points of their pairs, as far as the line itself has taught them. */
    private record Line(List<Advertisement> advertisements, PairScore score, List<Link> links) {
    }

    /** One line with the pairs that come near the threshold. */
    private Line line(List<List<Listing>> groups, int[] members) {
        List<Advertisement> ofLine = new ArrayList<>(members.length);
        for (int member : members) {
            ofLine.add(new Advertisement(groups.get(member)));
        }
        PairScore first = new PairScore(ofLine);
        Line line = new Line(ofLine, first, links(ofLine, first));
        // Where a line shows that mileages grow from one look to the next, the pairs are looked at again.
        for (int look = 0; look < MOST_LOOKS; look++) {
            int[] counts = new int[2];
            int[] carOf = new int[members.length];
            Arrays.setAll(carOf, i -> i);
            for (Link link : line.links) {
                if (link.points >= threshold) {
                    int growth = first.growth(link.first, link.second);
                    counts[Math.max(0, growth)] += growth < 0 ? 0 : 1;
                    carOf[find(carOf, link.first)] = find(carOf, link.second);
                }
            }
            if (counts[1] * ENOUGH_GROWTH < counts[0] + LEAST_GROWTH || (counts[0] + counts[1]) * ENOUGH_PAIRS < members.length) {
                break;
            }
            for (int i = 0; i < carOf.length; i++) {
                carOf[i] = find(carOf, i);
            }
            PairScore taught = first.learning(counts[1], counts[0], carOf);
            line = new Line(ofLine, taught, links(ofLine, taught));
        }
        return line;
    }

    private List<Link> links(List<Advertisement> ofLine, PairScore score) {
        List<Link> links = new ArrayList<>();
        double least = threshold - LESS_FOR_THE_ONLY_ONE;
        Candidates.of(ofLine, (a, b) -> {
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

    /** The places of the advertisements of each line. */
    private static List<int[]> lines(List<List<Listing>> groups) {
        Map<String, Integer> numbers = new HashMap<>();
        int[] lineOf = new int[groups.size()];
        int[] sizes = new int[16];
        for (int i = 0; i < lineOf.length; i++) {
            String vehicle = groups.get(i).get(0).facts().vehicle();
            Integer number = numbers.get(vehicle);
            if (number == null) {
                number = numbers.size();
                numbers.put(vehicle, number);
            }
            lineOf[i] = number;
            sizes = number < sizes.length ? sizes : Arrays.copyOf(sizes, 2 * number);
            sizes[number]++;
        }
        List<int[]> lines = new ArrayList<>(numbers.size());
        for (int line = 0; line < numbers.size(); line++) {
            lines.add(new int[sizes[line]]);
            sizes[line] = 0;
        }
        for (int i = 0; i < lineOf.length; i++) {
            lines.get(lineOf[i])[sizes[lineOf[i]]++] = i;
        }
        return lines;
    }

    /** Advertisements that were taken for one car. */
    private static final class Joined {
        private List<Listing> sightings;
        private int year;
        private String trim;
        private final List<String> reasons = new ArrayList<>();

        Joined(Advertisement one) {
            sightings = one.sightings;
            year = one.year;
            trim = one.trim;
        }

        boolean clashesWith(Joined other) {
            return year != 0 && other.year != 0 && year != other.year
                    || !trim.isEmpty() && !other.trim.isEmpty() && !trim.equals(other.trim);
        }

        void takeIn(Joined other, List<Listing> both, String why) {
            sightings = both;
            year = Math.max(year, other.year);
            trim = trim.isEmpty() ? other.trim : trim;
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
            this.root = new int[line.advertisements.size()];
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
            Joined first = joined.computeIfAbsent(kept, i -> new Joined(line.advertisements.get(i)));
            Joined second = joined.computeIfAbsent(gone, i -> new Joined(line.advertisements.get(i)));
            List<Listing> both = new ArrayList<>((a < b ? first : second).sightings);
            both.addAll((a < b ? second : first).sightings);
            both.sort(Advertisement.BY_DAY);
            if (first.clashesWith(second) || mileageFalls(both)) {
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
    private void join(List<List<Listing>> groups, int[] root, Map<Integer, List<String>> reasons) {
        List<int[]> lines = lines(groups);
        List<JoinedLine> joined = lines.parallelStream().map(members -> joined(line(groups, members))).toList();
        for (int k = 0; k < lines.size(); k++) {
            int[] members = lines.get(k);
            JoinedLine line = joined.get(k);
            for (int i = 0; i < members.length; i++) {
                root[members[i]] = members[find(line.root, i)];
            }
            line.reasons.forEach((place, sentences) -> reasons.put(members[place], sentences));
        }
    }

    private JoinedLine joined(Line line) {
        Joining joining = new Joining(line);
        int sure = 0;
        while (sure < line.links.size() && line.links.get(sure).points >= threshold) {
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
    private static boolean mileageFalls(List<Listing> ordered) {
        double most = 0;
        for (int i = 0; i < ordered.size(); i++) {
            Listing one = ordered.get(i);
            if (one.seenOn().isEmpty() || one.facts().mileage().isEmpty()) {
                continue;
            }
            double miles = one.facts().mileage().get().miles();
            boolean sameDay = i > 0 && ordered.get(i - 1).seenOn().equals(one.seenOn())
                    && ordered.get(i - 1).facts().mileage().isPresent();
            if (miles < most || sameDay && ordered.get(i - 1).facts().mileage().get().miles() != miles) {
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

    private static Car car(List<List<Listing>> groups, List<Integer> members, List<String> joinedBy) {
        List<Listing> sightings = groups.get(members.get(0));
        if (members.size() > 1) {
            sightings = new ArrayList<>(sightings);
            for (int member : members.subList(1, members.size())) {
                sightings.addAll(groups.get(member));
            }
            sightings.sort(Advertisement.BY_DAY);
        }
        CarFacts facts = sightings.get(0).facts();
        for (int i = 1; i < sightings.size(); i++) {
            facts = facts.updatedBy(sightings.get(i).facts());
        }
        String name = "";
        for (Listing sighting : sightings) {
            if (name.isEmpty() && sighting.id().isPresent()) {
                name = sighting.id().get();
            }
        }
        return new Car(name.isEmpty() ? sightings.get(0).origin().toString() : name, sightings, facts, joinedBy);
    }
}
