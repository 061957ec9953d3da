package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.statistics.Quantiles;
import swapworth.statistics.UncertainSum;
import swapworth.table.Cell;
import swapworth.table.Table;

/** What is left, finish or stop, and redo cost, against sums that can be done by hand. */
class EquityTest {
    private static final int COUNT = 2000;

    @TempDir
    Path folder;

    private static final String[] ROWS = {"date,amount,note,category,status,hours,direction,charged",
        "2025-01-31,6000,car,purchase,,,,", "2025-03-15,2000,gear,purchase,,,,", "2025-04-01,400,crane,tool,,,,50",
        "2025-04-10,,strip,own hours,,40,,", "2025-05-31,500,seats,part sold,,,,", "2025-07-31,1000,shop,labour,committed,10,,"};

    private Ledger ledger() throws IOException {
        return Ledger.read(Files.writeString(folder.resolve("ledger.csv"), String.join("\n", ROWS) + "\n"));
    }

    private static Assumptions exact(String name, double middle) {
        return exact(Assumptions.defaults(), name, middle);
    }

    private static Assumptions exact(Assumptions all, String name, double middle) {
        Assumption one = all.get(name);
        return all.with(new Assumption(name, one.question(), middle, 0, one.unit(), one.source(), one.note()));
    }

    private static double[] all(double amount) {
        double[] draws = new double[COUNT];
        Arrays.fill(draws, amount);
        return draws;
    }

    private Forecast forecast(Assumptions assumptions) throws IOException {
        return Forecast.withDefaults().with(assumptions).draws(COUNT, 1).of(ledger());
    }

    @Test
    void cash_capital_and_hours_are_taken_off_one_after_the_other() throws IOException {
        Equity equity = Equity.of(all(10_000), forecast(exact(exact("capital_rate", 12), "own_hour_rate", 20)));
        // 6000 + 2000 + 400 - 500 + 1000 less half of the crane
        assertEquals(10_000 - 8_700, equity.inCash()[7], 1e-9);
        // ends of months: Jan 6000, Feb 6000, Mar 8000, Apr 8400, May 7900, Jun 7900, Jul 8900, one per cent of each
        double interest = 0.01 * (6000 + 6000 + 8000 + 8400 + 7900 + 7900 + 8900);
        assertEquals(1_300 - interest, equity.afterCapital()[7], 1e-9);
        // 40 hours done and about 12.5 to come, at 20
        double hours = Quantiles.of(equity.hours(), 0.5);
        assertEquals(40 + 10 * 1.25, hours, 0.3);
        assertEquals(1_300 - interest - 20 * equity.hours()[7], equity.withHours()[7], 1e-9);
        assertEquals(equity.afterCapital()[7] / equity.hours()[7], equity.breakEvenRate()[7], 1e-12);
        assertEquals(1, equity.chanceAhead());
    }

    @Test
    void interest_that_the_ledger_holds_is_not_counted_twice() throws IOException {
        Ledger plain = ledger();
        Files.writeString(folder.resolve("ledger.csv"), String.join("\n", ROWS) + "\n2025-05-31,100,interest of the loan,interest,,,,\n");
        Ledger with = Ledger.read(folder.resolve("ledger.csv"));
        Assumptions assumptions = exact("capital_rate", 12);
        double before = Equity.of(all(0), Forecast.withDefaults().with(assumptions).draws(COUNT, 1).of(plain)).capital()[0];
        double after = Equity.of(all(0), Forecast.withDefaults().with(assumptions).draws(COUNT, 1).of(with)).capital()[0];
        // 100 less, and one per cent of it at the ends of May, June and July
        assertEquals(before - 100 + 3, after, 1e-9);
    }

