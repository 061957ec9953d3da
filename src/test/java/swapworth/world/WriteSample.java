package swapworth.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Writes the sample folder and its truths: {@code WriteSample ROOT}, where ROOT is the top of the source tree. */
public final class WriteSample {

    /** The seed of the sample folder. */
    static final long SEED = 23;

    private WriteSample() {
    }

    /** Writes every file of {@link #files}. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("usage: WriteSample ROOT");
        }
        for (Map.Entry<String, String> file : files().entrySet()) {
            Path path = Path.of(arguments[0]).resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.writeString(path, file.getValue());
        }
    }

    /** The text of each committed file by its path from the top of the source tree. */
    static Map<String, String> files() {
        SampleWorld world = SampleWorld.generate(SEED);
        Map<String, String> files = new LinkedHashMap<>();
        world.files().forEach((name, text) -> files.put("sample-listings/" + name, text));
        // Of the builder's own as much as ours, so that the sample's figures are those of a folder without it.
        files.put("sample-listings/assumptions.csv", "name,middle,spread,unit,source\n"
                + "own_hour_rate,25,0,money per hour,what an evening job would pay me\n");
        files.put("sample-listings/fees.csv", PartsWorld.fees());
        files.put("sample-listings/parts.csv", PartsWorld.of(SEED).parts(world.lastEvening()));
        files.put("sample-listings/partout.csv", PartsWorld.partout());
        String reference = "src/test/resources/reference/sample-world/";
        files.put(reference + "truths.csv", TruthFiles.truths(world));
        files.put(reference + "cars.csv", TruthFiles.cars(world));
        files.put(reference + "slips.csv", TruthFiles.slips(world));
        files.put(reference + "SOURCE.md", TruthFiles.source());
        return files;
    }
}
