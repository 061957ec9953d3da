package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.listing.LevelOfTrade;
import swapworth.market.Figures;
import swapworth.market.Range;
import swapworth.project.DrawFigures;
import swapworth.project.Forecast;
import swapworth.project.Gates;
import swapworth.project.Ledger;
import swapworth.project.RedoCost;
import swapworth.project.Undertaking;
import swapworth.statistics.Quantiles;
import swapworth.swap.SwapValue;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * The file on a finished car that its owner hands on: what it is, both mileages, what it is worth and how that was found, what was done and
 * paid, what to check with whom. What others than the owner read holds no equity, no bracket, no note, link or number of anybody.
 */
public final class ProjectFile {
    private static final List<String> PICTURES = List.of(".jpg", ".jpeg", ".png", ".heic", ".webp");

    private final Path folder;
    private final Undertaking undertaking;
    private final Reader reader;

    /** Who reads it. */
    public enum Reader {
        /** The owner: everything. */
        SELF("yourself"),
        /** Somebody who may buy the car. */
        BUYER("a buyer"),
        /** Somebody who lends on it. */
        LENDER("a lender"),
        /** Somebody who insures it. */
        INSURER("an insurer");

        private final String words;

        Reader(String words) {
            this.words = words;
        }

        /**
         * How it stands on the page.
         *
         * @return with its article
         */
        public String words() {
            return words;
        }
    }

    private ProjectFile(Path folder, Undertaking undertaking, Reader reader) {
        this.folder = requireNonNull(folder, "folder");
        this.undertaking = requireNonNull(undertaking, "undertaking");
        this.reader = requireNonNull(reader, "reader");
    }

    /**
     * The file.
     *
     * @param folder the folder, whose pictures are named
     * @param undertaking the undertaking of the folder
     * @param reader who is to read it
     * @return a page for printing
     */
    public static Page of(Path folder, Undertaking undertaking, Reader reader) {
        return new ProjectFile(folder, undertaking, reader).page();
    }

    private Page page() {
        List<Section> sections = new ArrayList<>();
        Optional<SwapValue> finished = undertaking.finished();
        if (reader == Reader.SELF) {
            sections.addAll(ProjectPage.first(undertaking));
        }
        finished.ifPresent(f -> sections.add(Section.of("car", "What the car is", Part.rows(discreet(f.disclosure())), Part.prose(
                "The mileage of the car is that of its chassis. What the running gear has run stands beside the mileage and not in its"
                + " place, and no figure is made of the two."))));
        finished.ifPresent(f -> sections.add(value(f)));
        undertaking.market().ifPresent(m -> sections.add(new EvidenceSection(m, unit(), reader, this::discreet).section(finished)));
        undertaking.ledger().ifPresent(l -> sections.add(new WorkSection(l).section()));
        if (reader == Reader.INSURER) {
            undertaking.redoCost().ifPresent(r -> sections.add(redo(r)));
        }
        if (reader == Reader.LENDER) {
            undertaking.forecast().ifPresent(f -> sections.add(toCome(f)));
        }
        sections.add(papers());
        if (reader == Reader.SELF) {
            sections.addAll(ProjectPage.sections(undertaking));
        }
        List<String> cautions = new ArrayList<>(reader == Reader.SELF ? Cautions.ofSwaps() : Cautions.ofSwapsHandedOn());
        if (reader == Reader.SELF) {
            cautions.addAll(Cautions.ofValues().subList(0, 2));
        }
        sections.add(Section.of("check", "What to check, and with whom", Part.bullets(checks()),
                Part.cautions("Before you rely on any of this", cautions)));
        String car = finished.map(f -> Discreet.text(f.car().name())).orElse("the car");
        return Page.of("File on " + car, lead(finished), sections);
    }

    private Table discreet(Table table) {
        return reader == Reader.SELF ? table : Discreet.table(table);
    }

