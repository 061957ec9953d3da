package swapworth.command;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.ColumnUnderstood;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.PriceModel;
import swapworth.reading.Spelling;
import swapworth.table.TextLines;

/** The files that a run reads: which folder, its assumptions, its listings and their model, and outputs kept apart from them. */
final class Inputs {
    static final String LISTINGS = "listings.csv";
    static final String CARS = "cars.csv";
    static final String LEDGER = "ledger.csv";
    static final String GATES = "gates.csv";
    static final String ALTERNATIVES = "alternatives.csv";
    /** The files of a folder that are read. */
    private static final List<String> FILES = List.of(LISTINGS, CARS, "words.csv", "lines.csv", "rates.csv", "assumptions.csv", "fees.csv",
            "parts.csv", "partout.csv", "swaps.csv", LEDGER, GATES, ALTERNATIVES);

    private final Terminal terminal;
    private Optional<Assumptions> assumptions = Optional.empty();

    Inputs(Terminal terminal) {
        this.terminal = terminal;
    }

    /** Refuses to write over a file that is read, and to write two things into one file. */
    static void keepApart(Arguments arguments, List<Path> inputs) throws IOException {
        List<Path> read = new ArrayList<>(inputs);
        for (Path input : inputs) {
            for (String beside : FILES) {
                read.add(input.resolveSibling(beside));
            }
        }
        for (Optional<Path> output : List.of(arguments.out(), arguments.page())) {
            for (Path input : read) {
                if (output.isPresent() && Files.exists(output.get()) && Files.exists(input) && Files.isSameFile(output.get(), input)) {
                    throw new WrongUsageException(output.get() + ": this file is read; write to another one");
                }
            }
        }
        if (arguments.out().isPresent() && arguments.page().isPresent() && isOne(arguments.out().get(), arguments.page().get())) {
            throw new WrongUsageException(arguments.out().get() + ": the rows and the page cannot be written into one file; give --out and"
                    + " --page names of their own");
        }
    }

    private static boolean isOne(Path a, Path b) throws IOException {
        return a.toAbsolutePath().normalize().equals(b.toAbsolutePath().normalize())
                || Files.exists(a) && Files.exists(b) && Files.isSameFile(a, b);
    }

    /** The folder that a step works on; refused where it is none. */
    Path folder(Optional<Path> stated) {
        Path folder = chosen(stated);
        if (Files.isRegularFile(folder)) {
            throw new NothingUsableException(folder + ": this is a file; needed: the folder in which it lies");
        }
        if (!Files.isDirectory(folder)) {
            throw new NothingUsableException(folder + ": there is no such folder; needed: a folder with " + LISTINGS
                    + ", or one of the steps " + String.join(", ", Step.WORDS));
        }
        if (!Files.isExecutable(folder)) {
            throw new NothingUsableException(folder + ": no permission to look into this folder");
        }
        passedOver(folder).forEach(sentence -> terminal.out().print(TextLines.of("  ", sentence)));
        return folder;
    }

