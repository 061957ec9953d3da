package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;

class PartsBadInputTest {
    @TempDir
    Path folder;
    private Donors donors;

    @BeforeEach
    void cars() throws IOException {
        donors = new Donors(folder).file("cars.csv", "name,role,vehicle,runs,driven_wheels", "front hit,donor,Velmarch,drives,rear",
                "shell,recipient,Sivrette,no engine,front");
    }

    private String partout(String row) throws IOException {
        RowsRead read = donors.file("partout.csv", "car,part,goes_to,state,chance_good,sells,days,fee,price,count,local_rule", row)
                .partout().read();
        assertEquals(1, read.used() + read.rejected().size() + read.setAside().size(), "the row is accounted for");
        return String.join(" | ", read.problems().stream().map(p -> p.kind() + " " + p.column() + ": " + p.message()).toList());
    }

    @Test
    void chances_outside_0_and_1_are_refused_and_per_cent_needs_its_sign() throws IOException {
        assertTrue(partout("front hit,wheels,sell,,1.2,,,,,,").startsWith("REJECTED chance_good: a chance lies between 0 and 1"));
        assertTrue(partout("front hit,wheels,sell,,,-0.1,,,,,").startsWith("REJECTED sells: a chance lies between 0 and 1"));
        assertTrue(partout("front hit,wheels,sell,,85,,,,,,").contains("with the sign, such as 85 %"));
        assertEquals("", partout("front hit,wheels,sell,,85 %,0.9,,,,,"));
    }

    @Test
    void one_part_that_is_to_bring_more_than_the_whole_car_is_asked_about() throws IOException {
        donors.file("cars.csv", "name,role,vehicle,runs,asking", "front hit,donor,Velmarch,drives,5300");
        assertEquals("QUESTION price: one part is to bring more than the whole car is to be had for, 5,300: is a decimal point or a digit"
                + " wrong? It is counted as it stands", partout("front hit,engine,sell,,,,,,18000,,"));
        assertEquals("", partout("front hit,engine,sell,,,,,,5300,,"));
    }

    @Test
    void a_part_that_the_car_does_not_have_is_set_aside_with_the_reason() throws IOException {
        assertTrue(partout("shell,engine,sell,,,,,,900,,").startsWith("ODD part: the car has no engine: the row brings nothing"));
        assertTrue(partout("front hit,front axle,sell,,,,,,90,,").contains("drives its rear wheels has no front axle"));
        assertTrue(partout("shell,propshaft,sell,,,,,,90,,").contains("drives its front wheels has no propshaft"));
        assertTrue(partout("front hit,engine core,sell,,,,,,90,,").contains("only a dead engine is sold as a core"));
        assertTrue(partout("front hit,enginee,sell,,,,,,90,,").contains("did you mean engine?"));
        assertTrue(partout("frnt hit,engine,sell,,,,,,90,,").contains("cars.csv has no such car; did you mean front hit?"));
    }

    @Test
    void a_word_that_says_a_part_is_no_good_brings_nothing_and_the_row_says_so() throws IOException {
        for (String word : List.of("bad", "broken", "destroyed")) {
            assertTrue(partout("front hit,wheels,sell," + word + ",,,,,,,").startsWith(
                    "ODD state: this is taken for gone: the part brings nothing"));
            assertEquals(Optional.of(PartState.GONE), donors.partout().rows("front hit").get(0).state());
            assertEquals("", partout("front hit,wheels,sell," + word + ",30 %,,,,,,"), "a stated chance counts, and says what was meant");
        }
        for (String word : List.of("gone", "missing", "doubtful", "")) {
            assertEquals("", partout("front hit,wheels,sell," + word + ",,,,,,,"));
        }
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nstate,kaputt,gone\nstate,hin,broken\n");
        assertEquals("", partout("front hit,wheels,sell,kaputt,,,,,,,"), "words.csv says outright what it means");
        assertTrue(partout("front hit,wheels,sell,hin,,,,,,,").startsWith("ODD state"));
    }