    // By hand: 10,000 at the end of January, 10,500 at that of February, in which it is done; 1 % a month.
    @Test
    void money_costs_until_the_car_is_done_and_not_until_the_last_part_is_sold() throws IOException {
        Assumptions twelve = exact("capital_rate", 12);
        for (String due : new String[] {"2026-02-10", "2026-09-10"}) {
            Path file = Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,category,status,low,high\n"
                    + "2026-01-05,10000,car,purchase,actual,,\n2026-02-01,500,paint,labour,committed,,\n" + due
                    + ",400,seats,part sold,committed,,\n");
            Equity equity = Equity.of(all(20_000), Forecast.withDefaults().with(twelve).draws(COUNT, 1).of(Ledger.read(file)));
            double later = due.startsWith("2026-09") ? 0 : 400;
            assertEquals(0.01 * (10_000 + 10_500 - later), equity.capital()[3], 1e-6, due);
        }
    }

    // By hand: 12,000 stand in it at the ends of eleven months, January to November; 1 % a month.
    @Test
    void a_sale_told_after_the_last_row_of_the_ledger_costs_money_until_that_day() throws IOException {
        Assumptions twelve = exact("capital_rate", 12);
        String paid = "date,amount,note,car,category,status\n2026-01-05,10000,car,recipient,purchase,actual\n"
                + "2026-01-20,2000,shop,project,labour,actual\n";
        Path file = Files.writeString(folder.resolve("ledger.csv"), paid + "2026-12-15,15000,sold it,,car sold,actual\n");
        Ledger told = Ledger.read(file);
        Ledger plain = Ledger.read(Files.writeString(folder.resolve("ledger.csv"), paid));
        Ledger toldElsewhere = new Ledger(plain.entries(), told.carSales(), plain.invoices(), plain.on(), plain.currency(), plain.read());
        for (Ledger ledger : List.of(told, toldElsewhere)) {
            Equity equity = Equity.of(all(15_000), Forecast.withDefaults().with(twelve).draws(COUNT, 1).of(ledger));
            assertEquals(0.01 * 11 * 12_000, equity.capital()[3], 1e-6, ledger.on().toString());
        }
    }

    @Test
    void when_the_car_is_sold_what_came_in_stands_in_place_of_its_value_and_before_that_the_sale_is_not_counted_beside_it()
            throws IOException {
        String[] rows = ROWS.clone();
        rows[6] = "2025-07-31,1000,shop,labour,,10,,";
        Assumptions rate = exact("capital_rate", 12);
        Path file = folder.resolve("ledger.csv");
        Ledger.Options late = Ledger.withDefaults().on(LocalDate.of(2026, 3, 1));
        Files.writeString(file, String.join("\n", rows) + "\n2025-08-10,9000,sold,car sold,,,,\n");
        Equity sold = Equity.of(all(10_000), Forecast.withDefaults().with(rate).draws(COUNT, 1).of(late.read(file)));
        // 9000 for the car; 6000 + 2000 + 400 - 500 + 1000 less half of the crane in it
        assertEquals(9_000 - 8_700, sold.inCash()[7], 1e-9);
        // ends of months up to July, as above: the car is sold in August, and nothing stands in it afterwards
        assertEquals(0.01 * (6000 + 6000 + 8000 + 8400 + 7900 + 7900 + 8900), sold.capital()[7], 1e-9);
        assertTrue(sold.tables().get(0).text().contains("came in for the finished car, 2025-08-10"), sold.tables().get(0).text());
        // 9,000 less 8,700 is booked, and no chance is told of it
        assertTrue(sold.chanceOfLoss().startsWith("In cash it brought a gain of USD 300; the chance of a loss is "), sold.chanceOfLoss());
        assertTrue(sold.tables().get(0).text().contains("In cash it brought a gain of USD 300, as booked."), sold.tables().get(0).text());
        Files.writeString(file, String.join("\n", rows) + "\n2025-08-10,9000,to be sold,car sold,estimate,,,\n");
        Forecast planned = Forecast.withDefaults().with(rate).draws(COUNT, 1).of(Ledger.read(file));
        assertEquals(10_000 - 8_700, Equity.of(all(10_000), planned).inCash()[7], 1e-9);
        assertEquals(0, planned.toReceive()[7]);
        double[] with = RedoCost.of(all(10_000), planned).cash();
        Files.writeString(file, String.join("\n", rows) + "\n");
        Forecast without = Forecast.withDefaults().with(rate).draws(COUNT, 1).of(Ledger.read(file));
        assertArrayEquals(RedoCost.of(all(10_000), without).cash(), with);
    }

    // Closed form: the variance of a difference falls by twice the covariance.
    @Test
    void what_moves_value_and_parts_moves_both() throws IOException {
        double[] state = UncertainSum.normals(COUNT, 9);
        double[] value = new double[COUNT];
        double[] factor = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            value[i] = 10_000 * Math.exp(0.2 * state[i]);
            factor[i] = Math.exp(0.2 * state[i]);
        }
        Ledger ledger = Ledger.read(Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,category,status\n"
                + "2025-01-31,6000,car,purchase,\n2025-08-31,3000,parts,part sold,estimate\n"));
        Forecast.Options options = Forecast.withDefaults().draws(COUNT, 1);
        double[] still = Equity.of(value, options.of(ledger)).inCash();
        double[] moving = Equity.of(value, options.moving(Category.SOLD, factor).of(ledger)).inCash();
        // parts are money in: they rise with the value, so what is left spreads more
        assertTrue(sd(moving) > 1.1 * sd(still), sd(moving) + " against " + sd(still));
        double parts = 0;
        double[] received = options.of(ledger).toReceive();
        for (int i = 0; i < COUNT; i++) {
            parts += (received[i] * factor[i] - (moving[i] - value[i] + 6000)) / COUNT;
        }
        assertEquals(0, parts, 1e-6);
    }

    @Test
    void what_is_unsure_is_told_apart_into_value_and_money() throws IOException {
        double[] z = UncertainSum.normals(COUNT, 3);
        double[] value = Arrays.stream(z).map(one -> 10_000 + 900 * one).toArray();
        assertEquals(1, Equity.of(value, forecast(Assumptions.defaults())).shareOfValue(), 1e-9);
        Forecast own = forecast(Assumptions.defaults());
        assertEquals(0, Equity.of(all(10_000), own).shareOfValue(), 1e-9);
        double[] w = UncertainSum.normals(COUNT, 4);
        Equity both = new Equity("USD", value, Arrays.stream(w).map(one -> 5_000 + 1_200 * one).toArray(), all(0), all(0), 20,
                Optional.empty());
        assertEquals(900.0 * 900 / (900.0 * 900 + 1_200.0 * 1_200), both.shareOfValue(), 0.05);
    }

    private static double sd(double[] draws) {
        double mean = Arrays.stream(draws).average().orElseThrow();
        return Math.sqrt(Arrays.stream(draws).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
    }

    @Test
    void draws_that_do_not_belong_together_are_refused() throws IOException {
        Forecast forecast = forecast(Assumptions.defaults());
        assertThrows(IllegalArgumentException.class, () -> Equity.of(new double[COUNT + 1], forecast));
        assertThrows(IllegalArgumentException.class, () -> Forecast.withDefaults().moving(Category.SOLD, new double[3]));
    }

    @Test
    void what_is_kept_after_a_write_off_is_never_more_than_the_car_nor_less_than_nothing() throws IOException {
        Assumption share = Assumptions.defaults().get("salvage_share");
        Assumptions wild = Assumptions.defaults().with(new Assumption(share.name(), share.question(), 50, 60, share.unit(), share.source(),
                share.note()));
        double[] salvage = RedoCost.of(all(10_000), forecast(wild)).salvage();
        assertEquals(0, Arrays.stream(salvage).min().orElseThrow());
        assertEquals(10_000, Arrays.stream(salvage).max().orElseThrow());
    }

    @Test
    void sunk_money_stands_nowhere_in_finish_or_stop() throws IOException {
        List<FinishOrStop.Exit> exits = List.of(new FinishOrStop.Exit("as it stands", all(7_000), "by hand"));
        FinishOrStop plain = FinishOrStop.of(all(9_000), forecast(Assumptions.defaults()), exits);
        assertEquals(8_000, plain.finishing()[0], 1e-9);
        assertEquals(1_000, plain.gain(plain.exits().get(0))[0], 1e-9);
        // What an hour earns: the gain over the hours still to come.
        assertEquals(Cell.format(1_000 / Quantiles.median(plain.hoursToCome()), 1), plain.tables().get(1).rows().get(0).get(6).shown());
        String more = String.join("\n", ROWS) + "\n2025-05-30,5000,an engine that blew,part,,300,,\n";
        Ledger dearer = Ledger.read(Files.writeString(folder.resolve("ledger.csv"), more));
        FinishOrStop same = FinishOrStop.of(all(9_000), Forecast.withDefaults().draws(COUNT, 1).of(dearer), exits);
        assertArrayEquals(plain.finishing(), same.finishing());
        for (int i = 0; i < COUNT; i++) {
            assertEquals(plain.hoursToCome()[i], same.hoursToCome()[i], 1e-9);
        }
    }

    @Test
    void finish_or_stop_can_be_asked_for_any_day() throws IOException {
        ledger();
        Ledger early = Ledger.withDefaults().on(LocalDate.of(2025, 2, 1)).read(folder.resolve("ledger.csv"));
        FinishOrStop then = FinishOrStop.of(all(9_000), Forecast.withDefaults().draws(COUNT, 1).of(early), List.of());
        // still to come: 2000 + half of a crane of 400 that stays - 500 + 1000
        assertEquals(9_000 - 2_700, then.finishing()[0], 1e-9);
        assertEquals(LocalDate.of(2025, 2, 1), then.on());
    }

    @Test
    void the_redo_cost_is_the_ledger_at_the_prices_of_its_day() throws IOException {
        Assumptions assumptions = exact(exact(exact(exact("redo_prices", 10), "redo_cars", 20), "salvage_share", 25), "own_hour_rate", 20);
        RedoCost redo = RedoCost.of(all(10_000), forecast(assumptions));
        // by days to 2025-05-31: 120, 77, 60 and 0; half of the crane; what is to come as it is
        double expected = 6000 * Math.pow(1.2, 120 / 365.25) + 2000 * Math.pow(1.2, 77 / 365.25) + 200 * Math.pow(1.1, 60 / 365.25) - 500
                + 1000;
        assertEquals(expected, redo.cash()[3], 1e-6);
        assertEquals(2_500, redo.salvage()[3], 1e-6);
        assertEquals(expected + 20 * redo.hours()[3] - 2_500, redo.upperEnd().orElseThrow()[3], 1e-6);
    }

    @Test
    void a_car_is_carried_to_today_by_the_market_where_listings_tell() throws IOException {
        Assumptions assumptions = exact(exact("redo_prices", 10), "redo_cars", 20);
        double[] plain = RedoCost.of(all(10_000), forecast(assumptions)).cash();
        RedoCost told = RedoCost.of(all(10_000), forecast(assumptions), Map.of(2, all(0.9)));
        assertEquals(plain[0] + 6000 * (0.9 - Math.pow(1.2, 120 / 365.25)), told.cash()[0], 1e-6);
        assertTrue(told.evidence().get(1).contains("1 of them carried to that day by the market"), told.evidence().toString());
    }

    @Test
    void every_table_says_what_it_is_made_of() throws IOException {
        Forecast forecast = forecast(Assumptions.defaults());
        String equity = text(Equity.of(all(10_000), forecast).tables());
        assertTrue(equity.contains("Chance that something is left") && equity.contains("break-even rate"), equity);
        String stop = text(FinishOrStop.of(all(9_000), forecast, List.of(new FinishOrStop.Exit("as it stands", all(7_000),
                "by hand"))).tables());
        assertTrue(stop.contains("gone either way") && stop.contains("as of 2025-05-31") && stop.contains("by hand"), stop);
        RedoCost redo = RedoCost.of(all(10_000), forecast);
        assertTrue(text(redo.tables()).contains("your choice"), text(redo.tables()));
        assertFalse(redo.evidence().isEmpty());
        Ledger one = Ledger.read(Files.writeString(folder.resolve("ledger.csv"), "date,amount,note\n2026-03-01,5,clip\n"));
        double[] value = new double[Forecast.of(one).count()];
        assertTrue(RedoCost.of(value, Forecast.of(one)).evidence().get(1).startsWith("The redo cost comes from 1 row of the ledger"));
    }

    private static String text(List<Table> tables) {
        return tables.stream().map(Table::text).collect(Collectors.joining());
    }
}