    private String lead(Optional<SwapValue> finished) {
        String made = "Made by the owner for " + reader.words() + ", from listings that the owner chose and collected; no appraisal.";
        if (finished.isEmpty()) {
            return made + " The folder does not say what the finished car is worth.";
        }
        SwapValue value = finished.get();
        return made + "\n\nIndicated range of the price of this one car (" + value.level().words() + when(value.on()) + "): "
                + Figures.range(value.range(0.80)) + " (80 %), " + Figures.range(value.range(0.95)) + " (95 %), median "
                + Figures.rounded(value.median()) + ", " + unit() + ", by " + Discreet.text(value.basis()) + "." + paid(value) + state()
                + value.statedAgainst().map(words -> " " + words).orElse("");
    }

    /** Who lends or insures counts on what is paid, not on what is asked. */
    private String paid(SwapValue value) {
        if (!readsWhatIsPaid(value)) {
            return "";
        }
        double[] paid = value.soldDraws();
        return "\n\nWhat is paid for it in the end (" + value.level().sold().words() + when(value.on()) + "): "
                + Figures.range(Forecast.range(paid, 0.80)) + " (80 %), " + Figures.range(Forecast.range(paid, 0.95)) + " (95 %), median "
                + Figures.rounded(Quantiles.median(paid)) + ".";
    }

    private boolean readsWhatIsPaid(SwapValue value) {
        return reader != Reader.BUYER && value.level().sold() != value.level();
    }

    /** A range of the finished car says little to somebody who takes it for finished, or for the owner's still. */
    private String state() {
        return undertaking.ledger().flatMap(Ledger::carSold).map(sale -> "\n\nThe car is sold: by the owner's records the last of its price"
                + " came in on " + sale.on() + ".").or(this::unfinished).orElse("");
    }

    private Optional<String> unfinished() {
        return undertaking.ledger().map(Ledger::sums).flatMap(sums -> sums.doneIn().map(done -> {
            int rows = sums.toFinish().size();
            return "\n\nThe car is not finished: " + rows + (rows == 1 ? " row" : " rows") + " of the owner's ledger "
                    + (rows == 1 ? "is" : "are") + " still to be paid or worked, the last in " + done
                    + "; the range is that of the finished car.";
        }));
    }

    private static String when(Optional<LocalDate> day) {
        return day.map(d -> ", " + d).orElse("");
    }

    private String unit() {
        return undertaking.market().map(m -> m.read().baseCurrency().getCurrencyCode())
                .or(() -> undertaking.ledger().map(l -> l.currency().getCurrencyCode())).orElse("");
    }

    private Section value(SwapValue value) {
        Table.Builder table = Table.titled("Price of this one car" + value.on().map(d -> " on " + d).orElse("") + ", " + unit())
                .columns(Column.words("level of trade"), Column.number("median", ""), Column.number("80 % range", ""),
                Column.number("95 % range", ""));
        undertaking.market().ifPresent(m -> table.note(m.read().cars().size() + " cars and " + m.read().listings().size()
                + " sightings in the owner's collection."));
        value.statedAgainst().ifPresent(table::note);
        row(table, value.level(), value.median(), value.range(0.80), value.range(0.95));
        if (readsWhatIsPaid(value)) {
            double[] paid = value.soldDraws();
            row(table, value.level().sold(), Quantiles.median(paid), Forecast.range(paid, 0.80), Forecast.range(paid, 0.95));
        }
        return Section.of("value", "What it is worth", Part.rows(table.build()),
                Part.prose("How it was found: " + value.howFound() + " A statistical model learns from the listings how price"
                + " runs with age, mileage, condition and the level of trade; the 80 % range holds the price of one such car eight times in"
                + " ten, the 95 % range nineteen times in twenty. " + value.held() + "; the owner can show them. The price of one car is"
                + " more unsure than that, by how single cars differ."));
    }

    private static void row(Table.Builder table, LevelOfTrade level, double median, Range near, Range wide) {
        table.row(Cell.words(level.words()), Figures.money(median), Cell.words(Figures.range(near)), Cell.words(Figures.range(wide)));
    }

