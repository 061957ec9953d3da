package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import swapworth.donor.CarOption;
import swapworth.donor.Choice;
import swapworth.donor.DonorStudy;
import swapworth.donor.Landed;
import swapworth.donor.LandedCost;
import swapworth.listing.Car;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.market.Answer;
import swapworth.market.FairValue;
import swapworth.market.Figures;
import swapworth.market.IndexTables;
import swapworth.market.Judged;
import swapworth.market.Judgement;
import swapworth.market.MarketIndex;
import swapworth.market.Position;
import swapworth.market.Valued;
import swapworth.project.Alternatives;
import swapworth.project.Equity;
import swapworth.project.FinishOrStop;
import swapworth.project.Forecast;
import swapworth.project.Gates;
import swapworth.project.Ledger;
import swapworth.project.NowOrLater;
import swapworth.project.Undertaking;
import swapworth.reading.RowsRead;
import swapworth.statistics.Quantiles;
import swapworth.swap.SwapValue;
import swapworth.swap.Swaps;
import swapworth.table.Cell;
import swapworth.table.TextLines;

/**
 * The answers of a folder before everything else, ten points at most, each with its range, what it stands by, its day and its level of
 * trade. Every figure is the one that the section behind it shows; what the files do not allow is left out.
 *
 * @param sentences the sentences, in the order of the sections
 */
public record InShort(List<Sentence> sentences) {
    private static final String HEADING = "In short";
    private static final int MOST_IN_PLAY = 3;
    private static final Comparator<Valued.ValuedCar> DEAREST = Comparator.comparingDouble(InShort::overValue).reversed();

    /**
     * One answer.
     *
     * @param words whole sentences
     * @param section the id of the section that it is from
     */
    public record Sentence(String words, String section) {
        /** Checks that nothing is missing. */
        public Sentence {
            requireNonNull(words, "words");
            requireNonNull(section, "section");
        }
    }

    /** Copies the list in. */
    public InShort {
        sentences = List.copyOf(sentences);
    }

    /**
     * The answers of a folder.
     *
     * @param judged its listings
     * @param valued its cars in play, where it has any
     * @param donors donors and recipients, where its files speak of them
     * @param swaps its finished cars, where it has any
     * @param undertaking its money
     * @return the answers
     */
    public static InShort of(Judged judged, Optional<Valued> valued, Optional<DonorStudy> donors, Optional<Swaps> swaps,
            Undertaking undertaking) {
        return of(Optional.of(judged), valued, donors, swaps, undertaking);
    }

    /**
     * The answers of a folder without listings: what its cars cost, and what is in it.
     *
     * @param donors donors and recipients, where its files speak of them
     * @param undertaking its money
     * @return the answers
     */
    public static InShort withoutListings(Optional<DonorStudy> donors, Undertaking undertaking) {
        return of(Optional.empty(), Optional.empty(), donors, Optional.empty(), undertaking);
    }

