package swapworth.world;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SampleListingsTest {

    @Test
    void the_committed_files_are_what_the_generator_makes() throws IOException {
        for (Map.Entry<String, String> file : WriteSample.files().entrySet()) {
            assertEquals(file.getValue(), Files.readString(Path.of(file.getKey())), file.getKey());
        }
    }
}