    private Section redo(RedoCost redo) {
        Table.Builder table = ranges("What it would cost to do it again at the prices of " + undertaking.ledger().orElseThrow().on());
        range(table, "cars, parts and bought work, less parts sold", redo.cash());
        range(table, "with the owner's hours at " + Cell.format(redo.rate(), 2) + " each", redo.withHours());
        return Section.of("redo-cost", "What it would cost to do it again", Part.rows(table.build()),
                Part.prose("The owner's ledger carried to that day by the market of the listings and by assumptions on yearly prices."
                + " Whether a policy pays an agreed sum, the market value or the least of several is for the policy to say."));
    }

    private Section toCome(Forecast forecast) {
        Table.Builder table = ranges("Still to be paid until it is done, as of " + forecast.ledger().on());
        range(table, "still to be paid, a reserve included", forecast.toPay());
        return Section.of("to-come", "What is still to be paid", Part.rows(table.build()),
                Part.prose(forecast.ledger().sums().doneIn().map(done -> "The last row still to be paid or worked is due in " + done + ".")
                        .orElse("No row of the ledger is still to be paid or worked.")));
    }

    private Table.Builder ranges(String title) {
        return Table.titled(title + ", " + unit()).columns(Column.words("figure"), Column.number("median", unit()),
                Column.number("80 % from", unit()), Column.number("80 % to", unit()));
    }

    private static void range(Table.Builder table, String name, double[] draws) {
        List<Cell> cells = new ArrayList<>(List.of(Cell.words(name)));
        cells.addAll(DrawFigures.cells(draws));
        table.row(cells);
    }

    private Section papers() {
        List<Part> parts = new ArrayList<>();
        undertaking.gates().ifPresent(gates -> {
            Table.Builder table = Table.titled("What the owner answers").columns(Column.words("question"), Column.words("answer"));
            for (Gates.Gate gate : gates.gates()) {
                table.row(Cell.words(Discreet.text(gate.name())), Cell.words(gate.answer().words()));
            }
            parts.add(Part.rows(table.build()));
        });
        List<String> pictures = pictures().map(Discreet::text).toList();
        parts.add(pictures.isEmpty() ? Part.prose("Photographs: none in the folder.")
                : Part.prose("Photographs, by the names of their files: " + String.join(", ", pictures) + "."));
        return new Section("papers", "Papers and photographs", parts);
    }

    private Stream<String> pictures() {
        List<String> names = new ArrayList<>();
        for (Path where : List.of(folder, folder.resolve("photos"))) {
            if (Files.isDirectory(where)) {
                try (Stream<Path> files = Files.list(where)) {
                    files.map(f -> f.getFileName().toString()).filter(n -> PICTURES.stream().anyMatch(n.toLowerCase(Locale.ROOT)::endsWith))
                            .sorted().forEach(names::add);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
        return names.stream();
    }

    private List<String> checks() {
        List<String> checks = new ArrayList<>(List.of(
                "Registry: the title of the chassis and its brands; whether the engine change is approved and entered.",
                "Inspection body: whether it passes as it stands, emissions included.",
                "The stamped numbers of chassis, engine and gearbox against the papers of both cars."));
        switch (reader) {
            case BUYER -> checks.addAll(List.of("A mechanic of your own: the work itself, before you pay.",
                    "The seller's odometer statement: the mileage of the chassis, and that an instrument cluster may be another car's.",
                    "Your insurer: what it would pay, and on which papers."));
            case LENDER -> checks.addAll(List.of("A qualified appraiser, where your rules ask for one.",
                    "The insurer: that the change is declared and covered."));
            case INSURER -> checks.addAll(List.of("The receipts named above, and photographs of the work.",
                    "The basis of the policy: agreed sum, market value, or stated sum."));
            case SELF -> checks.addAll(List.of("Insurer and lender: in writing, before the change.",
                    "A tax adviser: what parts and car bring in."));
        }
        return checks;
    }
}