    private static InShort of(Optional<Judged> listings, Optional<Valued> valued, Optional<DonorStudy> donors, Optional<Swaps> swaps,
            Undertaking undertaking) {
        List<Sentence> all = new ArrayList<>();
        Optional<String> shut = undertaking.gates().map(Gates::shut).filter(words -> !words.isEmpty());
        shut.ifPresent(words -> all.add(new Sentence(words, ProjectPage.GATES)));
        listings.ifPresent(judged -> onOffer(judged).ifPresent(words -> all.add(new Sentence(words, judged.model().lastSeen().isPresent()
                ? ListingsPage.ON_OFFER : ListingsPage.LISTINGS))));
        // Who has bought both cars no longer asks which and when to buy.
        boolean bought = undertaking.ledger().filter(l -> l.sums().carsBought() >= 2).isPresent();
        valued.filter(cars -> !bought).flatMap(InShort::inPlay).ifPresent(words -> all.add(new Sentence(words, ListingsPage.IN_PLAY)));
        donors.filter(study -> !bought).ifPresent(study -> costs(study, all));
        // What a car is worth that is sold, nobody asks any longer.
        boolean sold = undertaking.ledger().flatMap(Ledger::carSold).isPresent();
        Optional<SwapValue> finished = swaps.flatMap(s -> s.first().told()).filter(value -> !sold && value.sale().isEmpty());
        finished.ifPresent(value -> all.add(new Sentence(worth(value, swaps.orElseThrow()), SwapSection.ID)));
        // Where it must not be done, nobody asks when.
        undertaking.nowOrLater().filter(n -> !bought && shut.isEmpty()).map(NowOrLater::sentence).filter(words -> !words.isEmpty())
                .ifPresent(words -> all.add(new Sentence(words, ProjectPage.NOW_OR_LATER)));
        Optional<Sentence> unsure = unsure(listings, finished, undertaking);
        undertaking.equity().ifPresent(left -> all.add(new Sentence(left(left, undertaking), ProjectPage.LEFT)));
        undertaking.job().flatMap(job -> undertaking.ledger().map(ledger -> job.sentence() + " That is by " + rows(ledger) + "."))
                .ifPresent(words -> all.add(new Sentence(words, ProjectPage.JOB)));
        // What is unsure of what is left stands beside it, and other doubts at the end.
        unsure.filter(InShort::isOfWhatIsLeft).ifPresent(all::add);
        undertaking.finishOrStop().map(FinishOrStop::sentence).filter(words -> !words.isEmpty())
                .ifPresent(words -> all.add(new Sentence(words, ProjectPage.FINISH_OR_STOP)));
        // Whose car is sold has chosen.
        undertaking.alternatives().filter(ways -> !sold).map(Alternatives::sentence).filter(words -> !words.isEmpty())
                .ifPresent(words -> all.add(new Sentence(words, ProjectPage.AGAINST)));
        if (undertaking.equity().isEmpty() && undertaking.job().isEmpty()) {
            undertaking.forecast().flatMap(forecast -> undertaking.ledger().map(ledger -> ProjectPage.inIt(ledger, forecast)
                    + " That is by " + rows(ledger) + "."))
                    .ifPresent(words -> all.add(new Sentence(words, ProjectPage.LEDGER)));
        }
        listings.ifPresent(judged -> market(judged, all));
        unsure.filter(doubt -> !isOfWhatIsLeft(doubt)).ifPresent(all::add);
        return new InShort(all);
    }

    private static void market(Judged judged, List<Sentence> all) {
        if (judged.model().index() instanceof Answer.Told<MarketIndex> index
                && IndexTables.movement(index.value()) instanceof Answer.Told<String> movement) {
            all.add(new Sentence(movement.value() + " That is by " + judged.read().cars().stream().map(Car::firstSeen)
                    .filter(Optional::isPresent).count() + " cars with a date.", MarketSection.ID));
        }
    }

    private static Optional<String> onOffer(Judged judged) {
        boolean dated = judged.model().lastSeen().isPresent();
        List<Judgement> all = dated ? judged.stillOffered() : judged.everOffered();
        List<Judgement> mistyped = all.stream().filter(Judgement::looksMistyped).toList();
        List<Judgement> open = all.stream().filter(j -> !j.looksMistyped()).toList();
        // Where a level of trade is stated an ask at another one is not held against it.
        if (open.isEmpty() || open.get(0).position() == Position.CANNOT_TELL || !(open.get(0).valuation() instanceof FairValue value)) {
            return Optional.empty();
        }
        Judgement lowest = open.get(0);
        long below = open.stream().filter(j -> j.position() == Position.BELOW).count();
        long untold = open.stream().filter(j -> j.position() == Position.CANNOT_TELL).count();
        return Optional.of("Of " + open.size() + (open.size() == 1 ? " car" : " cars")
                + (dated ? " on offer" + judged.lately() : ", without days nobody knows which are still on offer,") + " "
                + (below == 0 ? "none stands" : below == 1 ? "1 stands" : below + " stand") + (below > 1 ? " below their" : " below its")
                + " 80 % range"
                + (below == 0 ? "" : " (about one in ten does by chance)") + (untold == 0 ? "" : ", and " + untold + " cannot be told")
                + (mistyped.isEmpty() ? "" : "; not counted: " + String.join(", ", mistyped.stream().map(j -> "'" + j.car() + "'").toList())
                        + ", whose price is so far from the value that it looks mistyped")
                + ". Lowest against its value stands '" + lowest.car() + "', " + lowest.listing().facts().vehicle()
                + troubles(lowest.listing().facts()) + ": "
                + judged.read().baseCurrency().getCurrencyCode() + " " + Cell.format(lowest.listing().price().amount(), 0)
                + ", gap " + Cell.signed(lowest.gapPercent(), 0).shown() + " %, fair value " + Figures.rounded(value.median())
                + " (80 % range " + Figures.range(value.range(0.80)) + "; "
                + value.subject().level().words() + value.subject().on().map(d -> " on " + d).orElse("") + "; by " + value.carsOfLine()
                + (value.carsOfLine() == 1 ? " car of its line, " : " cars of its line, ") + value.carsInFile() + " in all)"
                + (lowest.remarks().isEmpty() ? "." : ": " + String.join("; ", lowest.remarks()) + "."));
    }

