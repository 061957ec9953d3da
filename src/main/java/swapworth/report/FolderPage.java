package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.donor.DonorStudy;
import swapworth.donor.MarketState;
import swapworth.listing.CarsFile;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.Judged;
import swapworth.market.PriceModel;
import swapworth.market.Valued;
import swapworth.project.Undertaking;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.UnusableFileException;
import swapworth.swap.Swaps;

/**
 * Everything that the files of a folder say, on one page: what the command does without a step. {@link #of} reads the folder; who has the
 * answers already puts them together with the constructor.
 *
 * @param folder the folder
 * @param judged its listings, judged
 * @param cars what its {@code cars.csv} says, where there is one
 * @param valued the values of the cars in play that are no finished swaps
 * @param study what donors and recipients cost and give back, where {@code fees.csv} or {@code partout.csv} tells
 * @param donors the sections of that study
 * @param market the section of the market in time
 * @param swaps the values of the finished cars, where there are any
 * @param undertaking the money of it
 */
public record FolderPage(Path folder, Judged judged, Optional<CarsFile> cars, Optional<Valued> valued, Optional<DonorStudy> study,
        List<Section> donors, Section market, Optional<Swaps> swaps, Undertaking undertaking) {

    private static final String FEES = "fees.csv";
    private static final String PARTOUT = "partout.csv";

    /** Copies the list in and checks that nothing is missing. */
    public FolderPage {
        requireNonNull(folder, "folder");
        requireNonNull(judged, "judged");
        requireNonNull(cars, "cars");
        requireNonNull(valued, "valued");
        requireNonNull(study, "study");
        donors = List.copyOf(donors);
        requireNonNull(market, "market");
        requireNonNull(swaps, "swaps");
        requireNonNull(undertaking, "undertaking");
    }

    /**
     * Reads a folder and works everything out, on the days and at the levels of trade that the files state.
     *
     * @param folder the folder, with {@code listings.csv} in it
     * @return what its files say
     * @throws UnusableFileException if one of the files cannot be used as a whole, or no listing can
     */
    public static FolderPage of(Path folder) {
        ListingsRead read = Listings.read(folder.resolve("listings.csv"));
        if (read.listings().isEmpty()) {
            throw UnusableFileException.because("listings.csv", "no row of it can be used; " + read.counts().sentence());
        }
        Currency currency = read.baseCurrency();
        Assumptions assumptions = Assumptions.ofFolder(folder);
        PriceModel model = PriceModel.options().with(assumptions).fit(read.cars());
        Judged judged = Judged.of(read, model);
        Optional<CarsFile> cars = Optional.of(folder.resolve("cars.csv")).filter(Files::isRegularFile)
                .map(file -> CarsFile.read(file, read));
        Optional<Valued> valued = cars.map(c -> Valued.of(c.unfinished(), model, currency, Optional.empty(), Optional.empty()));
        Optional<DonorStudy> study = cars.filter(c -> hasStudy(folder)).map(c -> DonorStudy.of(folder, c.cars(), currency,
                Optional.of(model), MarketState.of(Optional.of(model), model.lastSeen()), assumptions));
        List<Section> donors = study.map(s -> DonorSections.all(s, assumptions.in(currency,
                FolderSettings.of(folder, Conventions.unstated()).rates()))).orElse(List.of());
        Optional<Undertaking.Market> inPlay = cars.map(c -> new Undertaking.Market(read, model, c,
                Swaps.of(folder, c, currency, model, Optional.empty(), Optional.empty())));
        Optional<Swaps> swaps = inPlay.map(Undertaking.Market::swaps).filter(s -> !s.answers().isEmpty());
        return new FolderPage(folder, judged, cars, valued, study, donors, MarketSection.of(model), swaps,
                Undertaking.of(folder, Optional.empty(), inPlay));
    }

    /**
     * Whether a folder says what its cars in play cost or give back.
     *
     * @param folder the folder
     * @return whether there is a {@code fees.csv} or a {@code partout.csv}
     */
    public static boolean hasStudy(Path folder) {
        return Files.isRegularFile(folder.resolve(FEES)) || Files.isRegularFile(folder.resolve(PARTOUT));
    }

    /**
     * The answers in short.
     *
     * @return as they stand at the head of the page
     */
    public InShort inShort() {
        return InShort.of(judged, valued, study, swaps, undertaking);
    }

    /**
     * The page.
     *
     * @return all sections in their order
     */
    public Page page() {
        List<Section> first = new ArrayList<>(ProjectPage.first(undertaking));
        cars.ifPresent(c -> first.addAll(CarsSection.toLookAt(c)));
        List<Section> more = new ArrayList<>(donors);
        swaps.ifPresent(s -> more.add(SwapSection.of(s)));
        more.add(market);
        more.addAll(ProjectPage.sections(undertaking));
        List<String> missing = missing();
        // What a purchase costs beside the price is asked for above already.
        undertaking.missing().stream().filter(file -> !file.startsWith(FEES)).forEach(missing::add);
        Path name = folder.toAbsolutePath().normalize().getFileName();
        ListingsPage made = ListingsPage.of(name == null ? "listings" : name.toString(), judged).withFirst(first).withInShort(inShort())
                .withMore(more).withMissingFiles(missing);
        return valued.map(made::withCarsInPlay).orElse(made).page();
    }

    private List<String> missing() {
        List<String> sentences = new ArrayList<>();
        lacks("cars.csv", " (the cars that you think of buying): what each is worth to the market on one day.", sentences);
        lacks(FEES, " (what a purchase costs beside the bid): what each car costs at the door, the highest bid, now or later, and when"
                + " to walk away.", sentences);
        lacks(PARTOUT, ", with parts.csv (which parts are sold, and parts seen on offer): what comes back from the rest of a car.",
                sentences);
        if (Files.isRegularFile(folder.resolve(PARTOUT))) {
            lacks("parts.csv", " (used parts seen on offer): what each part of partout.csv without a price of its own brings, and what it"
                    + " costs to replace gear that turns out bad.", sentences);
        }
        lacks("swaps.csv", " (finished swaps that you saw, and offers for your own): what swaps sell for, in place of assumptions.",
                sentences);
        lacks("words.csv", " (your own spellings and how you write numbers and dates): words that were not understood.",
                sentences);
        lacks("lines.csv", " (power, cylinders, weight and driven wheels of each line, once).", sentences);
        lacks("assumptions.csv", " (your own middle and spread for any assumption on this page).", sentences);
        return sentences;
    }

    private void lacks(String file, String what, List<String> sentences) {
        if (!Files.isRegularFile(folder.resolve(file))) {
            sentences.add(file + what);
        }
    }
}
