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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.reading.DistanceUnit;
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
    void words_csv_may_speak_of_the_words_of_a_column_by_the_header_in_the_file() {
        words("header,Fahrzeug,vehicle\nheader,Modelljahr,model_year\nheader,Preis,price_eur\nheader,Zustand,runs\nheader,Schaden,damage\n"
                + "Zustand,tot,engine dead\nSchaden,vorne,front\nSchaden,hinten,rear\n");
        ListingsRead read = read("Fahrzeug;Modelljahr;Preis;Zustand;Schaden\nSivrette;2014;9.800;tot;\"vorne; hinten\"\n");
        CarFacts facts = read.listings().get(0).facts();
        assertEquals(Runs.ENGINE_DEAD, facts.runs());
        assertEquals(Optional.of(java.util.Set.of(Damage.FRONT, Damage.REAR)), facts.damage());
        assertEquals(List.of(), read.unmatchedWords());
    }

    @Test
    void a_header_that_states_unit_or_currency_still_does_where_the_name_in_its_place_does_not() {
        words("header,Fahrzeug,vehicle\nheader,Modelljahr,model_year\nheader,Laufleistung (km),mileage\nheader,Preis (\u20ac),price\n");
        ListingsRead read = read("Fahrzeug;Modelljahr;Laufleistung (km);Preis (\u20ac)\nSivrette;2014;92.000;9.800\n");
        assertEquals("EUR", read.baseCurrency().getCurrencyCode());
        assertEquals("92,000 km", read.listings().get(0).facts().mileage().orElseThrow().words());
        assertEquals(List.of("running_gear"), read.questions().stream().map(p -> p.column()).toList(), "neither unit nor currency");
    }

    @ParameterizedTest
    @ValueSource(strings = {"Preis_EUR", "Preis_eur", "Preis-Eur", "Preis EUR", "Preis (EUR)", "Preis/\u20ac", "Preis in Euro"})
    void the_currency_of_a_header_counts_however_it_is_joined_to_it(String header) {
        words("header,Fahrzeug,vehicle\nheader,Modelljahr,model_year\nheader," + header + ",price\n");
        ListingsRead read = read("Fahrzeug;Modelljahr;" + header + "\nSivrette;2014;9.800\n");
        assertEquals("EUR", read.baseCurrency().getCurrencyCode());
        assertEquals(List.of("running_gear"), read.questions().stream().map(p -> p.column()).toList());
    }

    @ParameterizedTest
    @CsvSource({"Preis EUR,price_usd,EUR", "Preis_eur,price_usd,EUR", "Laufleistung_km,mileage_mi,km", "Laufleistung (km),miles,km",
        "Leistung PS,power_kw,ps", "Gewicht [lb],weight_kg,lb"})
    void a_file_whose_header_says_otherwise_than_the_name_in_its_place_is_refused(String header, String name, String unit) {
        words("header," + header + "," + name + "\n");
        String message = assertThrows(UnusableFileException.class, () -> read("vehicle;model_year;" + header + "\nSivrette;2014;9800\n"))
                .getMessage();
        assertTrue(message.contains("the header '" + header + "' says " + unit + ", and words.csv takes it for " + name + ": which is "
                + "right?"), message);
    }

    @Test
    void a_header_in_horsepower_or_pounds_still_is_where_the_name_in_its_place_states_no_unit() {
        words("header,Leistung (PS),power\nheader,Gewicht lb,weight\n");
        CarFacts facts = read("vehicle;model_year;price;Leistung (PS);Gewicht lb\nSivrette;2014;9.800;100;1.000\n").listings().get(0)
                .facts();
        assertEquals(73.549875, facts.powerKw().orElseThrow(), 1e-9);
        assertEquals(453.59237, facts.weightKg().orElseThrow(), 1e-9);
    }

    @Test
    void a_planned_bid_may_state_its_currency_in_its_header() {
        write("rates.csv", "date,from,to,rate\n2026-01-01,GBP,EUR,2\n");
        Currency euro = Currency.getInstance("EUR");
        CarsFile cars = CarsFile.read(write("cars.csv", "name,role,vehicle,price_usd,planned_bid_gbp\nhit,donor,Saloon,,5000\n"), euro);
        assertEquals(List.of(), cars.oddities());
        assertEquals("GBP 5000", cars.cars().get(0).priceOrBid().orElseThrow().typed().toString());
        words("header,Gebot_GBP,planned_bid\n");
        CarsFile own = CarsFile.read(write("cars.csv", "name,role,vehicle,Gebot_GBP\nhit,donor,Saloon,5000\n"), euro);
        assertEquals(10_000, own.cars().get(0).priceOrBid().orElseThrow().amount(), 1e-9);
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
