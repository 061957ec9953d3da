package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import swapworth.assumptions.Question;
import swapworth.chart.MarketCharts;
import swapworth.listing.Car;
import swapworth.listing.Check;
import swapworth.listing.Listing;
import swapworth.listing.ListingsRead;
import swapworth.listing.Price;
import swapworth.listing.PriceKind;
import swapworth.market.AgainstOrder;
import swapworth.market.Confounded;
import swapworth.market.FairValue;
import swapworth.market.Judged;
import swapworth.market.Judgement;
import swapworth.market.ModelTables;
import swapworth.market.OpenFacts;
import swapworth.market.Position;
import swapworth.market.PriceModel;
import swapworth.market.Valued;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** The page of a collection of listings: what was read, how each price stands, why, and how far to believe it. */
public final class ListingsPage {
    static final String ON_OFFER = "on-offer";
    static final String LISTINGS = "listings";
    static final String MODEL = "model";
    static final String IN_PLAY = "in-play";
    /** Comparables are shown for this many cars at most, those with the largest gaps. */
    private static final int MOST_GRIDS = 400;
    private static final int MOST_LINES = 6;
    /** So many of the lines without a chart are named. */
    private static final int MOST_NAMED = 30;
    /** Longer tables are folded, so that a page of thousands of rows can be scrolled. */
    private static final int FOLDED_FROM = 60;
    /** So many of the cars on offer are shown at least where all of them are folded. */
    private static final int SHOWN_FIRST = 30;
    private static final int MOST_SHOWN_FIRST = 100;

    private final Judged judged;
    private final Optional<Valued> inPlay;
    private final List<Section> first;
    private final InShort inShort;
    private final List<Section> more;
    private final List<String> missingFiles;
    private final String name;

    private ListingsPage(String name, Judged judged, Optional<Valued> inPlay, List<Section> first, InShort inShort,
            List<Section> more, List<String> missingFiles) {
        this.name = requireNonNull(name, "name");
        this.judged = requireNonNull(judged, "judged");
        this.inPlay = requireNonNull(inPlay, "inPlay");
        this.first = List.copyOf(first);
        this.inShort = requireNonNull(inShort, "inShort");
        this.more = List.copyOf(more);
        this.missingFiles = List.copyOf(missingFiles);
    }

    /**
     * The page of judged listings.
     *
     * @param name what the collection is called, for the title
     * @param judged the judged listings
     * @return the page to be made, to which more can be added
     */
    public static ListingsPage of(String name, Judged judged) {
        return new ListingsPage(name, judged, Optional.empty(), List.of(), new InShort(List.of()), List.of(), List.of());
    }

    /**
     * Adds the cars in play.
     *
     * @param cars the cars and their values
     * @return a copy
     */
    public ListingsPage withCarsInPlay(Valued cars) {
        return new ListingsPage(name, judged, Optional.of(cars), first, inShort, more, missingFiles);
    }

    /**
     * Adds what must be read before all else, such as what must be settled first.
     *
     * @param sections the sections at the head of the page
     * @return a copy
     */
    public ListingsPage withFirst(List<Section> sections) {
        return new ListingsPage(name, judged, inPlay, sections, inShort, more, missingFiles);
    }

    /**
     * Adds the answers in short, which follow what must be read first.
     *
     * @param answers the answers
     * @return a copy
     */
    public ListingsPage withInShort(InShort answers) {
        return new ListingsPage(name, judged, inPlay, first, answers, more, missingFiles);
    }

    /**
     * Adds what else the files of a folder answer.
     *
     * @param sections further sections, such as the market in time
     * @return a copy
     */
    public ListingsPage withMore(List<Section> sections) {
        return new ListingsPage(name, judged, inPlay, first, inShort, sections, missingFiles);
    }

    /**
     * Adds what files that are not there would answer.
     *
     * @param sentences one for each file that the folder lacks
     * @return a copy
     */
    public ListingsPage withMissingFiles(List<String> sentences) {
        return new ListingsPage(name, judged, inPlay, first, inShort, more, sentences);
    }