    /** What the row says that makes such a car cheap; its value counts it too. */
    private static String troubles(CarFacts car) {
        List<String> words = car.troubles();
        return words.isEmpty() ? "" : " (" + String.join("; ", words) + ")";
    }

    /** Where the prices of the cars in play stand, those outside of their range first: the dearest against their values. */
    private static Optional<String> inPlay(Valued valued) {
        List<Valued.ValuedCar> told = valued.cars().stream().filter(v -> v.car().priceOrBid().isPresent()
                && v.position() != Position.CANNOT_TELL).toList();
        if (told.isEmpty()) {
            return Optional.empty();
        }
        List<Valued.ValuedCar> above = told.stream().filter(v -> v.position() == Position.ABOVE).sorted(DEAREST).toList();
        List<Valued.ValuedCar> below = told.stream().filter(v -> v.position() == Position.BELOW).sorted(DEAREST.reversed()).toList();
        List<Valued.ValuedCar> named = Stream.of(above, below, told.stream().sorted(DEAREST).toList()).flatMap(List::stream).distinct()
                .limit(above.isEmpty() && below.isEmpty() ? 1 : Math.min(MOST_IN_PLAY, above.size() + below.size())).toList();
        return Optional.of("Of " + told.size() + (told.size() == 1 ? " car" : " cars") + " in play with a price or bid "
                + (above.isEmpty() ? "none stands above its" : above.size() == 1 ? "1 stands above its"
                        : above.size() + " stand above their")
                + " 80 % range, "
                + (told.size() - above.size() - below.size()) + " inside and " + below.size() + " below: "
                + String.join("; ", named.stream().map(v -> standing(v, valued)).toList()) + "."
                + (below.isEmpty() ? "" : " Below the range: look for what the row does not say."));
    }

    private static String standing(Valued.ValuedCar car, Valued valued) {
        FairValue value = (FairValue) car.valuation();
        double price = car.car().priceOrBid().orElseThrow().amount();
        return "'" + car.car().name() + "', " + (car.car().role() == CandidateCar.Role.UNKNOWN ? "" : car.car().role().words() + ", ")
                + car.position().words() + ": " + valued.currency().getCurrencyCode() + " " + Cell.format(price, 0) + " ("
                + car.level().words() + "), fair value " + Figures.rounded(value.median()) + " (80 % range "
                + Figures.range(value.range(0.80)) + value.subject().on().map(d -> "; " + d).orElse("") + "; by " + value.carsOfLine()
                + (value.carsOfLine() == 1 ? " car of its line, " : " cars of its line, ") + value.carsInFile() + " in all)";
    }

    private static double overValue(Valued.ValuedCar car) {
        return car.car().priceOrBid().orElseThrow().amount() / ((FairValue) car.valuation()).median();
    }

