package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CarsFile;
import swapworth.reading.Conventions;
import swapworth.reading.Currencies;
import swapworth.reading.FolderSettings;

class OneCarTwiceTest {

    @TempDir
    Path folder;

    private List<String> told(String recipient, String donor) throws IOException {
        Path file = folder.resolve("cars.csv");
        Files.writeString(file, "name,role,vehicle,model_year,recipient,donor\ntidy,recipient,Sivrette,2016,,\nhit,donor,Velmarch,2019,,\n"
                + "mine,finished,Sivrette,2016," + recipient + "," + donor + "\n");
        CarsFile cars = CarsFile.read(file, Currencies.USUAL, Conventions.unstated());
        return FinishedCars.of(cars, FolderSettings.of(folder, Conventions.unstated()), Currencies.USUAL, Assumptions.defaults()).problems()
                .stream().map(p -> p.column() + " " + p.message()).toList();
    }

    @Test
    void one_car_as_recipient_and_donor_is_asked_about() throws IOException {
        assertEquals(List.of("donor the recipient and the donor are one car: which one gave the body, which one the gear?"),
                told("hit", "HIT"));
        assertEquals(List.of(), told("tidy", "hit"));
    }

    @Test
    void the_finished_car_is_neither_its_recipient_nor_its_donor() throws IOException {
        assertEquals(List.of("recipient this is the finished car itself: which car of cars.csv was its recipient?"), told("mine", "hit"));
        assertEquals(List.of("donor this is the finished car itself: which car of cars.csv was its donor?"), told("tidy", "Mine"));
    }
}