    /** What is not read of a folder though its owner may think so: files of another case or ending, and further listings. */
    static List<String> passedOver(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile).sorted().flatMap(file -> passedOver(folder, file).stream()).toList();
        } catch (IOException e) {
            // What cannot be listed may still hold files that can be read by their names.
            return List.of();
        }
    }

    private static Optional<String> passedOver(Path folder, Path file) {
        String name = String.valueOf(file.getFileName());
        String plain = name.toLowerCase(Locale.ROOT);
        String meant = plain.endsWith(".txt") ? plain.substring(0, plain.length() - 4).replace(".csv", "") + ".csv" : plain;
        if (FILES.contains(name)) {
            return Optional.empty();
        }
        if (FILES.contains(meant)) {
            return isRead(folder.resolve(meant), file) ? Optional.empty()
                    : Optional.of("not read: " + name + ", for the name must be " + meant);
        }
        return plain.startsWith("listings") && plain.endsWith(".csv") ? Optional.of("not read: " + name + "; put its rows into "
                + LISTINGS + ", or name both files after the step judge") : Optional.empty();
    }

    /** Where names are known in any case, as on Windows, a file is read under the plain one. */
    private static boolean isRead(Path meant, Path file) {
        try {
            return Files.exists(meant) && Files.isSameFile(meant, file);
        } catch (IOException e) {
            return false;
        }
    }

    /** The folder that was stated, else the working folder where it holds the user's files, else the sample. */
    Path chosen(Optional<Path> stated) {
        if (stated.isPresent()) {
            return stated.get();
        }
        Optional<Path> own = ownFolder(Path.of("."));
        if (own.isPresent()) {
            return own.get();
        }
        Path sample = sampleFolder();
        if (Files.isDirectory(sample)) {
            terminal.out().println("This is the sample; for your own files: swapworth FOLDER");
        }
        return sample;
    }

    /** The working folder, where it holds files of the user's own. */
    static Optional<Path> ownFolder(Path working) {
        return Stream.of(LISTINGS, CARS, LEDGER).map(working::resolve).anyMatch(Files::isRegularFile) ? Optional.of(working)
                : Optional.empty();
    }

    static String nameOf(Path folder) {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return name == null ? "listings" : name.toString();
    }

    /** The sample beside the jar's folder, else in the working folder. */
    private static Path sampleFolder() {
        Path here = Path.of("sample-listings");
        if (Files.isDirectory(here)) {
            return here;
        }
        try {
            Path jar = Path.of(Inputs.class.getProtectionDomain().getCodeSource().getLocation().toURI());
            Path above = jar.getParent() == null ? here : jar.getParent().resolveSibling("sample-listings");
            return Files.isDirectory(above) ? above : here;
        } catch (URISyntaxException e) {
            return here;
        }
    }

    static ListingsRead read(List<Path> files) {
        return Listings.withDefaults().readFiles(files.get(0), files.subList(1, files.size()).toArray(Path[]::new));
    }

    /** The model of listings by the assumptions of a folder, with the further columns that were asked for. */
    PriceModel model(ListingsRead read, Arguments arguments, Path folder) {
        Assumptions assumptions = assumptions(folder);
        TreeSet<String> columns = new TreeSet<>();
        if (!arguments.with().isEmpty()) {
            read.listings().forEach(l -> columns.addAll(l.facts().further().keySet()));
        }
        List<String> further = new ArrayList<>();
        for (String column : arguments.with()) {
            Optional<String> known = columns.contains(column) ? Optional.empty() : meaning(read, column)
                    .filter(PriceModel.ALWAYS_TAKEN::contains);
            if (known.isPresent()) {
                terminal.out().println("  --with: the column '" + column + (known.get().equals(column) ? "' is"
                        : "' is read as " + known.get() + ", which is") + " always in the model");
                continue;
            }
            further.add(column);
            if (!columns.contains(column)) {
                boolean empty = read.columns().stream().anyMatch(c -> c.meaning().isEmpty() && c.header().equals(column));
                throw new WrongUsageException("--with: " + (empty
                        ? "no used row says anything in the column '" + column + "'; the others are "
                        : "the files have no further column '" + column + "'; they have ")
                        + (columns.isEmpty() ? "none" : String.join(", ", columns)));
            }
        }
        PriceModel model = PriceModel.options().with(assumptions).withColumns(further).fit(read.cars());
        model.columnsTaken().forEach(taken -> terminal.out().print(TextLines.of("  ", "--with " + taken)));
        return model;
    }

    /** The column of listings that a header is read as, or that has the name itself. */
    private static Optional<String> meaning(ListingsRead read, String header) {
        return PriceModel.ALWAYS_TAKEN.contains(header) ? Optional.of(header) : read.columns().stream()
                .filter(c -> Spelling.key(c.header()).equals(Spelling.key(header)) && !c.meaning().isEmpty())
                .map(ColumnUnderstood::meaning).findFirst();
    }

    /** The assumptions of the one folder that a step is about; rows of its file that change nothing are told when it is read. */
    Assumptions assumptions(Path folder) {
        if (assumptions.isEmpty()) {
            Assumptions read = Assumptions.ofFolder(folder);
            terminal.account(read);
            assumptions = Optional.of(read);
        }
        return assumptions.get();
    }

    /** The folder in which a file lies. */
    static Path folderOf(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        return parent == null ? Path.of("") : parent;
    }

    /** The names of files, without their folders. */
    static String names(List<Path> files) {
        return String.join(", ", files.stream().map(f -> f.getFileName().toString()).toList());
    }
}
