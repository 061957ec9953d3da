package swapworth.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import swapworth.listing.CarsFile;
import swapworth.listing.ListingsRead;
import swapworth.market.PriceModel;
import swapworth.report.SwapSection;
import swapworth.swap.SwapAnswer;
import swapworth.swap.Swaps;

/** The step that values finished swaps. */
final class SwapSteps {
    private final Inputs inputs;
    private final Terminal terminal;

    SwapSteps(Inputs inputs, Terminal terminal) {
        this.inputs = inputs;
        this.terminal = terminal;
    }

    int swap(Arguments arguments) throws IOException {
        Path folder = inputs.folder(arguments.folder());
        Path listings = needed(folder.resolve(Inputs.LISTINGS));
        Path inPlay = needed(folder.resolve(Inputs.CARS));
        Inputs.keepApart(arguments, List.of(listings));
        ListingsRead read = Inputs.read(List.of(listings));
        if (read.listings().isEmpty()) {
            return terminal.nothing(read);
        }
        CarsFile cars = CarsFile.read(inPlay, read);
        PriceModel model = inputs.model(read, arguments, folder);
        terminal.account(read);
        terminal.printUndated(model);
        terminal.account(cars);
        new DonorSteps(inputs, terminal).accountOfParts(folder, cars, read.baseCurrency());
        Swaps swaps = swaps(folder, cars, read, model, arguments);
        if (swaps.answers().isEmpty()) {
            terminal.err().println("cars.csv: no car of the role 'finished'; write one row with role finished, the vehicle whose body it"
                    + " has, and running_gear or gear_line");
            return Exit.NOTHING_USABLE;
        }
        for (SwapAnswer answer : swaps.answers()) {
            // The result itself stands above.
            answer.tables().stream().skip(1).forEach(t -> terminal.out().print("\n" + t.text()));
        }
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), swaps.table().csv(), "the values of the finished cars");
        }
        if (arguments.page().isPresent()) {
            terminal.writePage(arguments.page().get(), SwapSection.page(swaps, cars));
        }
        return Exit.DONE;
    }

    /** The finished cars of a folder, the result of each printed. */
    Swaps swaps(Path folder, CarsFile cars, ListingsRead read, PriceModel model, Arguments arguments) {
        Swaps swaps = Swaps.of(folder, cars, read.baseCurrency(), model, arguments.on(), arguments.level());
        terminal.account(swaps);
        swaps.answers().forEach(a -> terminal.out().print("\n" + a.tables().get(0).text()));
        return swaps;
    }

    private static Path needed(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new NothingUsableException(file + ": there is no such file; this step needs listings.csv and cars.csv in the folder");
        }
        return file;
    }
}
