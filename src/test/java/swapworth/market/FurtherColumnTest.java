package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.PriceIncludes;

/** What a column of the user's own tells, whichever way its cells are written. */
class FurtherColumnTest {
    private static final List<Integer> SIZES = List.of(1753, 2192, 1558, 1982, 1447, 1776, 1361, 1404, 1179, 1611, 1237, 2035, 1408, 1664);
    @TempDir
    private Path folder;

    /** By which factor a car of 2,150 is dearer than one of 1,250, in a world in which it is by 2.00, and how the column was taken. */
    private Map.Entry<Double, String> told(UnaryOperator<String> written, int at) throws IOException {
        StringBuilder rows = new StringBuilder("vehicle,age_years,mileage_mi,price,size\n");
        for (int i = 0; i < SIZES.size(); i++) {
            String size = i == at || at < 0 ? written.apply(SIZES.get(i).toString()) : SIZES.get(i).toString();
            rows.append("Sivrette,").append(4 + i % 5).append(',').append(50_000 + 3_000 * i).append(',')
                    .append(Math.round(16_000 * Math.pow(2, (SIZES.get(i) - 1250) / 900.0) * (1 + 0.02 * (i % 3)))).append(",\"")
                    .append(size).append("\"\n");
        }
        PriceModel model = PriceModel.options().withColumns(List.of("size"))
                .fit(Listings.read(Files.writeString(folder.resolve("listings.csv"), rows)).cars());
        Subject small = of("1250");
        Subject large = of("2150");
        return Map.entry(1 + model.difference(large, small).percent() / 100, model.columnsTaken().get(0));
    }

    private static Subject of(String size) {
        return new Subject(CarFacts.of("Sivrette").ageYears(6).mileage(new Mileage(70_000, MileageStatus.READ))
                .further(Map.of("size", size)).build(), LevelOfTrade.PRIVATE_ASKING, PriceIncludes.UNKNOWN, Optional.empty());
    }

    @Test
    void numbers_are_read_with_their_marks_and_their_unit() throws IOException {
        Map.Entry<Double, String> plain = told(s -> s, -1);
        assertEquals(2.0, plain.getKey(), 0.1);
        assertEquals("size: taken as numbers, 14 different", plain.getValue());
        assertEquals(plain, told(s -> s.charAt(0) + "," + s.substring(1), -1));
        assertEquals(plain, told(s -> s + " cc", -1));
        assertEquals(plain, told(s -> s + "cc", 3));
    }

    @Test
    void one_cell_that_is_no_number_or_mistyped_says_nothing_and_spoils_nothing() throws IOException {
        Map.Entry<Double, String> about = told(s -> "about " + s, 7);
        assertEquals(2.0, about.getKey(), 0.15);
        assertEquals("size: taken as numbers, 13 different; one row is no number and not used: 'about 1404'", about.getValue());
        Map.Entry<Double, String> mistyped = told(s -> s + "0000", 7);
        assertEquals(2.0, mistyped.getKey(), 0.15);
        assertTrue(mistyped.getValue().endsWith("one row is far from all others and not used: '14040000', is it mistyped?"));
    }

    @Test
    void words_that_differ_in_case_or_spaces_alone_are_one_in_the_spelling_of_most_rows() {
        FurtherColumn colours = new FurtherColumn("colour", Map.of("red", 2, "Red", 3, " blue", 1, "Blue", 1, "green", 9));
        assertEquals("colour: taken as words, 3 different", colours.sentence().split(", because")[0]);
        CarFacts red = CarFacts.of("Sivrette").further(Map.of("colour", "RED")).build();
        CarFacts black = CarFacts.of("Sivrette").further(Map.of("colour", "black")).build();
        assertEquals(Optional.of("Red"), colours.word(red));
        assertEquals(Optional.of("black"), colours.word(black));
        assertEquals(Optional.empty(), colours.word(CarFacts.of("Sivrette").build()));
        assertEquals("cc: taken as numbers, 2 different; one row is no number and not used: 'blue'",
                new FurtherColumn("cc", Map.of("1,250", 4, "1250 cc", 4, "1250", 4, "1400", 4, "1400 cc", 4, "blue", 1)).sentence());
    }

    @Test
    void a_column_of_words_says_because_of_which_cell() {
        FurtherColumn words = new FurtherColumn("badge", Map.of("sport", 5));
        assertEquals("badge: taken as words, 1 different, because of 'sport' and the like", words.sentence());
        assertTrue(new FurtherColumn("badge", Map.of("340s", 4, "340t", 3)).sentence().contains("as words"));
        assertTrue(new FurtherColumn("litres", Map.of("1,6", 4, "1,250", 3)).isNumbers());
    }
}
