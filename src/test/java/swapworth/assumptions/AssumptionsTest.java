package swapworth.assumptions;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.money.Rates;
import swapworth.reading.RowProblem;
import swapworth.statistics.Reference;

class AssumptionsTest {

    @TempDir
    Path folder;

    private Assumptions with(String text) throws IOException {
        Path file = folder.resolve("assumptions.csv");
        Files.writeString(file, text);
        return Assumptions.defaults().with(file);
    }

    @Test
    void a_row_on_an_amount_of_money_without_the_amount_changes_nothing() throws IOException {
        Rates yen = Rates.of(List.of(new Rates.Rate(LocalDate.of(2026, 1, 1), Currency.getInstance("USD"), Currency.getInstance("JPY"),
                new BigDecimal("150"))));
        double ours = Assumptions.defaults().get("own_hour_rate").middle();
        Assumptions read = with("name,middle,spread\nown_hour_rate,,5\n");
        assertEquals(1, read.problems().size());
        assertEquals(150 * ours, read.in(Currency.getInstance("JPY"), yen).get("own_hour_rate").middle(), 1e-9);
        assertEquals(3000, with("name,middle,spread\nown_hour_rate,3000,\n").in(Currency.getInstance("JPY"), yen).get("own_hour_rate")
                .middle());
        assertEquals(List.of("capital_rate"), with("name,middle,spread\ncapital_rate,6,1\ncapital_rate,7,1\n").changed());
    }

    @Test
    void a_table_counts_as_the_users_own_those_that_it_shows() throws IOException {
        Assumptions read = with("name,middle,spread\nown_hour_rate,30,0\n");
        assertTrue(read.table(Question.PROJECT).notes().contains("1 of them is the user's own (assumptions.csv)."));
        assertTrue(read.table(Question.MARKET).notes().get(0).startsWith("None of them is the user's own"));
    }

    @Test
    void every_assumption_has_a_source_a_unit_and_a_meaning() {
        assertTrue(Assumptions.defaults().all().size() > 50);
        for (Assumption one : Assumptions.defaults().all()) {
            assertFalse(one.source().isBlank(), one.name());
            assertFalse(one.unit().isBlank(), one.name());
            assertFalse(one.note().isBlank(), one.name());
        }
    }

    @Test
    void an_effect_in_per_cent_turns_into_log_points() {
        // By hand: ln 0.9 = -0.1053605, 0.05 / 0.9 = 0.0555556.
        assertEquals(-0.1053605, Assumptions.defaults().logMiddle("age_slope"), 1e-7);
        assertEquals(0.0555556, Assumptions.defaults().logSpread("age_slope"), 1e-7);
    }

    @Test
    void an_effect_that_is_stated_without_spread_is_as_good_as_known() throws IOException {
        assertEquals(1e-4, with("name,middle,spread\nage_slope,-10,0\n").logSpread("age_slope"));
        assertEquals(0, with("name,middle,spread\nown_price,0,0\n").logSpread("own_price"));
    }

