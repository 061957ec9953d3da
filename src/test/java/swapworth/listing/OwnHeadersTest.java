package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import swapworth.reading.UnusableFileException;

/** Files whose headers are in another language. */
class OwnHeadersTest extends ReadingListings {
    private static final String HEADER = "Fahrzeug;Modelljahr;Laufleistung;Getriebe km;Preis;Farbe;Zustand\n";
    private static final String ROW = "Sivrette;2014;92.000;78.500;9.800;blau;tot\n";

    private void words(String more) {
        write("words.csv", "column,word,means\n*,decimal mark,comma\n" + more);
    }

    private void german() {
        words("header,Fahrzeug,vehicle\nheader,Modelljahr,model_year\nheader,Laufleistung,mileage_km\nheader,Getriebe km,gear_mileage_km\n"
                + "header,Preis,price_eur\nheader,Farbe,colour\nheader,Zustand,runs\nruns,tot,engine dead\nheader,Name,name\n");
    }

    @Test
    void a_header_means_what_words_csv_says_in_listings_and_in_cars_and_in_lines() {
        german();
        write("lines.csv", "Fahrzeug;power_kw\nSivrette;112\n");
        ListingsRead read = read(HEADER + ROW);
        assertEquals(List.of(), read.oddities());
        CarFacts facts = read.listings().get(0).facts();
        assertEquals("Sivrette", facts.vehicle());
        assertEquals(OptionalInt.of(2014), facts.modelYear());
        assertEquals("92,000 km", facts.mileage().orElseThrow().words());
        assertEquals("78,500 km, status unknown", facts.gearMileage().orElseThrow().toString());
        assertEquals(Runs.ENGINE_DEAD, facts.runs());
        assertEquals(112, facts.powerKw().orElseThrow());
        assertEquals(Map.of("colour", "blau"), facts.further(), "what is none of our columns is kept by the name that words.csv gives it");
        assertEquals("EUR", read.baseCurrency().getCurrencyCode());
        assertEquals(DistanceUnit.KM, read.distanceUnit());
        CarsFile cars = CarsFile.read(write("cars.csv", "Name;role;" + HEADER + "mine;donor;" + ROW), Currency.getInstance("EUR"));
        assertEquals(List.of(), cars.oddities());
        assertEquals(facts, cars.cars().get(0).facts());
    }

    @Test
    void a_header_that_states_unit_or_currency_still_does_where_the_name_in_its_place_does_not() {
        words("header,Fahrzeug,vehicle\nheader,Modelljahr,model_year\nheader,Laufleistung (km),mileage\nheader,Preis (\u20ac),price\n");
        ListingsRead read = read("Fahrzeug;Modelljahr;Laufleistung (km);Preis (\u20ac)\nSivrette;2014;92.000;9.800\n");
        assertEquals("EUR", read.baseCurrency().getCurrencyCode());
        assertEquals("92,000 km", read.listings().get(0).facts().mileage().orElseThrow().words());
        assertEquals(List.of("running_gear"), read.questions().stream().map(p -> p.column()).toList(), "neither unit nor currency");
    }

    @Test
    void a_row_that_sums_up_the_others_is_set_aside() {
        german();
        ListingsRead read = read(HEADER + ROW + "Summe;2014;92.000;78.500;9.800;;\n");
        assertEquals(1, read.listings().size());
        assertEquals(List.of("Summe"), read.setAside().stream().map(p -> p.rawText()).toList());
    }

    @Test
    void a_message_about_a_cell_names_the_header_as_it_stands_in_the_file() {
        german();
        ListingsRead read = read(HEADER + ROW.replace("92.000", "viele"));
        assertEquals(List.of("Laufleistung"), read.rejected().stream().map(p -> p.column()).toList());
    }

    @Test
    void all_columns_that_are_missing_are_named_at_once_with_the_way_out() {
        words("header,Farbe,colour\n");
        String message = assertThrows(UnusableFileException.class, () -> read(HEADER + ROW)).getMessage();
        assertTrue(message.contains("a column for the model line (vehicle, line, model), a column for the price (price, ask, price_usd, "
                + "price_eur) and a column for age or distance (model_year, first_registered, age_years, mileage_mi, mileage_km) are "
                + "missing"), message);
        assertTrue(message.contains("found the columns Fahrzeug, Modelljahr, Laufleistung, Getriebe km, Preis, Farbe (by words.csv: "
                + "colour),"),
                message);
        assertTrue(message.endsWith("words.csv beside it says so with a row such as header,your own header,vehicle below its first line,"
                + " column,word,means"), message);
        String cars = assertThrows(UnusableFileException.class, () -> CarsFile.read(write("cars.csv", HEADER + ROW),
                Currency.getInstance("EUR"))).getMessage();
        assertTrue(cars.contains("the column 'name' and a column for the model line (vehicle, line, model) are missing"), cars);
    }

    @Test
    void where_two_headers_mean_the_same_the_first_counts_and_the_other_is_kept() {
        words("header,Fahrzeug,vehicle\n");
        ListingsRead read = read("Fahrzeug;vehicle;mileage_km;price\nSivrette;Velmarch;92.000;9.800\n");
        assertEquals("Sivrette", read.listings().get(0).facts().vehicle());
        assertTrue(read.columns().get(1).how().contains("'Fahrzeug' is taken for vehicle"), read.columns().toString());
        assertEquals(Optional.of("Velmarch"), Optional.ofNullable(read.listings().get(0).facts().further().get("vehicle")));
    }

    @Test
    void a_distance_in_miles_stays_in_miles_and_each_row_keeps_its_own_unit() {
        words("");
        ListingsRead read = read("vehicle,mileage,price\nSivrette,57k mi,9000\nSivrette,91800 km,9100\n");
        assertEquals(List.of("57,000 mi", "91,800 km"), read.listings().stream()
                .map(l -> l.facts().mileage().orElseThrow().words()).toList());
    }
}
