package swapworth.project;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.donor.FeeSchedule;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;

/** The files of a folder that speak of the money: what each says, what became of its rows, and what those that are missing would answer. */
final class UndertakingFiles {
    private final Path folder;
    private final List<String> missing = new ArrayList<>();
    private final List<RowsRead> read = new ArrayList<>();

    UndertakingFiles(Path folder) {
        this.folder = folder;
    }

    Answer<Ledger> ledger(Ledger.Options options) {
        return file("ledger.csv", "the money of the undertaking: what is spent, still to come and left, finish or stop, redo cost")
                .map(options::read).flatMap(l -> usable(l, l.read(), (int) l.all().count()));
    }

    Answer<Gates> gates() {
        Answer<Gates> gates = file("gates.csv", "what must be settled first: lawful, may be stripped, inspectable, insurable, lender told")
                .map(Gates::read);
        gates.told().ifPresent(g -> read.add(g.read()));
        return gates;
    }

    Answer<Alternatives> alternatives(Alternatives.Options options) {
        return file("alternatives.csv", "against what: the factory car, tuning the engine that is there, the cheaper swap")
                .map(options::read).flatMap(a -> usable(a, a.rowsRead(), a.all().size()));
    }

    FeeSchedule fees(Currency currency, Assumptions assumptions) {
        return file("fees.csv", "what a purchase costs beside the price: when to walk away, now or later").match(
                file -> FeeSchedule.read(file, settings(), currency, assumptions), none -> FeeSchedule.none(currency));
    }

    /** What the listings say, where they were read, or which of the files is not there. */
    Answer<Undertaking.Market> market(Optional<Undertaking.Market> market) {
        List<String> absent = Stream.of("listings.csv", "cars.csv").filter(name -> !Files.isRegularFile(folder.resolve(name))).toList();
        if (market.isEmpty()) {
            missing.add((absent.isEmpty() ? "usable rows of listings.csv" : String.join(" and ", absent)) + " (listings of such cars, and a"
                    + " row of the role finished in cars.csv): what the finished car is worth, and with it what is left, finish or stop,"
                    + " and now or later.");
        }
        return Answer.of(market, () -> CannotTell.without(absent.isEmpty() ? "no row of listings.csv can be used"
                : "there is no " + String.join(" and no ", absent),
                "listings.csv (listings of such cars) and cars.csv (the cars in play, and the finished one as a row of the role"
                + " finished)"));
    }

    FolderSettings settings() {
        return FolderSettings.of(folder, Conventions.unstated());
    }

    /** Adds what further files and rows would answer. */
    void lack(List<String> sentences) {
        missing.addAll(sentences);
    }

    /** Adds what became of rows that were read elsewhere. */
    void account(RowsRead rows) {
        read.add(rows);
    }

    List<String> missing() {
        return List.copyOf(missing);
    }

    List<RowsRead> read() {
        return List.copyOf(read);
    }

    private Answer<Path> file(String name, String answers) {
        Path file = folder.resolve(name);
        if (Files.isRegularFile(file)) {
            return new Answer.Told<>(file);
        }
        missing.add(name + " (" + answers + ").");
        return new Answer.NotTold<>(CannotTell.without("there is no " + name, "that file (" + answers + ")"));
    }

    /** Keeps the account of a file's rows; a file without a usable row answers nothing, and says so. */
    private <T> Answer<T> usable(T found, RowsRead rows, int count) {
        read.add(rows);
        if (count > 0) {
            return new Answer.Told<>(found);
        }
        missing.add("Usable rows: " + rows.sentence() + ".");
        return new Answer.NotTold<>(CannotTell.without("no row can be used: " + rows.sentence(), "usable rows"));
    }
}