    /**
     * Makes the page.
     *
     * @return all sections in their order
     */
    public Page page() {
        // Charts start up slowly: they are drawn beside the tables.
        CompletableFuture<Section> charts = CompletableFuture.supplyAsync(this::charts);
        List<Section> sections = new ArrayList<>();
        sections.addAll(first);
        sections.add(readSection());
        inPlay.ifPresent(cars -> sections.add(CarsSection.inPlay(cars)));
        Table onOffer = judged.onOffer("#car-");
        if (!onOffer.rows().isEmpty()) {
            sections.add(onOffer(onOffer));
        }
        sections.add(fileOrder());
        sections.add(byGap());
        int place = sections.size();
        sections.addAll(more);
        sections.add(grids());
        sections.add(model());
        sections.add(assumptions());
        sections.add(place, charts.join());
        if (!missingFiles.isEmpty()) {
            sections.add(Section.of("further", "What further files would answer", Part.bullets(missingFiles)));
        }
        Optional<Section> answers = inShort.section(sections);
        answers.ifPresent(s -> sections.add(first.size(), s));
        List<String> cautions = new ArrayList<>(Cautions.ofValues());
        if (speaksOfCrashes()) {
            cautions.addAll(Cautions.ofCrashedCars());
        }
        if (more.stream().anyMatch(s -> s.id().equals(DonorSections.PARTS))) {
            cautions.addAll(Cautions.ofPartsSold());
        }
        sections.add(Section.of("cautions", "Cautions", Part.cautions("Before you rely on any of this", cautions)));
        return Page.of(name + (more.isEmpty() ? ": listings judged" : ": what the files say"), lead(), sections)
                .openedBy(answers.isPresent() ? first.size() + 1 : 0);
    }

    /** Those furthest below their value stand first; of very many the rest is folded. */
    private Section onOffer(Table all) {
        List<Part> parts = new ArrayList<>(List.of(how()));
        if (all.rows().size() < FOLDED_FROM) {
            parts.add(Part.rows(all));
        } else {
            int shown = shownFirst();
            parts.add(Part.rows(new Table(all.title() + ": the " + shown + " lowest against their value", all.notes(), all.columns(),
                    all.rows().subList(0, shown))));
            parts.add(Part.folded("on-offer-rows", "All " + all.rows().size() + " cars on offer", Part.rows(all)));
        }
        parts.add(Part.folded("stood", "How long they have stood, and how far the ask was cut", Part.rows(stood())));
        return new Section(ON_OFFER, "On offer at the last look", parts);
    }

    /** All that stand below their range, as far as a page can be scrolled, and those that stand between them. */
    private int shownFirst() {
        List<Judgement> offered = judged.stillOffered();
        int last = IntStream.range(0, Math.min(MOST_SHOWN_FIRST, offered.size()))
                .filter(k -> offered.get(k).position() == Position.BELOW).max().orElse(0);
        return Math.max(SHOWN_FIRST, last + 1);
    }

    /** What a buyer has in hand when he makes an offer: how long the car has stood under whatever id, and how often its ask was cut. */
    private Table stood() {
        String currency = judged.read().baseCurrency().getCurrencyCode();
        Table.Builder table = Table.titled("How long the cars on offer" + judged.lately() + " have stood").columns(
                Column.words("car"), Column.words("first seen"),
                Column.number("days seen on offer", ""), Column.number("first ask", currency), Column.number("last ask", currency),
                Column.number("change", "%"), Column.number("cuts", ""));
        table.note("From the first to the last day on which you saw it, reposts that were taken for the same car included; before your"
                + " first look it may have stood longer.");
        Set<String> offered = judged.stillOffered().stream().map(Judgement::car).collect(Collectors.toSet());
        judged.read().cars().stream().filter(car -> offered.contains(car.name()))
                .sorted(Comparator.comparing((Car car) -> car.firstSeen().orElse(LocalDate.MAX))).forEach(car -> {
                    double[] asks = car.sightings().stream().map(Listing::price).filter(price -> price.kind() == PriceKind.ASKING)
                            .mapToDouble(Price::amount).toArray();
                    double first = asks[0];
                    double last = asks[asks.length - 1];
                    table.row(Cell.words(Spelling.shortened(car.name(), 40)),
                            Cell.words(car.firstSeen().map(LocalDate::toString).orElse("")),
                            car.daysOnOffer().isPresent() ? Cell.whole(car.daysOnOffer().getAsLong()) : Cell.BLANK, Cell.number(first, 0),
                            Cell.number(last, 0), Cell.signed(100 * (last / first - 1), 1), Cell.whole(car.priceCuts().size()));
                });
        return table.build();
    }

