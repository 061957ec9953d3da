package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.project.Entry.Direction;
import swapworth.reading.RowProblem;

/** Estimates between two ends: what the ledger counts of them can always be forecast. */
class EndsOfEstimatesTest {
    private static final String HEAD = "date,amount,note,category,direction,status,low,likely,high,gross,fee,postage";

    @TempDir
    Path folder;

    private Ledger read(String... rows) throws IOException {
        return Ledger.read(Files.writeString(folder.resolve("ledger.csv"), HEAD + "\n2026-08-03,1000,car,purchase,,,,,,,,\n"
                + String.join("\n", rows) + "\n"));
    }

    private static String reasons(List<RowProblem> problems) {
        return problems.stream().map(p -> p.line() + " " + p.column() + ": " + p.message()).collect(Collectors.joining("\n"));
    }

    // By hand: at 1.10 the low end is 440, above the likely 420.
    @Test
    void ends_are_held_against_the_likely_amount_in_one_currency() throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-01-01,EUR,USD,1.10\n");
        Ledger ledger = read("2026-09-03,,doors,part,,estimate,EUR 400,$420,$500,,,",
                "2026-09-03,,seats,part,,estimate,EUR 370,$420,$500,,,");
        assertEquals("3 low: low, likely and high must stand in this order, not 440, 420, 500", reasons(ledger.read().rejected()));
        assertEquals(Optional.of(new Entry.Ends(new BigDecimal("407.00"), new BigDecimal("500.00"))), ledger.entries().get(1).range());
        assertEquals(10_000, Forecast.of(ledger).toPay().length);
    }

    // By hand: 500 less 50 and 20 leaves 430.
    @Test
    void ends_that_do_not_hold_what_is_left_of_a_gross_price_are_not_counted_and_asked_about() throws IOException {
        Ledger ledger = read("2026-09-03,,doors,part sold,,estimate,450,500,600,500,50,20",
                "2026-09-04,,seats,part sold,,estimate,400,430,460,500,50,20");
        assertTrue(reasons(ledger.read().questions()).contains("3 low: what is left of the gross price, 430, does not lie between"
                + " 450 and 600"), reasons(ledger.read().questions()));
        assertEquals(List.of(false, true), ledger.entries().stream().skip(1).map(e -> e.range().isPresent()).toList());
        assertEquals(0, ledger.sums().total().estimated().compareTo(new BigDecimal("-860")));
        assertEquals(10_000, Forecast.of(ledger).toReceive().length);
    }

    @Test
    void a_likely_amount_below_0_is_money_that_comes_back_and_its_ends_go_with_it() throws IOException {
        Ledger ledger = read("2026-09-03,,discount,part,,estimate,,-300,,,,", "2026-09-04,,core,part,,estimate,-90,-80,-50,,,",
                "2026-09-05,,deposit,part,in,estimate,,-20,,,,");
        assertEquals("5 likely: an amount below 0 beside a direction says it twice; write the amount without its sign",
                reasons(ledger.read().rejected()));
        assertEquals("", reasons(ledger.read().questions()));
        assertEquals(List.of("IN 300.00", "IN 80.00"), ledger.entries().stream().skip(1).map(e -> e.direction() + " " + e.amount())
                .toList());
        assertEquals(Direction.IN, ledger.entries().get(2).direction());
        assertEquals(Optional.of(new Entry.Ends(new BigDecimal("50.00"), new BigDecimal("90.00"))), ledger.entries().get(2).range());
        Forecast forecast = Forecast.of(ledger);
        assertEquals(0, forecast.toPay()[7]);
        assertTrue(forecast.toReceive()[7] > 0);
    }

    // By hand: the mean of a beta law from 0 by 0 to 900 that leans to the likely amount is (0 + 4 * 0 + 900) / 6 = 150.
    @Test
    void an_estimate_that_most_likely_costs_nothing_but_may_cost_much_is_forecast() throws IOException {
        Ledger ledger = read("2026-09-03,,another clutch if that one slips,part,,estimate,0,0,900,,,");
        Assumptions ours = Assumptions.defaults();
        Forecast.Options plain = Forecast.withDefaults().with(ours.with(without(ours.get("contingency"))));
        assertEquals(150, Arrays.stream(plain.of(ledger).toPay()).average().orElseThrow(), 5);
        assertEquals("another clutch if that one slips", plain.of(ledger).drivers().get(0).name());
        assertEquals(List.of(), Forecast.of(read("2026-09-03,,nothing,part,,estimate,0,0,0,,,")).drivers());
    }

    @Test
    void an_estimate_without_note_and_item_is_named_by_its_line() throws IOException {
        assertEquals("line 3", Forecast.of(read("2026-09-03,500,,part,,estimate,,,,,,")).drivers().get(0).name());
    }

    private static Assumption without(Assumption one) {
        return new Assumption(one.name(), one.question(), 0, 0, one.unit(), one.source(), one.note());
    }
}
