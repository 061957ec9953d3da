package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import swapworth.money.Money;
import swapworth.money.Rates;
import swapworth.reading.Conventions;
import swapworth.reading.DecimalMark;
import swapworth.reading.DistanceUnit;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;

class ListingsColumnsTest extends ReadingListings {

    private static final double MILES_OF_KM = 1 / 1.609344;

    @Test
    void every_column_of_the_format_is_understood() {
        Listing listing = one("id,seen_on,vehicle,trim,body,running_gear,power_kw,cylinders,weight_kg,driven_wheels,model_year,"
                + "first_registered,age_years,mileage,gear_mileage,mileage_status,gear_mileage_status,price,currency,price_kind,"
                + "price_includes,seller,region,distance_away,runs,rust,paint,interior,mechanical,records,keys,airbags,title,"
                + "damage,outcome,ended_on,saved,options,source,note,colour",
                "a1,2024-05-01,Roadster,Sport,shell R,gear S,110 kW,4,1050,rear,2010,2010-04-01,14.1,85000,40000,read,recorded,"
                + "9500.50,GBP,bid not met,both,auction,North,120,engine fires,sound,worn,bad,sound,worn,yes,fired,salvage,"
                + "front;left,withdrawn,2024-05-20,whole search,hard top,the yard,\"two lines\nof note\",green");
        CarFacts facts = listing.facts();
        assertEquals(Optional.of("a1"), listing.id());
        assertEquals(Optional.of(LocalDate.of(2024, 5, 1)), listing.seenOn());
        assertEquals(CarFacts.of("Roadster").trim("Sport").body("shell R").runningGear("gear S").powerKw(110).cylinders(4)
                .weightKg(1050)
                .drivenWheels(DrivenWheels.REAR).modelYear(2010).firstRegistered(LocalDate.of(2010, 4, 1)).ageYears(14.1)
                .mileage(new Mileage(85000, MileageStatus.READ)).gearMileage(new Mileage(40000, MileageStatus.RECORDED))
                .seller(Seller.AUCTION).region("North").distanceAway(120).runs(Runs.ENGINE_FIRES).rust(Condition.SOUND)
                .paint(Condition.WORN).interior(Condition.BAD).mechanical(Condition.SOUND).records(Condition.WORN).keys(Keys.YES)
                .airbags(Airbags.FIRED).title(Title.SALVAGE).damage(Set.of(Damage.FRONT, Damage.LEFT)).options("hard top")
                .further(Map.of("colour", "green")).build(), facts);
        assertEquals(new Price(Money.of("9500.50", "GBP"), 9500.5, PriceKind.BID_NOT_MET, PriceIncludes.BOTH), listing.price());
        assertEquals(Outcome.WITHDRAWN, listing.outcome());
        assertEquals(Optional.of(LocalDate.of(2024, 5, 20)), listing.endedOn());
        assertEquals(Saved.WHOLE_SEARCH, listing.saved());
        assertEquals(Optional.of("the yard"), listing.source());
        assertEquals(Optional.of("two lines\nof note"), listing.note());
        assertEquals(List.of(), listing.remarks());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"miles|85000|85000", "odometer|85,000|85000", "mileage_mi|85k|85000",
            "mileage_km|100000|62137.12",
        "KM|100000|62137.12", "Mileage (km)|100000|62137.12", "Odometer [miles]|85000|85000", "mileage in km|100000|62137.12"})
    void a_mileage_column_is_known_by_many_names(String header, String cell, double miles) {
        assertEquals(miles, one("vehicle;price;" + header, "A;9000;\"" + cell.replace("85,000", "85 000") + "\"").facts()
                .mileage()
                .orElseThrow().miles(), 0.01);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"price|USD|ASKING", "ask|USD|ASKING", "asking_price|USD|ASKING", "price_eur|EUR|ASKING",
        "Price (\u20ac)|EUR|ASKING", "PRICE GBP|GBP|ASKING", "sold price|USD|SOLD", "winning bid|USD|SOLD",
                "price_usd|USD|ASKING"})
    void a_price_column_is_known_by_many_names(String header, String currency, PriceKind kind) {
        Price price = one("vehicle,year," + header, "A,2010,9000").price();
        assertEquals(Money.of("9000", currency), price.typed());
        assertEquals(kind, price.kind());
    }

    @Test
    void maker_and_model_make_a_line() {
        assertEquals("Orrin Brace", one("make,model,year,price", "Orrin,Brace,2010,9000").facts().vehicle());
        assertEquals("Brace", one("make,vehicle,year,price", "Orrin,Brace,2010,9000").facts().vehicle());
    }

    @Test
    void further_columns_are_kept_by_their_header_in_lower_case() {
        assertEquals(Map.of("boot size", "wide", "days_listed", "5"),
                one("vehicle,year,price,Boot Size,days_listed,blank", "A,2010,9000,wide,5,").facts().further());
    }

    @Test
    void a_second_column_of_one_meaning_is_kept_as_a_further_one_and_said_so() {
        ListingsRead read = read("vehicle,odometer,mileage,price\nA,1,50000,9000\n");
        assertEquals(50000, read.listings().get(0).facts().mileage().orElseThrow().miles());
        assertEquals(Map.of("odometer", "1"), read.listings().get(0).facts().further());
        assertTrue(read.columns().get(1).how().contains("'mileage' is taken for mileage"));
    }

    @Test
    void the_unit_of_the_cell_counts_before_that_of_the_header_and_is_flagged() {
        ListingsRead read = read("vehicle,mileage_mi,price\nA,100000 km,9000\nA,50000,9000\n");
        assertEquals(100000 * MILES_OF_KM, read.listings().get(0).facts().mileage().orElseThrow().miles(), 1e-6);
        assertEquals(1, read.oddities().size());
        assertTrue(read.oddities().get(0).message().contains("the cell says km, its header says mi"));
        assertEquals(DistanceUnit.MI, read.distanceUnit());
    }

    @Test
    void the_unit_of_most_rows_is_that_of_the_collection() {
        assertEquals(DistanceUnit.KM, read("vehicle,mileage_km,price\nA,100000,9000\nA,50000,9000\n").distanceUnit());
    }

    @Test
    void horsepower_and_pounds_become_kilowatts_and_kilograms() {
        CarFacts facts = one("vehicle,year,price,power_hp,weight_lb", "A,2010,9000,100,2000").facts();
        assertEquals(74.57, facts.powerKw().orElseThrow(), 0.01);
        assertEquals(907.18, facts.weightKg().orElseThrow(), 0.01);
    }

    @Test
    void no_damage_is_a_fact_and_a_blank_is_none() {
        assertEquals(Optional.of(Set.of()), one("vehicle,year,price,damage", "A,2010,9000,none").facts().damage());
        assertEquals(Optional.empty(), one("vehicle,year,price,damage", "A,2010,9000,").facts().damage());
    }

    @Test
    void names_that_differ_in_case_are_one_and_said_so() {
        ListingsRead read = read("vehicle,year,price\nRoadster,2010,9000\nROADSTER,2011,9000\n");
        assertEquals("Roadster", read.listings().get(1).facts().vehicle());
        assertTrue(read.oddities().get(0).message().contains("taken for 'Roadster'"));
    }

    @Test
    void the_words_of_the_folder_are_used_and_said_so() {
        write("words.csv", "column,word,means\n*,decimal mark,comma\n*,mileage unit,km\n*,currency,EUR\nruns,blown,engine dead\n"
                + "vehicle,Rdstr,Roadster\ncolour,grn,green\n");
        ListingsRead read = read("vehicle;mileage;price;runs;colour\nRdstr;85.000;12.500;blown;grn\n");
        Listing listing = read.listings().get(0);
        assertEquals("Roadster", listing.facts().vehicle());
        assertEquals(85000 * MILES_OF_KM, listing.facts().mileage().orElseThrow().miles(), 1e-6);
        assertEquals(Money.of("12500", "EUR"), listing.price().typed());
        assertEquals(Runs.ENGINE_DEAD, listing.facts().runs());
        assertEquals("green", listing.facts().further().get("colour"));
        assertTrue(read.notes().get(0).contains("words.csv"));
    }

    @Test
    void stated_conventions_count_before_the_words_of_the_folder() {
        write("words.csv", "column,word,means\n*,decimal mark,comma\n");
        ListingsRead read = Listings.withDefaults().with(Conventions.unstated().with(DecimalMark.POINT))
                .readFiles(write("listings.csv", "vehicle;year;price\nA;2010;12,500\n"));
        assertEquals(12500, read.listings().get(0).price().amount());
    }

    @Test
    void other_currencies_are_converted_at_the_day_or_set_aside() {
        write("rates.csv", "date,from,to,rate\n2024-01-01,EUR,USD,1.1\n2024-06-01,EUR,USD,1.2\n");
        ListingsRead read = read("seen_on,vehicle,year,price\n2024-03-01,A,2010,$9000\n2024-03-02,A,2011,$9000\n"
                + "2024-03-02,A,2011,$9000\n".repeat(5)
                + "2024-03-01,A,2012,EUR 1000\n"
                + "2024-07-01,A,2013,EUR 1000\n2023-01-01,A,2014,EUR 1000\n2024-03-01,A,2015,GBP 1000\n,A,2016,EUR 1000\n");
        assertEquals(List.of(1100.0, 1200.0), read.listings().stream().skip(7).map(l -> l.price().amount()).toList());
        assertEquals(Money.of("1000", "EUR"), read.listings().get(7).price().typed());
        assertEquals(3, read.setAside().size());
        assertTrue(read.setAside().get(0).message().contains("no rate from EUR to USD on or before 2023-01-01"), read.setAside()
                .toString());
        assertTrue(read.setAside().get(1).message().contains("no rate from GBP to USD"));
        assertTrue(read.setAside().get(2).message().contains("no day"));
    }

    @Test
    void the_base_currency_can_be_stated() {
        ListingsRead read = Listings.withDefaults().withBaseCurrency(Currency.getInstance("EUR"))
                .with(Rates.of(List.of(new Rates.Rate(LocalDate.of(2024, 1, 1), Currency.getInstance("EUR"),
                Currency.getInstance("USD"),
                        new BigDecimal("1.25")))))
                .readFiles(write("listings.csv", "seen_on,vehicle,year,price_usd\n2024-03-01,A,2010,1000\n"));
        assertEquals(800, read.listings().get(0).price().amount(), 1e-9);
    }

    @Test
    void facts_of_lines_stand_in_where_a_row_says_nothing() {
        write("lines.csv", "vehicle,trim,running_gear,power_kw,cylinders\nA,,six,150,6\nA,Sport,,180,\n");
        ListingsRead read = read("vehicle,trim,year,price,power_kw\nA,,2010,9000,\nA,sport,2010,9000,\nA,Sport,2010,9000,199\n");
        assertEquals(List.of(OptionalDouble.of(150), OptionalDouble.of(180), OptionalDouble.of(199)),
                read.listings().stream().map(l -> l.facts().powerKw()).toList());
        assertEquals(List.of("six", "six", "six"), read.listings().stream().map(l -> l.facts().runningGear().orElse(""))
                .toList());
        assertTrue(read.notes().get(0).contains("lines.csv"));
    }

    @Test
    void several_files_make_one_collection() {
        Path first = write("one.csv", "id,seen_on,vehicle,year,price\nx,2024-01-01,A,2010,9000\n");
        Path second = write("two.csv", "id;seen_on;vehicle;km;price\nx;2024-02-01;A;100000;8500\n");
        ListingsRead read = Listings.withDefaults().readFiles(first, second);
        assertEquals(2, read.counts().used());
        assertEquals(1, read.cars().size());
        assertEquals(OptionalInt.of(2010), read.cars().get(0).facts().modelYear());
        assertTrue(read.cars().get(0).facts().mileage().isPresent());
        assertEquals(List.of("one.csv", "two.csv"), read.listings().stream().map(l -> l.origin().file()).toList());
    }

    @Test
    void a_name_is_one_however_it_is_joined_and_shown_as_most_rows_have_it() {
        ListingsRead read = read("vehicle,trim,year,price,region\nBRACKEN-HOLT,Ful-S,2010,9000,Norrow\nBrackenholt,FulS,2011,9100,NORROW\n"
                + "Brackenholt,Ful S,2012,9200,Norrow\nCorvane 7,FulS,2012,9200,\nCorvane7 2,,2012,9200,\nCorvane72,,2012,9200,\n");
        assertEquals(List.of("Brackenholt", "Brackenholt", "Brackenholt", "Corvane 7", "Corvane7 2", "Corvane72"), read.listings().stream()
                .map(l -> l.facts().vehicle()).toList());
        assertEquals(List.of("FulS", "FulS", "FulS", "FulS"), read.listings().stream().flatMap(l -> l.facts().trim().stream()).toList());
        assertEquals(List.of("2 vehicle BRACKEN-HOLT: taken for 'Brackenholt', which is spelt otherwise elsewhere",
                "2 trim Ful-S: taken for 'FulS', which is spelt otherwise elsewhere",
                "3 region NORROW: taken for 'Norrow', which is spelt otherwise elsewhere",
                "4 trim Ful S: taken for 'FulS', which is spelt otherwise elsewhere"), read.oddities().stream()
                .map(p -> p.line() + " " + p.column() + " " + p.rawText() + ": " + p.message()).toList());
    }

    @Test
    void words_of_a_column_are_known_however_they_are_joined() {
        write("words.csv", "column,word,means\nruns,dead-as-a-doornail,engine dead\n");
        ListingsRead read = read("vehicle,year,price,runs\nA,2010,9000,NonRunner\nA,2010,9000,non-runner\n"
                + "A,2010,9000,Dead as a door nail\n");
        assertEquals(List.of(), read.unmatchedWords());
        assertEquals(read.listings().get(0).facts().runs(), read.listings().get(1).facts().runs());
        assertEquals(Runs.ENGINE_DEAD, read.listings().get(2).facts().runs());
    }

    /** 125 PS are 91.94 kW (75 kgf m/s each), 123 hp 91.72 kW (550 ft lbf/s each), 2,205 lb 1000.17 kg. */
    @Test
    void a_power_or_a_weight_may_carry_its_own_unit_as_a_distance_may() {
        String head = "vehicle;year;price;power_kw;weight_kg\n";
        List<Double> kw = new java.util.ArrayList<>();
        for (String cell : List.of("92", "92 kW", "125 PS", "125ps", "123 hp", "123 BHP")) {
            CarFacts facts = read(head + "A;2010;9000;" + cell + ";2205 lbs\n").listings().get(0).facts();
            kw.add(facts.powerKw().orElseThrow());
            assertEquals(1000.17, facts.weightKg().orElseThrow(), 0.01);
        }
        double[] expected = {92, 92, 91.94, 91.94, 91.72, 91.72};
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], kw.get(i), 0.01);
        }
        assertEquals(74.57, one("vehicle,year,price,power_hp", "A,2010,9000,100 hp").facts().powerKw().orElseThrow(), 0.01);
        assertEquals(92, one("vehicle,year,price,power_hp", "A,2010,9000,92 kW").facts().powerKw().orElseThrow(), 0.01);
        List<String> odd = read(head + "A;2010;9000;92kW (125 PS);viel\nA;2010;9100;0;12 t\n").oddities().stream()
                .map(p -> p.column() + " '" + p.rawText() + "' " + p.message()).toList();
        assertEquals(List.of("power_kw '92kW (125 PS)' two numbers in one cell; which one is meant?; not used",
                "weight_kg 'viel' this is no number; not used", "power_kw '0' this is no number above 0; not used",
                "weight_kg '12 t' this is no number; write the digits alone; not used"), odd);
    }

    @Test
    void a_month_in_a_column_of_years_is_told_where_it_belongs() {
        for (String cell : List.of("03/2011", "EZ 2011", "2011/12", "'14")) {
            RowProblem problem = read("vehicle,model_year,price\nA," + cell + ",9000\n").rejected().get(0);
            assertEquals("2 model_year " + cell, problem.line() + " " + problem.column() + " " + problem.rawText());
            assertTrue(problem.message().endsWith("; write the year with four digits, such as 2011; a month or a day of first registration"
                    + " belongs into a column first_registered"), problem.message());
        }
    }

    @Test
    void every_row_and_column_of_lines_csv_is_accounted_for() {
        write("lines.csv", "vehicle,trim,power_kw,body,colour,price_usd,note\nTarnwick,,190,Fell Side,red,9.000,seen once\n"
                + "tarn-wick,,150,,,,\nTARNWICK,,120,,,,\nTarnwik,,110,,,,\nTarnwick,Sport,140,,,,\nTotal,,600,,,,\nVelmarch,,viel,,,,\n");
        ListingsRead read = read("vehicle,year,price,body\nTarnwick,2010,9000,\nTarnwick,2011,9100,FELL-SIDE\nVelmarch,2011,9100,\n"
                + "Velmarch,2011,9100,\n");
        assertEquals(OptionalDouble.of(190), read.listings().get(0).facts().powerKw(), "the first row of a line counts");
        assertEquals(Optional.of("FELL-SIDE"), read.listings().get(0).facts().body(), "as the rows of the listings have it");
        assertEquals(List.of("the facts of a line stand in where a row says nothing of them: lines.csv, 7 rows: 4 used, 3 set aside, 0"
                + " rejected, 0 blank"), read.notes());
        assertEquals(List.of("SET_ASIDE 3 this line stands on line 2 already, and that row counts: put all that is to be said of it there",
                "SET_ASIDE 4 this line stands on line 2 already, and that row counts: put all that is to be said of it there",
                "ODD 5 no listing that can be used is of this line: the row can speak of cars in cars.csv only; did you mean Tarnwick?",
                "ODD 6 no listing that can be used is of this trim: the row can speak of cars in cars.csv only",
                "SET_ASIDE 7 " + Spelling.IS_TOTAL, "ODD 8 this is no number; not used"), read.oddities().stream().filter(p -> p
                        .file().equals("lines.csv") && p.line() > 1).map(p -> p.kind() + " " + p.line() + " " + p.message()).toList());
        assertEquals(List.of("colour: this column is not used", "price_usd: this column is not used"), read.oddities().stream().filter(p ->
                p.file().equals("lines.csv") && p.line() == 1).map(p -> p.column() + ": " + p.message()).toList());
    }
}
