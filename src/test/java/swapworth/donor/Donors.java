package swapworth.donor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.assumptions.Question;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarsFile;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;

/** Donors and recipients for tests, in a folder of their own. */
final class Donors {
    private final Path folder;

    Donors(Path folder) {
        this.folder = folder;
    }

    Donors file(String name, String... lines) throws IOException {
        Files.write(folder.resolve(name), List.of(lines));
        return this;
    }

    FolderSettings settings() {
        return FolderSettings.of(folder, Conventions.unstated());
    }

    List<CandidateCar> cars() {
        return CarsFile.read(folder.resolve("cars.csv"), FeeFiles.USD).cars();
    }

    PartoutFile partout() {
        return PartoutFile.read(folder.resolve("partout.csv"), cars(), settings(), FeeFiles.USD);
    }

    PartOffers offers() {
        Path parts = folder.resolve("parts.csv");
        return Files.exists(parts) ? PartOffers.read(parts, settings(), FeeFiles.USD) : PartOffers.none();
    }

    PartOut partOut(int car, MarketState state, Assumptions assumptions) {
        PartsMarket market = PartsMarket.fit(offers(), Map.of(), Optional.empty(), assumptions);
        return PartOut.of(cars().get(car), partout(), market, state, assumptions);
    }

    /** Our assumptions with some middles replaced and, where asked, no spread at all in what a donor gives back. */
    static Assumptions assuming(boolean unsure, Object... namesAndMiddles) {
        Assumptions assumptions = Assumptions.defaults();
        if (!unsure) {
            for (Assumption a : new ArrayList<>(assumptions.all())) {
                boolean scale = a.note().isEmpty() || a.name().startsWith("spread_") || a.name().equals("part_error");
                if (a.question() == Question.DONOR && !scale) {
                    assumptions = assumptions.with(with(a, a.middle(), 0));
                }
            }
        }
        for (int i = 0; i < namesAndMiddles.length; i += 2) {
            Assumption a = assumptions.get((String) namesAndMiddles[i]);
            assumptions = assumptions.with(with(a, ((Number) namesAndMiddles[i + 1]).doubleValue(), unsure ? a.spread() : 0));
        }
        return assumptions;
    }

    static Assumption with(Assumption a, double middle, double spread) {
        return new Assumption(a.name(), a.question(), middle, spread, a.unit(), a.source(), a.note());
    }

    /** Everything certain, at once, and free: what is stated in the rows is all that happens. */
    static Assumptions plain(Object... namesAndMiddles) {
        List<Object> all = new ArrayList<>(List.of("horizon_months", 1, "selling_fee", 0, "selling_fee_fixed", 0, "packing",
                0, "packing_hours", 0,
                "returns", 0, "holding_cost", 0, "hulk_value", 0, "core_value", 0, "parts_move", 0, "part_drift", 0, "chance_present", 100,
                "postage_charged", 100, "listing_pace", 1_000_000));
        all.addAll(List.of(namesAndMiddles));
        return assuming(false, all.toArray());
    }
}