    /** Net costs where parts are known, else what stands at the door. */
    private static void costs(DonorStudy study, List<Sentence> all) {
        if (!study.choices().isEmpty()) {
            all.add(new Sentence(String.join(" ", study.choices().stream().map(choice -> cheapest(choice, study)).toList()),
                    DonorSections.CHOICE));
        } else {
            study.landed().told().map(Landed::least).ifPresent(least -> all.add(new Sentence(String.join(" ", least.stream()
                    .map(l -> atTheDoor(l, least.size() == 1, study)).toList()), DonorSections.LANDED)));
        }
    }

    private static String atTheDoor(Landed.Least least, boolean alone, DonorStudy study) {
        LandedCost cost = least.cost();
        String car = "'" + cost.purchase().car() + "'";
        String state = notDriving(cost.purchase().runs());
        return (least.cars() == 1 ? car + " (" + role(least) + (state.isEmpty() ? "" : ", " + state) + ") costs at the door: "
                : "Of " + least.cars() + " cars in play" + (alone ? " " : " (" + role(least) + ") ") + car
                        + (state.isEmpty() ? "" : " (" + state + ")") + " costs least at the door: ")
                + study.currency().getCurrencyCode() + " " + Cell.amount(cost.total()).shown()
                + (cost.whole() ? "" : " at least, since lines are missing,") + " for a price or bid of "
                + Cell.amount(cost.purchase().bid()).shown() + " (" + seller(cost.purchase().seller()) + ").";
    }

    private static String seller(Seller seller) {
        return seller == Seller.UNKNOWN ? "seller not stated" : seller.words();
    }

    /** In which state a car is that does not drive; empty for one that does, or of which nobody says. */
    private static String notDriving(Runs runs) {
        return runs == Runs.DRIVES || runs == Runs.UNKNOWN ? "" : runs.words();
    }

    private static String role(Landed.Least least) {
        return least.role() == CandidateCar.Role.UNKNOWN ? "role unknown" : least.role().words();
    }

    private static String cheapest(Choice choice, DonorStudy study) {
        CarOption first = choice.options().get(0);
        List<String> alike = IntStream.range(1, choice.options().size()).filter(choice::noRealDifference)
                .mapToObj(k -> "'" + choice.options().get(k).car().name() + "' (dearer in " + choice.dearerIn(k) + " % of the draws)")
                .toList();
        CandidateCar car = first.car();
        // Of a donor the chance that its engine and gearbox are good is said.
        String state = car.role() == CandidateCar.Role.DONOR ? "" : notDriving(car.facts().runs());
        String name = "'" + car.name() + "'" + (state.isEmpty() ? "" : " (" + state + ")");
        int count = choice.compared();
        int others = choice.options().size() - count;
        return choice.purpose() + ": " + (count == 1 ? name + (others == 0 ? " alone costs net " : " costs net ")
                : "of the " + count + " compared " + name + " costs least, net ") + study.currency().getCurrencyCode()
                + " " + Cell.format(first.meanWithGear(), 0) + (first.parts() ? " (80 % range " + Choice.range(first.withGear())
                + study.on().map(d -> "; " + d).orElse("") + ")" : "") + ": " + Cell.format(first.landed(), 0)
                + (first.whole() ? " at the door" : " without all of its fees") + " for a price or bid of "
                + car.priceOrBid().map(p -> Cell.format(p.amount(), 0)).orElse("") + " (" + seller(car.facts().seller()) + ")"
                + (first.parts() ? ", less what its left-over parts bring, by " + study.offersOfParts()
                        : "; its left-over parts are not counted, since "
                                + (first.partsUnpriced() > 0 ? "none of them that is for sale has a price"
                                : "partout.csv does not name them"))
                + (first.parts() ? first.gearToReplace() : "")
                + (others == 0 ? "" : "; " + others + " more cannot be compared, for not all of "
                        + (others == 1 ? "its" : "their") + " parts, fees or gear are counted")
                + (alike.isEmpty() ? "" : ". Money tells no real difference from " + String.join(", ", alike)) + ".";
    }

