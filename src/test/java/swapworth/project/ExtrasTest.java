package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.project.Extras.One;
import swapworth.reading.RowProblem;
import swapworth.report.ProjectPage;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;

/** Extras of a build, against sums by hand. */
class ExtrasTest {
    private static final String HEAD = "date,amount,note,item,category,direction,status,due,low,likely,high,hours,needed,adds\n";

    @TempDir
    private Path folder;

    private Undertaking undertaking(String rows) throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), HEAD + rows);
        return Undertaking.of(folder);
    }

    // 600 in all, 150 of it paid and 50 agreed: 400 to come against 250 added.
    @Test
    void leaving_an_extra_out_brings_what_it_still_costs_less_what_it_adds() throws IOException {
        Undertaking build = undertaking("""
                2026-08-01,150,seats of leather,seats,part,,actual,,,,,,no,250
                2026-08-01,50,mounts of them,Seats,part,,committed,2026-11-01,,,,,no,
                2026-08-01,,trimmer,seats,labour,,estimate,2026-11-01,399.99,400,400.01,,no,
                2026-08-01,,fitting them,seats,own hours,,estimate,2026-11-01,,,,8,no,
                2026-08-01,300,radiator,cooling,part,,actual,,,,,,yes,
                """);
        One seats = build.extras().orElseThrow().all().get(0);
        assertEquals(List.of("seats", "4", "200.00", "8.0"),
                List.of(seats.name(), Integer.toString(seats.rows()), seats.owed().toPlainString(), Double.toString(seats.hours())));
        assertEquals(150, Quantiles.median(seats.leavingOut()), 0.01);
        assertEquals(1, build.extras().orElseThrow().all().size(), "the radiator is needed");
        assertTrue(ProjectPage.of("build", build).html().contains("Extras: what is wanted and not needed to finish"), "on the page");
    }

    @Test
    void without_a_guess_an_extra_adds_a_share_of_all_that_it_costs() throws IOException {
        Files.writeString(folder.resolve("assumptions.csv"), "name,middle,spread\nextra_adds,40,0\n");
        One wheels = undertaking("""
                2026-08-01,500,wheels,wheels,part,,actual,,,,,,no,
                2026-08-02,100,one went back,wheels,part,in,actual,,,,,,no,
                2026-08-03,200,painting them,wheels,labour,,committed,2026-11-01,,,,,extra,
                """).extras().orElseThrow().all().get(0);
        assertEquals(new BigDecimal("600.00"), wheels.owed());
        assertEquals(0.4 * 600, wheels.adds()[3], 1e-9);
        assertEquals(-240, wheels.leavingOut()[3], 1e-9, "all of it is gone or owed: nothing is saved, and what it adds is lost");
    }

    // 500 to pay and 200 to come back; 30 % of those 300 and of the 100 that are paid; 4 of 9 hours are done.
    @Test
    void what_is_to_come_back_and_what_is_done_counts_as_such() throws IOException {
        Files.writeString(folder.resolve("assumptions.csv"), "name,middle,spread\nextra_adds,30,0\n");
        One seats = undertaking("""
                2026-08-01,,seats,seats,part,,estimate,2026-11-01,499.99,500,500.01,,no,
                2026-08-01,,old ones go back,seats,part,in,estimate,2026-11-01,199.99,200,200.01,,no,
                2026-08-01,100,mounts,seats,part,,actual,,,,,,no,
                2026-08-01,,taking the old ones out,seats,own hours,,actual,,,,,4,no,
                2026-08-01,,fitting them,seats,own hours,,estimate,2026-11-01,,,,5,no,
                """).extras().orElseThrow().all().get(0);
        assertEquals(300, Quantiles.median(seats.toCome()), 0.02);
        assertEquals(0.3 * 400, Quantiles.median(seats.adds()), 0.02);
        assertEquals(5, seats.hours());
    }

    @Test
    void an_extra_is_drawn_by_the_numbers_by_which_the_forecast_draws_it() throws IOException {
        Files.writeString(folder.resolve("assumptions.csv"), "name,middle,spread\ncontingency,0,0\n");
        String needed = "2026-08-01,900,brakes,brakes,part,,committed,2026-11-01,,,,,,\n";
        String wheels = "2026-08-01,,wheels,wheels,part,,estimate,2026-11-01,400,500,700,,no,\n2026-08-01,,tyres,wheels,part,,estimate,"
                + "2026-11-01,,300,,,no,\n";
        Undertaking build = undertaking(needed + wheels);
        double[] toPay = build.forecast().orElseThrow().toPay();
        double[] toCome = build.extras().orElseThrow().all().get(0).toCome();
        for (int i = 0; i < toCome.length; i++) {
            assertEquals(toPay[i] - 900, toCome[i], 1e-9);
        }
        Undertaking moved = undertaking(wheels + needed);
        assertEquals(toCome[7], moved.extras().orElseThrow().all().get(0).toCome()[7], 1e-9, "whatever line it stands on");
    }

    @Test
    void of_an_extra_that_takes_hours_alone_no_chance_in_cash_is_told() throws IOException {
        String text = undertaking("2026-08-01,,sewing a cover,cover,own hours,,estimate,2026-11-01,,,,12,no,\n").extras().orElseThrow()
                .table().text();
        assertTrue(text.contains("cover") && !text.contains("< 1"), text);
    }

    @Test
    void several_extras_are_put_together_draw_by_draw() throws IOException {
        Extras extras = undertaking("""
                2026-08-01,,wheels,wheels,part,,estimate,2026-11-01,400,500,700,,no,
                2026-08-01,,paint,paint,labour,,estimate,2026-12-01,2000,2600,4000,,no,3000
                """).extras().orElseThrow();
        String text = extras.table().text();
        assertTrue(Arrays.stream(text.split("\n")).anyMatch(line -> line.startsWith("all ")), text);
        double[] sum = DrawFigures.plus(extras.all().get(0).leavingOut(), extras.all().get(1).leavingOut());
        assertTrue(text.contains(Cell.format(Quantiles.median(sum), 0)), text);
        assertTrue(Quantiles.median(extras.all().get(0).leavingOut()) > 0, "a share of its cost does not pay for it");
    }

    @Test
    void guesses_of_rows_add_up_below_zero_too_and_a_share_of_the_cost_never_is() throws IOException {
        Files.writeString(folder.resolve("assumptions.csv"), "name,middle,spread\nextra_adds,5,20\n");
        Extras extras = undertaking("""
                2026-08-01,,seats,seats,part,,estimate,2026-11-01,499.99,500,500.01,,no,300
                2026-08-01,,their trim,seats,part,,estimate,2026-11-01,99.99,100,100.01,,no,-120
                2026-08-01,,roof,roof,part,,estimate,2026-11-01,199.99,200,200.01,,no,50
                2026-08-01,,stripes,stripes,part,,estimate,2026-11-01,99.99,100,100.01,,no,
                """).extras().orElseThrow();
        assertEquals(180, extras.all().get(0).adds()[0], 1e-9);
        assertEquals(0, Arrays.stream(extras.all().get(2).adds()).min().orElseThrow());
        double share = Quantiles.median(extras.all().get(2).adds());
        String all = Arrays.stream(extras.table().text().split("\n")).filter(l -> l.startsWith("all ")).findFirst().orElseThrow();
        assertEquals(List.of("all", "4", "0.00", "900", Cell.format(230 + share, 0), Cell.format(670 - share, 0)),
                List.of(all.split("\\s+")).subList(0, 6));
    }

    @Test
    void a_row_that_says_what_it_adds_is_an_extra_and_one_that_is_needed_too_is_asked_about() throws IOException {
        Undertaking build = undertaking("""
                2026-08-01,,wheels,wheels,part,,estimate,2026-11-01,400,500,700,,,300
                2026-08-01,,brakes,brakes,part,,estimate,2026-11-01,400,500,700,,yes,300
                2026-08-01,,dash,dash,part,,estimate,2026-11-01,400,500,700,,perhaps,
                """);
        assertEquals(List.of("wheels"), build.extras().orElseThrow().all().stream().map(One::name).toList());
        List<RowProblem> problems = build.read().get(0).problems();
        assertTrue(problems.stream().anyMatch(p -> p.column().equals("adds") && p.message().contains("this is needed")),
                problems.toString());
        assertTrue(problems.stream().anyMatch(p -> p.column().equals("needed")), problems.toString());
        assertEquals(3, build.ledger().orElseThrow().entries().size(), "a word that is not understood costs no row");
    }

    @Test
    void what_is_done_can_no_longer_be_left_out_and_what_is_agreed_or_open_can() throws IOException {
        String done = """
                2026-08-01,300,horn,horn,part,,actual,,,,,,no,
                2026-08-02,40,one went back,horn,part,in,actual,,,,,,no,
                """;
        Extras extras = undertaking(done + """
                2026-08-01,500,wheels,wheels,part,,actual,,,,,,no,
                2026-08-01,,fitting them,wheels,own hours,,estimate,2026-11-01,,,,5,no,
                2026-08-01,80,mats,mats,part,,committed,2026-11-01,,,,,no,
                """).extras().orElseThrow();
        assertEquals(List.of("wheels", "mats"), extras.all().stream().map(One::name).toList());
        assertTrue(extras.table().text().replaceAll("\\s+", " ").contains("An extra whose rows are all done is left off"),
                extras.table().text());
        assertEquals(Optional.empty(), undertaking(done).extras());
    }

    @Test
    void what_stands_apart_is_no_extra_and_the_row_is_asked_about() throws IOException {
        Undertaking build = undertaking("""
                2026-08-01,300,radiator,radiator,part,,actual,,,,,,,
                2026-09-01,,sale of it,,car sold,,estimate,2027-03-01,,9000,,,no,
                2026-09-01,,sale of it again,,car sold,,estimate,2027-03-01,,9000,,,,200
                """);
        assertEquals(Optional.empty(), build.extras());
        List<String> asked = build.read().get(0).problems().stream().filter(p -> p.message().contains("is no extra"))
                .map(RowProblem::column).toList();
        assertEquals(List.of("needed", "adds"), asked);
    }

    @Test
    void there_are_no_extras_of_a_car_that_is_sold_or_a_customers() throws IOException {
        String extra = "2026-08-01,,wheels,wheels,part,,estimate,2026-11-01,400,500,700,,no,300\n";
        assertEquals(Optional.empty(), undertaking(extra + "2026-09-01,9000,sold,,car sold,,,,,,,,,\n").extras());
        assertEquals(Optional.empty(), undertaking(extra + "2026-09-01,9000,deposit,,invoice,,,,,,,,,\n").extras());
        assertEquals(Optional.empty(), undertaking("2026-08-01,300,radiator,,part,,,,,,,,,\n").extras());
    }

    @Test
    void draws_that_do_not_belong_together_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> new One("seats", 1, BigDecimal.ONE, new double[2], 0, new double[3]));
        One one = new One("seats", 1, BigDecimal.ONE, new double[2], 0, new double[2]);
        one.adds()[0] = 5;
        assertEquals(one, new One("seats", 1, new BigDecimal("1.0"), new double[2], 0, new double[2]));
    }
}
