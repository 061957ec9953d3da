package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.reading.Conventions;
import swapworth.reading.Currencies;
import swapworth.reading.FolderSettings;

class PartIdsTest {

    @TempDir
    Path folder;

    private PartOffers read(String rows) throws IOException {
        Path file = folder.resolve("parts.csv");
        Files.writeString(file, "id,part,vehicle,mileage_mi,price\n" + rows);
        return PartOffers.read(file, FolderSettings.of(folder, Conventions.unstated()), Currencies.USUAL);
    }

    @Test
    void an_offer_seen_again_counts_once() throws IOException {
        PartOffers offers = read("p-1,engine,Velmarch,60000,3000\nP1,engine,Velmarch,60000,2800\np-1,engine,,,2700\n");
        assertEquals(1, offers.count());
        assertEquals(2700, offers.offers().get(0).price());
        assertEquals(List.of(), offers.read().problems());
    }

    @Test
    void an_id_that_stands_for_other_parts_swallows_none_of_them() throws IOException {
        // A column that holds where each was seen, or who sells it, under the header id.
        PartOffers offers = read("yard,engine,Velmarch,60000,3000\nyard,gearbox,Velmarch,60000,900\nyard,engine,Velmarch,99000,2100\n"
                + "yard,engine,Sivrette,60000,1500\n");
        assertEquals(4, offers.count());
        assertEquals(List.of("3 the id stands for another part, line or distance on line 2: taken for another offer; give each offer an"
                + " id of its own", "4 the id", "5 the id"), offers.read().oddities().stream()
                .map(p -> p.line() + " " + (p.line() == 3 ? p.message() : p.message().substring(0, 6))).toList());
    }
}