    private boolean speaksOfCrashes() {
        return judged.read().cars().stream().anyMatch(c -> Cautions.areNeededFor(c.facts()))
                || inPlay.stream().flatMap(v -> v.cars().stream()).anyMatch(v -> Cautions.areNeededFor(v.car()));
    }

    private String lead() {
        ListingsRead read = judged.read();
        List<Judgement> latest = judged.latest();
        long below = latest.stream().filter(j -> j.position() == Position.BELOW).count();
        long above = latest.stream().filter(j -> j.position() == Position.ABOVE).count();
        long unknown = latest.stream().filter(j -> j.position() == Position.CANNOT_TELL).count();
        return read.counts().sentence() + "; " + read.cars().size() + " cars of " + judged.model().lines().size()
                + (judged.model().lines().size() == 1 ? " line" : " lines")
                + judged.model().lastSeen().map(d -> ", last seen on " + d).orElse(", no dates")
                + ". By its latest price each car stands" + judged.otherwiseThanSeen() + ": " + below + " below its 80 % range, "
                + (latest.size() - below - above - unknown) + " inside, " + above + " above"
                + (unknown > 0 ? ", " + unknown + " cannot be told" : "") + ". Prices in " + read.baseCurrency().getCurrencyCode() + "."
                + judged.model().undated().map(words -> " " + words + ".").orElse("");
    }

    private Section readSection() {
        List<Part> parts = new ArrayList<>();
        List<Table> tables = Check.of(judged.read()).tables();
        for (int t = 0; t < tables.size(); t++) {
            Table table = tables.get(t);
            boolean open = t == 0 || table.rows().size() <= 4;
            parts.add(open ? Part.rows(table)
                    : Part.folded("read-" + t, table.title() + " (" + table.rows().size() + ")", Part.rows(table)));
        }
        return new Section("read", "What was read", parts);
    }

    private Section fileOrder() {
        return tableSection(LISTINGS, "Each listing, in the order of the files", judged.inFileOrder("#car-"));
    }

    private Section byGap() {
        return tableSection("gaps", "Cars by gap", judged.byGap("#car-"));
    }

    private static Section tableSection(String id, String heading, Table table) {
        return table.rows().size() < FOLDED_FROM ? Section.of(id, heading, how(), Part.rows(table))
                : Section.of(id, heading, how(), Part.folded(id + "-rows", "All " + table.rows().size() + " rows", Part.rows(table)));
    }

    private static Part how() {
        return Part.prose("Below, inside and above speak of the 80 % range of what one such car is predicted to cost: about one price"
                + " in ten lies below it and one in ten above it by chance alone. Gap is price less fair value. The percentile is the"
                + " share of such cars predicted to cost less. A car's name leads to its comparables.");
    }

    private Section charts() {
        List<Part> parts = new ArrayList<>();
        List<String> lines = judged.model().lines();
        for (String line : lines.subList(0, Math.min(MOST_LINES, lines.size()))) {
            parts.add(Part.picture(MarketCharts.priceAgainstMileage(judged, line)));
        }
        if (lines.size() > MOST_LINES) {
            List<String> without = lines.subList(MOST_LINES, lines.size());
            List<String> named = without.subList(0, Math.min(MOST_NAMED, without.size()));
            parts.add(Part.prose("The lines with most cars have a chart; these have none: " + String.join(", ", named)
                    + (named.size() < without.size() ? " and " + (without.size() - named.size()) + " more" : "") + "."));
        }
        parts.add(Part.picture(MarketCharts.askedAgainstValue(judged)));
        return new Section("charts", "Charts", parts);
    }