    @Test
    void words_csv_says_what_a_yes_of_the_local_rule_is_and_a_word_that_is_none_is_told_once() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nlocal_rule,ja,yes\nlocal_rule,nein,no\n");
        assertEquals("", partout("front hit,catalyst,sell,,,,,,200,,ja"));
        assertEquals("", partout("front hit,catalyst,sell,,,,,,200,,nein"));
        assertEquals("REJECTED local_rule: this is neither yes nor no; is it yes or no?",
                partout("front hit,catalyst,sell,,,,,,200,,vielleicht"));
    }

    @Test
    void an_offer_names_its_line_in_the_users_own_words_as_a_listing_does() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nvehicle,Velm.,Velmarch\nrunning_gear,6 Zyl.,six 3.2\n");
        PartOffers.Offer offer = donors.file("parts.csv", "part,vehicle,running_gear,price", "engine,Velm.,6 Zyl.,900").offers().offers()
                .get(0);
        assertEquals("velmarch six3.2", offer.vehicle() + " " + offer.gear());
    }

    @Test
    void words_days_fees_and_prices_that_make_no_sense_are_refused_or_listed() throws IOException {
        assertTrue(partout("front hit,wheels,gift,,,,,,,,").contains("REJECTED goes_to: this word is not understood"));
        assertTrue(partout("front hit,wheels,sell,so so,,,,,,,").contains("known are: present, likely good, doubtful, gone"));
        assertTrue(partout("front hit,wheels,sell,,,,0,,,,").startsWith("REJECTED days"));
        assertTrue(partout("front hit,wheels,sell,,,,,120,,,").startsWith("REJECTED fee"));
        assertTrue(partout("front hit,wheels,sell,,,,,,-40,,").startsWith("REJECTED price: this cannot be below 0"));
        assertEquals("", partout("front hit,hulk,sell,,,,,,-40,,"), "getting rid of the shell may cost money");
        assertTrue(partout("front hit,wheels,sell,,,,,,,0,").startsWith("REJECTED count"));
        assertTrue(partout("front hit,catalyst,sell,,,,,,200,,perhaps").startsWith("REJECTED local_rule"));
        assertTrue(partout(",wheels,sell,,,,,,,,").startsWith("REJECTED car"));
        assertTrue(partout("front hit,,sell,,,,,,,,").startsWith("REJECTED part"));
    }

    @Test
    void a_part_named_twice_counts_once() throws IOException {
        RowsRead read = donors.file("partout.csv", "car,part,price", "front hit,wheels,200", "front hit,alloys,250").partout().read();
        assertEquals(1, read.used());
        assertTrue(read.setAside().get(0).message().contains("stands in an earlier row"));
    }

    @Test
    void a_row_that_cannot_be_used_takes_no_place_from_a_later_one() throws IOException {
        RowsRead read = donors.file("partout.csv", "car,part,price,count", "front hit,wheels,call me,", "front hit,doors,100,1.5",
                "front hit,wheels,250,4.0").partout().read();
        assertEquals(1, read.used(), read.problems().toString());
        assertEquals("pieces are counted whole", read.rejected().get(1).message());
        assertEquals(250, donors.partout().rows("Front-Hit").get(0).price().getAsDouble());
        assertEquals(4, donors.partout().rows("front hit").get(0).count());
    }

    @Test
    void offers_in_other_currencies_need_a_rate_and_prices_of_nothing_are_set_aside() throws IOException {
        donors.file("parts.csv", "part,price,currency,seen_on,mileage", "engine,900,EUR,2026-01-05,", "engine,900,,2026-01-05,",
                "engine,0,,,", "engine,-5,,,", "engine,,,,", "engine,900,guilders,,", "engine,900,,31/31/2026,", "engine,1.000,,,-4");
        RowsRead read = donors.offers().read();
        assertEquals(1, read.used());
        assertEquals(List.of("no rate from EUR to USD; state one in rates.csv", "a price of 0 says nothing of what the part is worth",
                "the row has no price"), read.setAside().stream().map(p -> p.message()).toList());
        assertEquals(4, read.rejected().size(), read.rejected().toString());
        donors.file("rates.csv", "date,from,to,rate", "2026-01-01,EUR,USD,1.10");
        assertEquals(2, donors.offers().read().used());
        assertEquals(990, donors.offers().offers().get(0).price(), 1e-9);
    }

    @Test
    void an_offer_seen_again_counts_once_by_its_last_day() throws IOException {
        PartOffers offers = donors.file("parts.csv", "id,part,price,seen_on", "a,engine,900,2026-03-01", "a,engine,850,2026-04-01",
                "a,engine,870,2026-03-10", "b,engine,700,").offers();
        assertEquals(2, offers.count());
        assertEquals(850, offers.offers().get(0).price(), 1e-9);
        assertEquals(4, offers.read().used());
    }

    @Test
    void an_offer_whose_price_is_a_sign_for_nothing_is_set_aside() throws IOException {
        donors.file("parts.csv", "part,price", "wheels,n/a", "wheels,-", "engine,?", "engine,900");
        RowsRead read = PartOffers.read(folder.resolve("parts.csv"), FolderSettings.of(folder,
                Conventions.unstated()), FeeFiles.USD).read();
        assertEquals(List.of(1, 3), List.of(read.used(), read.setAside().size()));
    }

    @Test
    void a_row_that_sums_up_the_others_is_set_aside() throws IOException {
        assertTrue(partout("Total,,,,,,,,900,,").startsWith("SET_ASIDE car: this looks like a row that sums up the others"));
        assertTrue(partout("front hit,Summe,,,,,,,900,,").startsWith("SET_ASIDE part: this looks like a row that sums up the others"));
    }
}
