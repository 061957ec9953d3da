package swapworth.world;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SampleListingsTest {

    @Test
    void the_committed_files_are_what_the_generator_makes() throws IOException {
        for (Map.Entry<String, String> file : WriteSample.files().entrySet()) {
            String committed = Files.readString(Path.of(file.getKey()));
            assertEquals(-1, Arrays.mismatch(file.getValue().toCharArray(), committed.toCharArray()), file.getKey()
                    + " differs from this character on; DEVELOPERS.md says under 'The sample' how to write it anew");
        }
    }
}
