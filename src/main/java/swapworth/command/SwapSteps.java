package swapworth.command;

import java.io.IOException;
import java.io.PrintStream;
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
    private final Steps steps;
    private final PrintStream out;
    private final PrintStream err;

    SwapSteps(Steps steps, PrintStream out, PrintStream err) {
        this.steps = steps;
        this.out = out;
        this.err = err;
    }

    int swap(Arguments arguments) throws IOException {
        Path folder = steps.folder(arguments.folder());
        Path listings = needed(folder.resolve("listings.csv"));
        Path inPlay = needed(folder.resolve("cars.csv"));
        Steps.keepApart(arguments, List.of(listings));
        ListingsRead read = Steps.read(List.of(listings));
        if (read.listings().isEmpty()) {
            return steps.nothing(read);
        }
        CarsFile cars = CarsFile.read(inPlay, read);
        PriceModel model = steps.model(read, arguments, folder);
        steps.account(read);
        steps.printUndated(model);
        steps.account(cars);
        new DonorSteps(steps, out).accountOfParts(folder, cars, read.baseCurrency());
        Swaps swaps = swaps(folder, cars, read, model, arguments);
        if (swaps.answers().isEmpty()) {
            err.println("cars.csv: no car of the role 'finished'; write one row with role finished, the vehicle whose body it has, and"
                    + " running_gear or gear_line");
            return 1;
        }
        for (SwapAnswer answer : swaps.answers()) {
            // The result itself stands above.
            answer.tables().stream().skip(1).forEach(t -> out.print("\n" + t.text()));
        }
        if (arguments.out().isPresent()) {
            steps.write(arguments.out().get(), swaps.table().csv(), "the values of the finished cars");
        }
        if (arguments.page().isPresent()) {
            steps.writePage(arguments.page().get(), SwapSection.page(swaps, cars));
        }
        return 0;
    }

    /** The finished cars of a folder, the result of each printed. */
    Swaps swaps(Path folder, CarsFile cars, ListingsRead read, PriceModel model, Arguments arguments) {
        Swaps swaps = Swaps.of(folder, cars, read.baseCurrency(), model, arguments.on(), arguments.level());
        steps.account(swaps);
        swaps.answers().forEach(a -> out.print("\n" + a.tables().get(0).text()));
        return swaps;
    }

    private static Path needed(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new NothingUsableException(file + ": there is no such file; this step needs listings.csv and cars.csv in the folder");
        }
        return file;
    }
}
