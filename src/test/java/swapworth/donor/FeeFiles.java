package swapworth.donor;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Currency;
import java.util.List;
import java.util.OptionalDouble;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Keys;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;

/** Fee tables for tests. */
final class FeeFiles {
    static final Currency USD = Currency.getInstance("USD");
    static final Path REFERENCE = Path.of("src", "test", "resources", "reference", "fee-tables");

    private FeeFiles() {
    }

    static FeeSchedule read(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        return FeeSchedule.read(file, FolderSettings.of(folder, Conventions.unstated()), USD, Assumptions.defaults());
    }

    static FeeSchedule of(Path folder, String... lines) throws IOException {
        Path file = folder.resolve("fees.csv");
        Files.write(file, List.of(lines));
        return read(file);
    }

    static List<BigDecimal[]> rows(String name) throws IOException {
        return Files.readAllLines(REFERENCE.resolve(name)).stream().skip(1)
                .map(line -> java.util.Arrays.stream(line.split(",")).map(BigDecimal::new).toArray(BigDecimal[]::new)).toList();
    }

    static Purchase bid(String amount) {
        return bid(new BigDecimal(amount));
    }

    /** A bid at an auction for a car that drives, with keys, at no stated distance. */
    static Purchase bid(BigDecimal amount) {
        return new Purchase("", amount, Seller.AUCTION, PriceIncludes.NEITHER, Runs.DRIVES, Keys.YES, OptionalDouble.empty());
    }
}