    @Test
    void log_points_of_a_number_that_is_no_per_cent_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> Assumptions.defaults().logMiddle("error_scale"));
    }

    @Test
    void a_row_of_the_user_replaces_ours_and_blanks_leave_ours() throws IOException {
        Assumptions mine = with("name,middle,spread,source\nage_slope,-12.5,,my own ten cars\n");
        assertEquals(-12.5, mine.get("age_slope").middle());
        assertEquals(5, mine.get("age_slope").spread());
        assertEquals("my own ten cars", mine.get("age_slope").source());
        assertEquals(List.of("age_slope"), mine.changed());
        assertEquals(-10, Assumptions.defaults().get("age_slope").middle());
        assertTrue(mine.table().csv().contains("age_slope,-12.5,5,% per year,yours"));
    }

    @Test
    void an_assumption_replaced_twice_counts_as_one() {
        Assumption ours = Assumptions.defaults().get("age_slope");
        Assumptions twice = Assumptions.defaults().with(ours).with(ours);
        assertEquals(List.of("age_slope"), twice.changed());
        assertTrue(twice.table().text().contains("1 of them is the user's own"), twice.table().text());
    }

    @Test
    void an_unknown_name_is_reported_with_the_nearest_and_not_kept() throws IOException {
        Assumptions mine = with("name,middle\nage_slop,-12\n");
        assertEquals(1, mine.problems().size());
        assertEquals(2, mine.problems().get(0).line());
        assertTrue(mine.problems().get(0).message().contains("did you mean age_slope?"));
        assertThrows(IllegalArgumentException.class, () -> mine.get("age_slop"));
    }

    @Test
    void bad_numbers_are_reported_and_change_nothing() throws IOException {
        Assumptions mine = with("name,middle,spread,unit\nage_slope,abc,,\nmileage_slope,-3,-1,\ntitle_salvage,-100,,\n"
                + "miles_per_year,9000,,km per year\n");
        assertEquals(4, mine.problems().size());
        assertEquals(Assumptions.defaults().all(), mine.all());
    }

    @Test
    void numbers_are_read_by_the_decimal_mark_of_the_folder_as_in_its_other_files() throws IOException {
        String rows = "name;middle;spread\ncapital_rate;6,5;2\nmiles_per_year;12.500;\n";
        Assumptions unstated = with(rows);
        assertEquals(6.5, unstated.get("capital_rate").middle());
        assertTrue(unstated.problems().get(0).message().contains("which mark stands before decimals?"), unstated.problems().toString());
        Files.writeString(folder.resolve("words.csv"), "column;word;means\n*;decimal mark;comma\n");
        Assumptions comma = with(rows);
        assertEquals(java.util.List.of(6.5, 12_500.0), java.util.List.of(comma.get("capital_rate").middle(),
                comma.get("miles_per_year").middle()));
        assertEquals(java.util.List.of(), comma.problems());
    }

    @Test
    void a_number_with_which_nothing_can_be_worked_out_is_refused_by_its_row_and_limits() throws IOException {
        Assumptions mine = with("name,middle,spread\nspread_pairs,0,\nestimate_correlation,1.5,\nmistyped_prices,150,\nredo_age,-1,\n"
                + "horizon,100000,\nunfinished_share,300,\nlisting_pace,0,\npart_error,0.3,1000\n");
        assertEquals(List.of(2, 3, 4, 5, 6, 7, 8, 9), mine.problems().stream().map(RowProblem::line).toList());
        assertEquals("estimate_correlation: the middle must lie between 0 and 1 factor, not at 1.5", mine.problems().get(1).message());
        assertEquals("middle", mine.problems().get(1).column());
        assertEquals("spread", mine.problems().get(7).column());
        assertEquals(Assumptions.defaults().all(), mine.all());
        Assumption age = Assumptions.defaults().get("redo_age");
        Assumption young = new Assumption("redo_age", age.question(), -1, 0, age.unit(), "mine", "");
        assertThrows(IllegalArgumentException.class, () -> Assumptions.defaults().with(young));
    }

    @Test
    void amounts_are_taken_at_the_rate_of_the_folder_and_without_one_a_question_names_them() throws IOException {
        Currency yen = Currency.getInstance("JPY");
        Assumptions mine = with("name,middle\npacking,900\n");
        Rates rates = Rates.of(List.of(new Rates.Rate(LocalDate.of(2025, 1, 1), Currency.getInstance("USD"), yen, new BigDecimal(150))));
        Assumptions inYen = mine.in(yen, rates);
        assertEquals(150 * 180.0, inYen.get("hulk_value").middle());
        assertEquals(150 * 100.0, inYen.get("hulk_value").spread());
        assertEquals(900, inYen.get("packing").middle());
        assertEquals(mine.get("selling_fee"), inYen.get("selling_fee"));
        assertEquals(Optional.empty(), inYen.amountsInQuestion(Question.DONOR));
        assertEquals(inYen, inYen.in(yen, Rates.none()));
        Assumptions asTheyStand = mine.in(yen, Rates.none());
        assertEquals(180, asTheyStand.get("hulk_value").middle());
        String asked = asTheyStand.amountsInQuestion(Question.DONOR).orElseThrow().questions().get(0).message();
        assertTrue(asked.contains("no rate from USD to JPY") && asked.contains("hulk_value") && !asked.contains("packing"), asked);
        assertEquals(Optional.empty(), Assumptions.defaults().amountsInQuestion(Question.DONOR));
    }

    @Test
    void every_assumption_has_limits() {
        for (Assumption one : Assumptions.defaults().all()) {
            assertTrue(one.least() < one.most() && one.most() - one.least() <= 2e9, one.name());
        }
    }

    @Test
    void a_per_cent_sign_in_the_cell_adds_nothing() throws IOException {
        assertEquals(-12, with("name,middle,spread\nage_slope,-12 %,5%\n").get("age_slope").middle());
    }

    @Test
    void one_assumption_can_be_replaced_in_code_and_a_wrong_unit_is_refused() {
        Assumption slope = Assumptions.defaults().get("age_slope");
        Assumptions mine = Assumptions.defaults().with(new Assumption("age_slope", Question.MARKET, -8, 2, slope.unit(), "mine",
                slope.note()));
        assertEquals(-8, mine.get("age_slope").middle());
        assertThrows(IllegalArgumentException.class,
                () -> mine.with(new Assumption("age_slope", Question.MARKET, -8, 2, "log points", "mine", "note")));
    }

    // Source: Bureau of Economic Analysis and Internal Revenue Service, see the SOURCE.md of depreciation: 8 to 30 % a year, and by
    // distance alone less than the part of the mileage rate, which holds ageing too.
    @Test
    void cars_lose_by_the_year_and_by_the_mile_what_public_rates_allow() {
        Reference schedule = Reference.read("depreciation/bea_auto_schedule.csv");
        double published = 1 - Math.pow(schedule.where("age", "5").number(0, "value_relative_to_new"), 1 / 5.0);
        assertEquals(0.2009, published, 5e-5);
        Assumptions usual = Assumptions.defaults();
        double mile = -usual.get("mileage_slope").middle() / 100 / 10_000;
        double year = 1 - (1 + usual.get("age_slope").middle() / 100) * Math.pow(1 - 10_000 * mile, usual.get("miles_per_year").middle()
                / 10_000);
        assertTrue(year > 0.08 && year < 0.3, "share lost in a year: " + year);
        assertTrue(year < published, "the schedule counts scrapped cars as worth nothing");
        Reference rates = Reference.read("depreciation/irs_depreciation_component.csv");
        double cents = rates.number(0, "depreciation_cents");
        assertEquals("2026-01-01", rates.text(0, "from"));
        assertTrue(mile > 0 && 100 * 20_000 * mile < cents, "cents a mile of a car of 20,000: " + 100 * 20_000 * mile);
    }
}