    private static String worth(SwapValue value, Swaps swaps) {
        return "Finished, '" + value.car().name() + "' is worth " + swaps.currency().getCurrencyCode() + " "
                + Figures.rounded(value.median()) + " (80 % range " + Figures.range(value.range(0.80)) + "; the price of this one car, "
                + dayAndLevel(value.level(), value) + "), by " + value.basis() + "."
                + value.addedDraws().map(added -> added(added, swaps.currency().getCurrencyCode())).orElse("")
                + value.statedAgainst().map(words -> " " + words).orElse("");
    }

    private static String added(double[] draws, String currency) {
        return " The change adds " + currency + " " + Figures.rounded(Quantiles.median(draws)) + " to the stock car (80 % range "
                + Figures.range(Forecast.range(draws, 0.80)) + "; middle prices).";
    }

    private static String dayAndLevel(LevelOfTrade level, SwapValue value) {
        return level.words() + value.on().map(d -> " on " + d).orElse("");
    }

    private static String left(Equity equity, Undertaking undertaking) {
        return equity.sentence() + " " + equity.chanceOfLoss()
                + undertaking.finished().map(f -> equity.sale().map(s -> ", by what came in for '" + f.car().name() + "' (" + s.on() + ")")
                        .orElse(", by what '" + f.car().name() + "' sells for (" + dayAndLevel(f.level().sold(), f)
                        + ProjectPage.untilDone(undertaking).map(words -> "; " + words).orElse("") + ")")).orElse("")
                + undertaking.ledger().map(ledger -> " and " + rows(ledger)).orElse("") + "."
                + undertaking.otherFinished().map(words -> " But " + words + ".").orElse("");
    }

    private static String rows(Ledger ledger) {
        // A sale that swaps.csv alone tells of has no line in the ledger.
        long rows = ledger.all().filter(entry -> entry.line() > 0).count();
        return rows + (rows == 1 ? " row" : " rows") + " of the ledger as of " + ledger.on() + without(ledger.read());
    }

    /** Rows that are in no figure. */
    private static String without(RowsRead read) {
        int lost = (int) Stream.concat(read.rejected().stream(), read.setAside().stream()).filter(row -> !row.losesNothing()).count();
        return lost == 0 ? "" : "; " + lost + (lost == 1 ? " more row is in no figure, for it" : " more rows are in no figure, for they")
                + " cannot be used";
    }

    private static boolean isOfWhatIsLeft(Sentence sentence) {
        return sentence.section().equals(ProjectPage.LEFT);
    }

    /** What is most unsure: of what is left, else of the finished car, else of the values of the listings. */
    private static Optional<Sentence> unsure(Optional<Judged> listings, Optional<SwapValue> finished, Undertaking undertaking) {
        return undertaking.narrowing().stream().findFirst().map(words -> new Sentence(words, ProjectPage.LEFT))
                .or(() -> finished.map(value -> new Sentence(value.held() + ".", SwapSection.ID)))
                .or(() -> listings.flatMap(judged -> judged.study().told()).map(study -> new Sentence("How unsure one price is: half of "
                        + study.ratios().n() + " prices lie within " + Cell.format(study.medianMissPercent(), 1) + " % of their value, and "
                        + Cell.format(study.all().percent80(), 0) + " % inside their 80 % range.", ListingsPage.MODEL)));
    }

    /**
     * The answers for a terminal.
     *
     * @return lines that end in a line feed; empty where there is no answer
     */
    public String text() {
        StringBuilder text = new StringBuilder();
        sentences.forEach(s -> text.append(TextLines.of("  ", s.words())));
        return text.isEmpty() ? "" : "\n" + HEADING + "\n" + text;
    }

    /** The answers as a section that leads to others; nothing where there is no answer. */
    Optional<Section> section(List<Section> others) {
        List<Part.Pointer> pointers = new ArrayList<>();
        for (Sentence sentence : sentences) {
            others.stream().filter(s -> s.id().equals(sentence.section())).findFirst()
                    .ifPresent(s -> pointers.add(new Part.Pointer(sentence.words(), s)));
        }
        return pointers.isEmpty() ? Optional.empty() : Optional.of(Section.of("in-short", HEADING, new Part.Pointers(pointers)));
    }
}