    private Section grids() {
        List<Judgement> latest = judged.latest();
        List<Integer> shown = new ArrayList<>();
        for (int c = 0; c < latest.size(); c++) {
            if (latest.get(c).valuation() instanceof FairValue) {
                shown.add(c);
            }
        }
        boolean all = shown.size() <= MOST_GRIDS;
        if (!all) {
            shown.sort(Comparator.comparingDouble(c -> -Math.abs(latest.get(c).gapPercent())));
            shown.subList(MOST_GRIDS, shown.size()).clear();
            shown.sort(Comparator.naturalOrder());
        }
        String currency = judged.read().baseCurrency().getCurrencyCode();
        Part[] folds = new Part[shown.size() + 1];
        folds[0] = Part.prose("The comparables of a car are the cars whose difference from it is least unsure, not those with the nearest"
                + " price. Each is adjusted toward the car line by line; two last lines, for all other listings and for the assumptions,"
                + " close the grid, so that it multiplies out to the value."
                + (all ? "" : " Shown are the " + MOST_GRIDS + " cars with the largest gaps."));
        IntStream.range(0, shown.size()).parallel().forEach(k -> folds[k + 1] = grid(shown.get(k) + 1,
                latest.get(shown.get(k)), currency));
        return Section.of("comparables", "Why: the comparables of each car", folds);
    }

    private static Part grid(int number, Judgement j, String currency) {
        FairValue value = (FairValue) j.valuation();
        String sentence = "Seen at " + Cell.format(j.listing().price().amount(), 0) + " (" + j.listing().level().words()
                + j.listing().seenOn().map(d -> ", " + d).orElse("") + "), " + j.position().words() + " the range. "
                + CarsSection.basis(value, "other car");
        List<Part> parts = new ArrayList<>(List.of(Part.prose(sentence),
                Part.prose("The row says: " + j.listing().facts().described())));
        if (!j.remarks().isEmpty()) {
            parts.add(Part.bullets(j.remarks()));
        }
        parts.add(Part.rows(ModelTables.comparables(value.comparables(), currency)));
        return new Part.Folded("car-" + number, j.car() + ", " + j.listing().facts().vehicle() + ": " + j.position().words() + ", gap "
                + Cell.signed(j.gapPercent(), 0).shown() + " %", parts);
    }

    private Section model() {
        List<Part> parts = new ArrayList<>();
        PriceModel model = judged.model();
        List<String> oddities = Stream.of(model.slopesInDoubt().stream(), model.confounded().stream().map(Confounded::sentence),
                model.againstOrder().stream().map(AgainstOrder::sentence)).flatMap(s -> s).map(words -> words + ".").toList();
        if (!oddities.isEmpty()) {
            parts.add(Part.bullets(oddities));
        }
        parts.add(judged.study().match(s -> Part.rows(ModelTables.fit(model, s)), no -> Part.prose(no.sentence())));
        parts.add(Part.folded("terms", "All terms with their ranges", Part.picture(MarketCharts.terms(judged)),
                Part.rows(ModelTables.terms(model, judged.read().distanceUnit()))));
        Table open = OpenFacts.table(model.cars());
        if (!open.rows().isEmpty()) {
            parts.add(Part.folded("open-facts", open.title(), Part.rows(open)));
        }
        return new Section(MODEL, "How far to believe it", parts);
    }

    private Section assumptions() {
        return Section.of("assumptions", "Assumptions", Part.prose("Where the listings do not speak, these numbers stand in. They are"
                + " middles with a spread, not constants; a file assumptions.csv in the folder replaces any of them."),
                Part.folded("assumptions-rows", "All assumptions with their sources",
                Part.rows(judged.model().assumptions().table(Question.MARKET))));
    }
}
