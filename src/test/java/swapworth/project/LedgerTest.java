package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.project.LedgerSums.Sum;
import swapworth.reading.RowProblem;
import swapworth.reading.UnusableFileException;
import swapworth.table.Cell;
import swapworth.table.Table;

/** Ledgers to the cent: what counts, what is asked, and sums that a person can add again. */
class LedgerTest {

    @TempDir
    Path folder;

    private Ledger read(String... lines) throws IOException {
        return Ledger.read(Files.writeString(folder.resolve("ledger.csv"), String.join("\n", lines) + "\n"));
    }

    private static BigDecimal cents(String text) {
        return new BigDecimal(text);
    }

    private static String reasons(List<RowProblem> problems) {
        return problems.stream().map(p -> p.line() + " " + p.column() + ": " + p.message()).collect(Collectors.joining("\n"));
    }

    /** By hand: 60 of 100.5 parts of 201.00 are 120, the rest 81. */
    @Test
    void a_shared_row_names_its_cars_in_the_users_own_words_and_weights_in_the_users_own_marks() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,decimal mark,comma\ncar,Empf\u00e4nger,recipient\n"
                + "car,Spender,donor\n");
        Ledger ledger = read("date;amount;note;car", "2026-03-04;201,00;oil;\"Empf\u00e4nger: 60; Spender: 40,5\"");
        assertEquals("", reasons(ledger.read().rejected()));
        assertEquals(List.of("recipient 120.00", "donor 81.00"), ledger.entries().get(0).shares().stream()
                .map(s -> s.car() + " " + s.amount()).toList());
        Ledger point = read("date;amount;note;car", "2026-03-04;201,00;oil;\"Empf\u00e4nger: 60; Spender: 40.5\"");
        assertTrue(reasons(point.read().rejected()).contains("car: a shared row names its cars with their shares"));
    }

    /** A small undertaking in two currencies; every figure below was added up by hand. */
    private static final String[] UNDERTAKING = {
        "date,amount,currency,note,car,category,direction,status,gross,fee,postage,hours,charged",
        "2026-01-05,8000.00,USD,the open car,recipient,purchase,,,,,,,",
        "2026-01-09,4100.00,EUR,the crashed saloon,donor,purchase,,,,,,,",
        "2026-01-12,333.33,EUR,carriage of both cars,recipient: 1; donor: 2,freight,,,,,,,",
        "2026-01-20,100.00,USD,seals for both,recipient; donor; project,part,,,,,,,",
        "2026-02-02,49.95,EUR,one seal too many,project,part,in,,,,,,",
        "2026-02-03,,USD,seats of the saloon,donor,,,,620.00,74.40,38.15,2.5,",
        "2026-02-07,600.00,USD,engine crane,project,tool,,,,,,,25",
        "2026-02-08,12.34,USD,no idea,,,,,,,,,",
        "2026-02-09,,,taking the saloon apart,donor,own hours,,,,,,31,",
        "2026-03-01,900.00,USD,welding,project,labour,,committed,,,,,",
        "2026-03-15,250.00,EUR,glass of the saloon,donor,part sold,in,estimate,,,,,"};

    private Ledger undertaking(List<String> rows) throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-01-01,EUR,USD,1.0800\n2026-02-01,EUR,USD,1.1000\n");
        List<String> lines = new ArrayList<>(List.of(UNDERTAKING[0]));
        lines.addAll(rows);
        return read(lines.toArray(String[]::new));
    }

    private Ledger undertaking() throws IOException {
        return undertaking(List.of(UNDERTAKING).subList(1, UNDERTAKING.length));
    }

    private static Map<String, Sum> named(List<Sum> sums) {
        return sums.stream().collect(Collectors.toMap(Sum::name, s -> s));
    }

    @Test
    void an_undertaking_in_two_currencies_adds_up_to_the_cent() throws IOException {
        Ledger ledger = undertaking();
        assertEquals(11, ledger.read().used(), reasons(ledger.read().problems()));
        assertEquals("USD", ledger.currency().getCurrencyCode());
        assertEquals(LocalDate.of(2026, 2, 9), ledger.on());
        Map<String, Sum> by = named(ledger.sums().byCategory());
        // 8000 + 4100 x 1.08 = 8000 + 4428
        assertEquals(cents("12428.00"), by.get("purchase").paid());
        // 333.33 x 1.08 = 359.9964
        assertEquals(cents("360.00"), by.get("freight").paid());
        // 100 paid; 49.95 x 1.10 = 54.945, half to even 54.94, came back
        assertEquals(cents("100.00"), by.get("part").paid());
        assertEquals(cents("54.94"), by.get("part").refunded());
        // 620 - 74.40 - 38.15
        assertEquals(cents("507.45"), by.get("part sold").sold());
        assertEquals(cents("600.00"), by.get("tool").paid());
        assertEquals(cents("12.34"), by.get("unsorted").paid());
        assertEquals(cents("0.00"), by.get("own hours").paid());
        // 250 x 1.10, still to come in: the rate is that of the day of the ledger
        assertEquals(cents("-275.00"), by.get("part sold").estimated());
        Sum all = ledger.sums().total();
        // 12428 + 360 + 100 + 600 + 12.34
        assertEquals(cents("13500.34"), all.paid());
        // 13500.34 - 54.94 - 507.45
        assertEquals(cents("12937.95"), all.net());
        // + 900 - 275
        assertEquals(cents("13562.95"), all.atCompletion());
        assertEquals(33.5, ledger.sums().hoursSoFar());
    }

    @Test
    void shared_rows_fall_on_their_cars_and_the_cents_add_up() throws IOException {
        Map<String, Sum> cars = named(undertaking().sums().byCar());
        // 8000 + a third of 360.00 + a third of 100.00, of which the first of three gets the odd cent
        assertEquals(cents("8153.34"), cars.get("recipient").paid());
        // 4428 + 240.00 + 33.33
        assertEquals(cents("4701.33"), cars.get("donor").paid());
        // 33.33 + a quarter of 600 + 12.34
        assertEquals(cents("195.67"), cars.get("project").paid());
        assertEquals(cents("450.00"), cars.get("tools kept, not charged").paid());
        BigDecimal all = cars.values().stream().map(Sum::atCompletion).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(cents("13562.95"), all);
        assertEquals(cents("450.00"), undertaking().sums().keptSoFar());
    }

    @Test
    void one_name_in_two_spellings_is_one_car() throws IOException {
        Ledger ledger = read("date,amount,note,car,category", "2026-03-01,500,hulk,Red wreck,purchase",
                "2026-03-04,80,pump,red-wreck,part");
        assertEquals(List.of("Red wreck"), ledger.sums().byCar().stream().map(Sum::name).toList());
        assertEquals(cents("580.00"), ledger.sums().byCar().get(0).paid());
    }

    @Test
    void cash_by_month_adds_up_to_what_is_in_it() throws IOException {
        Map<YearMonth, BigDecimal> months = undertaking().sums().cashByMonth();
        // 12428 + 360 + 100
        assertEquals(cents("12888.00"), months.get(YearMonth.of(2026, 1)));
        // - 54.94 - 507.45 + 600 + 12.34
        assertEquals(cents("49.95"), months.get(YearMonth.of(2026, 2)));
        assertEquals(2, months.size());
    }

    @Test
    void sums_do_not_depend_on_the_order_of_rows() throws IOException {
        Ledger ledger = undertaking();
        for (int seed = 0; seed < 20; seed++) {
            List<String> rows = new ArrayList<>(List.of(UNDERTAKING).subList(1, UNDERTAKING.length));
            Collections.shuffle(rows, new Random(seed));
            Ledger other = undertaking(rows);
            assertEquals(ledger.sums().byCategory(), other.sums().byCategory());
            assertEquals(ledger.sums().byCar(), other.sums().byCar());
            assertEquals(ledger.sums().total(), other.sums().total());
            assertEquals(Forecast.of(ledger).figures(), Forecast.of(other).figures());
        }
    }

    @Test
    void every_figure_is_the_sum_of_the_rows_it_leads_to() throws IOException {
        Ledger ledger = undertaking();
        for (Category category : Category.values()) {
            Table rows = ledger.sums().rowsOf(category);
            BigDecimal sum = BigDecimal.ZERO;
            for (var row : rows.rows()) {
                sum = sum.add(row.get(8).exact().isEmpty() ? BigDecimal.ZERO : new BigDecimal(row.get(8).exact()));
                sum = sum.subtract(row.get(9).exact().isEmpty() ? BigDecimal.ZERO : new BigDecimal(row.get(9).exact()));
            }
            Sum shown = named(ledger.sums().byCategory()).get(category.words());
            assertEquals(0, sum.compareTo(shown == null ? BigDecimal.ZERO : shown.atCompletion()), category.words());
        }
    }

    @Test
    void the_largest_remainders_get_the_odd_cents() {
        List<BigDecimal> weights = List.of(cents("1"), cents("1"), cents("1"));
        assertEquals(List.of(cents("0.34"), cents("0.33"), cents("0.33")), Apportioned.of(cents("1.00"), weights));
        assertEquals(List.of(cents("0.01"), cents("0.01"), cents("0.00")), Apportioned.of(cents("0.02"), weights));
        // 10.01 by 60 and 40: 6.006 and 4.004, the odd cent to the first
        assertEquals(List.of(cents("6.01"), cents("4.00")), Apportioned.of(cents("10.01"), List.of(cents("60"), cents("40"))));
        Random random = new Random(11);
        for (int k = 0; k < 500; k++) {
            BigDecimal amount = BigDecimal.valueOf(random.nextInt(100_000), 2);
            List<BigDecimal> some = new ArrayList<>();
            for (int i = 0; i <= random.nextInt(6); i++) {
                some.add(BigDecimal.valueOf(1 + random.nextInt(99)));
            }
            List<BigDecimal> parts = Apportioned.of(amount, some);
            assertEquals(amount, parts.stream().reduce(BigDecimal.ZERO.setScale(2), BigDecimal::add));
            BigDecimal all = some.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
            for (int i = 0; i < parts.size(); i++) {
                double exact = amount.doubleValue() * some.get(i).doubleValue() / all.doubleValue();
                assertTrue(Math.abs(parts.get(i).doubleValue() - exact) < 0.01 + 1e-9);
            }
        }
    }

    @Test
    void a_row_needs_day_amount_and_note_and_nothing_else() throws IOException {
        Ledger ledger = read("date,amount,note", "2026-03-04,19.99,wire", "2026-03-05,$5,clips");
        assertEquals(cents("24.99"), ledger.sums().total().net());
        Entry entry = ledger.entries().get(0);
        assertEquals(Category.UNSORTED, entry.category());
        assertEquals(Direction.OUT, entry.direction());
        assertEquals(Status.ACTUAL, entry.status());
        assertEquals(List.of(new Entry.Share("project", cents("19.99"))), entry.shares());
    }

    @Test
    void what_is_not_done_yet_may_have_the_day_on_which_it_is_due_alone() throws IOException {
        Path file = Files.writeString(folder.resolve("ledger.csv"), "date,due,amount,note,status\n2026-01-05,,100,wire,actual\n"
                + ",2026-03-01,200,paint,estimate\n,,300,seats,estimate\n,2026-03-01,400,glass,actual\n");
        Ledger ledger = Ledger.read(file);
        assertEquals(List.of(2, 2), List.of(ledger.entries().size(), ledger.read().rejected().size()));
        assertEquals("2026-03-01", ledger.entries().get(1).date().toString());
        assertTrue(reasons(ledger.read().rejected()).contains("or the day on which it is due"), reasons(ledger.read().rejected()));
    }

    @Test
    void an_unnamed_or_strange_category_is_unsorted_and_in_every_total() throws IOException {
        Ledger ledger = read("date,amount,note,category", "2026-03-04,10,wire,", "2026-03-05,5,a thing,gubbins", "2026-03-06,1,clip,part");
        assertEquals(cents("15.00"), named(ledger.sums().byCategory()).get("unsorted").paid());
        assertEquals(cents("16.00"), ledger.sums().total().paid());
        assertTrue(reasons(ledger.read().oddities()).contains("this word is not understood"), reasons(ledger.read().oddities()));
    }

    @Test
    void a_row_whose_direction_or_status_is_not_understood_is_not_counted_as_paid_and_moves_no_day() throws IOException {
        Ledger ledger = read("date,amount,note,category,direction,status", "2026-12-01,9500,roadster,purchase,,",
                "2027-01-17,300,clutch,part,,", "2027-01-22,120,clutch sent back,part,Eingang,", "2027-02-15,1450,loom,labour,,geplant",
                "2027-02-16,80,plugs,part,,geplant");
        assertEquals(List.of(cents("9800.00"), cents("9800.00")),
                List.of(ledger.sums().total().paid(), ledger.sums().total().atCompletion()));
        assertEquals(LocalDate.of(2027, 1, 22), ledger.on());
        assertEquals("4 direction, 5 status, 6 status", ledger.read().rejected().stream().map(p -> p.line() + " " + p.column())
                .collect(Collectors.joining(", ")));
        assertTrue(reasons(ledger.read().rejected()).contains("known are: actual, committed, estimate; words.csv can say"),
                reasons(ledger.read().rejected()));
    }

    @Test
    void a_row_due_after_the_day_of_the_ledger_without_a_status_is_counted_as_paid_and_asked_about() throws IOException {
        Ledger ledger = read("date,amount,note,status,due,category", "2026-12-05,1450,loom,,2027-03-20,part",
                "2026-12-06,60,plugs,paid,2027-03-20,part", "2026-12-04,70,hose,,2026-12-05,part");
        assertEquals(cents("1580.00"), ledger.sums().total().paid());
        assertEquals(1, ledger.read().questions().size(), reasons(ledger.read().questions()));
        assertTrue(reasons(ledger.read().questions()).contains("2 due: this is due after 2026-12-06"), reasons(ledger.read().questions()));
    }

    @Test
    void a_negative_amount_is_money_that_came_back() throws IOException {
        Ledger ledger = read("date,amount,note,category,direction", "2026-03-04,80,pump,part,", "2026-03-09,-80,pump sent back,part,",
                "2026-03-10,-5,twice said,part,in");
        Sum part = named(ledger.sums().byCategory()).get("part");
        assertEquals(cents("80.00"), part.refunded());
        assertEquals(0, part.net().signum());
        assertEquals(1, ledger.read().rejected().size());
        assertTrue(reasons(ledger.read().rejected()).contains("says it twice"));
    }

    @Test
    void an_actual_after_the_day_of_the_ledger_is_still_to_come_and_counted_once() throws IOException {
        Path file = Files.writeString(folder.resolve("ledger.csv"),
                "date,amount,note,status\n2026-03-04,80,pump,\n2026-05-01,300,exhaust,actual\n");
        Ledger ledger = Ledger.withDefaults().on(LocalDate.of(2026, 4, 1)).read(file);
        Sum all = ledger.sums().total();
        assertEquals(cents("80.00"), all.net());
        assertEquals(cents("300.00"), all.committed());
        assertEquals(cents("380.00"), all.atCompletion());
        assertTrue(reasons(ledger.read().oddities()).contains("3 date: this day lies after 2026-04-01"), reasons(ledger.read().oddities()));
    }

    @Test
    void low_above_high_is_rejected_with_its_numbers() throws IOException {
        Ledger ledger = read("date,amount,note,low,likely,high", "2026-03-04,80,pump,,,", "2026-03-05,,welding,900,700,500",
                "2026-03-06,,paint,100,200,150", "2026-03-07,,trim,100,,150");
        assertEquals(1, ledger.entries().size());
        assertTrue(reasons(ledger.read().rejected()).contains("must stand in this order, not 900, 700, 500"),
                reasons(ledger.read().rejected()));
        assertTrue(reasons(ledger.read().rejected()).contains("needs the likely amount"));
        assertEquals(3, ledger.read().rejected().size());
    }

    @Test
    void something_sold_from_a_car_never_bought_is_kept_and_asked_about() throws IOException {
        Ledger ledger = read("date,amount,note,category,car", "2026-03-01,500,hulk,purchase,donor", "2026-03-04,80,seat,part sold,donor",
                "2026-03-05,60,seat,part sold,red wreck");
        assertEquals(cents("140.00"), ledger.sums().total().sold());
        assertEquals(1, ledger.read().questions().size());
        assertTrue(reasons(ledger.read().questions()).contains("4 car: something of red wreck is sold"),
                reasons(ledger.read().questions()));
    }

    @Test
    void the_same_row_twice_is_kept_and_asked_about() throws IOException {
        Ledger ledger = read("date,amount,note,direction", "2026-03-04,80,seat,out", "2026-03-04,80,Seat,out",
                "2026-03-04,80,other seat,out");
        assertEquals(cents("240.00"), ledger.sums().total().net());
        assertEquals(1, ledger.read().questions().size());
        assertTrue(reasons(ledger.read().questions()).contains("stand on line 2 too"));
    }

    @Test
    void a_row_with_neither_category_nor_direction_counts_as_paid_and_is_asked_about() throws IOException {
        String[] rows = {"date,amount,note,category,direction,gross,hours,status", "2026-03-01,500,hulk,purchase,,,,",
            "2026-03-02,780,seats,,,,,", "2026-03-03,40,clip,,out,,,", "2026-03-04,-20,clip back,,,,,", "2026-03-05,,lamp,,,200,,",
            "2026-03-06,,stripping,,,,5,", "2026-03-07,25,clip,odds and ends,,,,", "2026-09-01,90,seats,,,,,estimate",
            "2026-03-08,60,wheel,,,,,perhaps"};
        Ledger ledger = read(rows);
        assertEquals(cents("1345.00"), ledger.sums().total().paid());
        assertEquals(List.of(3, 9), ledger.read().questions().stream().map(RowProblem::line).toList());
        assertTrue(reasons(ledger.read().questions()).contains("3 direction: neither category nor direction says whether this goes out"),
                reasons(ledger.read().questions()));
    }

    @Test
    void in_a_file_without_category_and_direction_one_question_stands_for_all_rows_that_count() throws IOException {
        Ledger ledger = read("date,amount,note,charged", "2026-03-01,500,hulk,many", "2026-03-02,780,seats,", "2026-03-03,-20,back,",
                "2026-03-04,40,clip,");
        assertEquals(1, ledger.read().questions().size(), reasons(ledger.read().questions()));
        String question = reasons(ledger.read().questions());
        assertTrue(question.contains("3 direction: no row of this file has a category or a direction: all 2 with"), question);
        assertEquals(List.of(), read("date,amount,note", "2026-03-03,-20,back", "2026-03-04,,own work").read().questions());
    }

    @Test
    void gross_is_not_income() throws IOException {
        Ledger ledger = read("date,amount,note,category,gross,fee,postage", "2026-03-01,500,hulk,purchase,,,",
                "2026-03-04,200,lamps,part sold,200,26,14.50", "2026-03-05,40,a lone fee,part sold,,4,");
        assertEquals(cents("199.50"), ledger.sums().total().sold());
        String questions = reasons(ledger.read().questions());
        assertTrue(questions.contains("leaves 159.50") && questions.contains("beside no gross price"), questions);
    }

    // By hand: a quarter of 400 and 50; the estimate is not agreed, the money that comes in is none to pay.
    @Test
    void what_is_agreed_to_be_paid_leaves_out_what_is_kept_of_tools() throws IOException {
        Ledger ledger = read("date,amount,note,category,status,charged", "2026-08-03,5000,buy,purchase,,",
                "2026-12-01,400,lift,tool,committed,25", "2026-12-02,50,welding,labour,committed,", "2026-12-03,70,glue,part,estimate,",
                "2026-12-04,90,seats,part sold,committed,");
        assertEquals(cents("150.00"), ledger.sums().agreedToPay());
    }

    // By hand: three quarters of 400 less three quarters of the 100 that came back; then three quarters of 40 to come.
    @Test
    void what_is_kept_of_tools_is_less_what_came_back_of_it() throws IOException {
        Ledger ledger = read("date,amount,note,category,direction,status,charged", "2026-08-03,400,lift,tool,,,25",
                "2026-08-09,100,rebate on it,tool,in,,25", "2026-12-02,40,oil for it,tool,,estimate,25");
        assertEquals(cents("225.00"), ledger.sums().keptSoFar());
        assertEquals(cents("255.00"), ledger.sums().keptAtCompletion());
    }

    // By hand: halves of 10.03 and 10.05 are 5.015 and 5.025; half a cent goes to the even one.
    @Test
    void what_is_charged_of_a_tool_is_rounded_half_to_even() throws IOException {
        Ledger ledger = read("date,amount,note,category,charged", "2026-08-03,10.03,file,tool,50", "2026-08-03,10.05,vice,tool,50");
        assertEquals(List.of("5.02", "5.02"), ledger.entries().stream().map(e -> e.shares().get(0).amount().toPlainString()).toList());
    }

    // By hand: 100 at 1.10, the rate that is known on the day of the ledger.
    @Test
    void what_is_to_come_is_taken_at_the_rate_of_the_day_of_the_ledger_and_not_at_one_of_a_later_day() throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-01-01,EUR,USD,1.10\n2026-11-01,EUR,USD,1.30\n");
        Path file = Files.writeString(folder.resolve("ledger.csv"), "date,amount,currency,note,status\n2026-03-04,80,USD,pump,\n"
                + "2026-12-01,100,EUR,exhaust,committed\n");
        Ledger.Options usd = Ledger.withDefaults().in(Currency.getInstance("USD"));
        assertEquals(cents("110.00"), usd.on(LocalDate.of(2026, 4, 1)).read(file).sums().total().committed());
        assertEquals(cents("130.00"), usd.on(LocalDate.of(2026, 11, 20)).read(file).sums().total().committed());
    }

    @Test
    void what_was_due_and_is_not_done_is_due_on_the_day_of_the_ledger() throws IOException {
        Ledger ledger = read("date,amount,note,status,due", "2026-03-04,80,pump,,", "2026-01-10,100,exhaust,committed,2026-02-01",
                "2026-01-10,60,seat,estimate,2026-05-01");
        assertEquals(List.of(LocalDate.of(2026, 3, 4), LocalDate.of(2026, 3, 4), LocalDate.of(2026, 5, 1)),
                ledger.entries().stream().map(Entry::due).toList());
        assertEquals(YearMonth.of(2026, 3), Forecast.of(ledger).months().get(0).month());
    }

    @Test
    void a_payment_a_year_and_a_day_after_the_one_before_it_is_not_asked_about_and_one_a_day_later_is() throws IOException {
        String[] rows = {"date,amount,note,category", "2025-03-04,80,pump,part", "2026-03-05,90,lamp,part"};
        assertEquals("", reasons(read(rows).read().questions()));
        rows[2] = "2026-03-06,90,lamp,part";
        assertTrue(reasons(read(rows).read().questions()).contains("3 date: 2026-03-06 lies 367 days after the payment before it"));
    }

    @Test
    void what_goes_back_to_a_buyer_is_taken_off_what_was_sold() throws IOException {
        Ledger ledger = read("date,amount,note,category,direction", "2026-09-01,500.00,seats,part sold,",
                "2026-09-20,500.00,\"seats came back, money repaid\",part sold,out", "2026-09-22,80,lamp,part sold,");
        List<Cell> all = ledger.sums().sold().rows().get(3);
        assertEquals("80.00", all.get(7).shown(), "net");
        assertEquals(0, ledger.sums().total().net().compareTo(cents("-80")));
    }

    @Test
    void the_sale_of_the_finished_car_is_in_no_sum_and_what_came_in_is_net_of_its_fee() throws IOException {
        Ledger ledger = read("date,amount,note,car,category,gross,fee,status,direction", "2026-03-01,9000,body,recipient,purchase,,,,",
                "2026-03-04,700,engine out of it,recipient,part sold,,,,", "2027-05-01,,it is sold,recipient,Sale of the car,14000,350,,",
                "2027-05-09,100,a lamp made good,recipient,car sold,,,,out", "2027-05-20,40,room,,storage,,,estimate,");
        assertEquals(cents("8340.00"), ledger.sums().total().atCompletion());
        assertEquals(List.of(), ledger.sums().toFinish(), "a car that is sold is finished");
        // 14,000 less 350 less the 100 that went back
        assertEquals(Optional.of(new Ledger.CarSale(cents("13550.00"), LocalDate.of(2027, 5, 1))), ledger.carSold());
        assertEquals("13,550.00", ledger.sums().carSold().rows().get(2).get(7).shown());
        assertEquals(2, ledger.sums().rowsOf(Category.CAR_SOLD).rows().size());
        assertTrue(ledger.sums().byCategoryTable("").text().contains("(line 4, actual, 13,650.00; line 5, actual, -100.00) is not"));
        assertEquals(List.of(), ledger.read().questions());
    }

    @Test
    void the_finished_car_is_not_sold_while_its_sale_is_agreed_or_planned() throws IOException {
        String[] rows = {"date,amount,note,category,status", "2027-04-01,1000,deposit,car sold,",
            "2027-05-01,13000,rest,car sold,committed"};
        assertEquals(Optional.empty(), read(rows).carSold());
        rows[2] = rows[2].replace("committed", "estimate");
        assertEquals(Optional.empty(), read(rows).carSold());
        assertEquals(Optional.empty(), read(rows[0], rows[2]).carSold());
        assertEquals(Optional.of(cents("1000.00")), read(rows[0], rows[1]).carSold().map(Ledger.CarSale::received));
        assertEquals(cents("0.00"), read(rows[0], rows[2]).sums().total().atCompletion());
    }

    @Test
    void money_in_above_the_price_of_every_car_is_asked_about_and_a_donor_sold_is_a_part_sold() throws IOException {
        Ledger ledger = read("date,amount,note,car,category,direction", "2026-03-01,9000,body,recipient,purchase,",
                "2026-03-02,5000,wreck,donor,purchase,", "2026-04-01,900,rest of it,donor,car sold,",
                "2027-05-01,14000,sold,recipient,part sold,", "2027-05-02,8999,much,recipient,part sold,");
        assertTrue(reasons(ledger.read().questions()).contains("5 category: more comes in than any car of this ledger cost"),
                reasons(ledger.read().questions()));
        assertEquals(1, ledger.read().questions().size());
        assertTrue(reasons(ledger.read().oddities()).contains("4 category: what is sold of the donor"), reasons(ledger.read().oddities()));
        assertEquals(cents("-9899.00"), ledger.sums().total().net());
    }

    @Test
    void what_an_insurer_pays_for_a_total_loss_stands_in_place_of_the_value_and_elsewhere_it_is_asked_about() throws IOException {
        String[] rows = {"date,amount,note,car,category,direction", "2026-03-01,9000,body,recipient,purchase,",
            "2026-03-02,300,policy,project,insurance,", "2026-09-01,7500,the insurer paid,project,Total Loss,"};
        Ledger lost = read(rows);
        assertEquals(Optional.of(cents("7500.00")), lost.carSold().map(Ledger.CarSale::received));
        assertEquals(cents("9300.00"), lost.sums().total().net());
        rows[3] = "2026-09-01,7500,the insurer paid,project,insurance,in";
        assertEquals("4 category: more comes in than was paid for insurance: if the finished car is sold here, its category is 'car sold',"
                + " and 'total loss' if an insurer pays for it; else it is counted beside the value of the car",
                reasons(read(rows).read().questions()));
        rows[3] = "2026-09-01,120,rest of the year back,project,insurance,in";
        assertEquals("", reasons(read(rows).read().questions()), "a premium that comes back");
    }

    @Test
    void rows_that_say_what_they_are_for_need_no_note_and_one_question_stands_for_those_that_say_nothing() throws IOException {
        String head = "date,amount,note,item,category";
        assertEquals("", reasons(read(head, "2026-03-01,90,,seals,part", "2026-03-01,90,,bearings,part").read().questions()),
                "two items of one price");
        assertEquals("2 note: a row without a note or an item cannot be told from another: what was it, and what were the 2 more that have"
                + " neither?", reasons(read(head, "2026-03-01,90,,,part", "2026-03-02,91,,,part", "2026-03-03,92,,,part",
                "2026-03-04,93,joints,,part").read().questions()));
    }

    // By hand: each row in the year of its day.
    @Test
    void money_of_several_years_is_told_year_by_year() throws IOException {
        String[] rows = {"date,amount,note,car,category,direction,gross,fee,postage,status",
            "2025-11-01,5000,wreck,donor,purchase,,,,,", "2025-12-01,,seats,donor,part sold,,400,40,30,",
            "2026-01-05,80,seats came back,donor,part sold,out,,,,", "2026-02-01,60,wrong joint,project,part,in,,,,",
            "2026-03-01,,wheels,donor,part sold,,500,50.50,0,", "2026-04-01,9000,the car,project,car sold,,,,,",
            "2027-01-01,700,wiring,project,labour,,,,,estimate"};
        List<List<String>> years = read(rows).sums().byYear().rows().stream().map(r -> r.stream().map(Cell::shown).toList()).toList();
        assertEquals(List.of(List.of("2025", "2", "5,000.00", "0.00", "400.00", "70.00", "330.00", "0.00"),
                List.of("2026", "4", "0.00", "60.00", "420.00", "50.50", "369.50", "9,000.00"),
                List.of("all", "6", "5,000.00", "60.00", "820.00", "120.50", "699.50", "9,000.00")), years);
        assertEquals(List.of(), read(rows[0], rows[1], rows[2], rows[7]).sums().byYear().rows(), "one year is told by all else");
    }

    @Test
    void sales_of_one_day_and_note_with_other_gross_prices_are_no_twins_and_a_sign_in_them_is_refused() throws IOException {
        Ledger ledger = read("date,amount,note,car,category,gross,fee", "2026-08-01,5000,buy,donor,purchase,,",
                "2026-09-12,,door,donor,part sold,300,", "2026-09-12,,door,donor,part sold,400,", "2026-09-13,,lamp,donor,part sold,-100,",
                "2026-09-14,,lamp,donor,part sold,100,-20");
        assertEquals(List.of(), ledger.read().questions());
        assertEquals(2, ledger.read().rejected().size());
        assertTrue(reasons(ledger.read().rejected()).contains("5 gross: of a sale"), reasons(ledger.read().rejected()));
        assertTrue(reasons(ledger.read().rejected()).contains("6 fee: of a sale"), reasons(ledger.read().rejected()));
        assertEquals(cents("700.00"), ledger.sums().total().sold());
    }

    @Test
    void a_sale_before_the_purchase_is_asked_about() throws IOException {
        Ledger ledger = read("date,amount,note,car,category", "2026-08-01,5000,buy,donor,purchase", "2026-07-01,200,seats,donor,part sold");
        assertTrue(reasons(ledger.read().questions()).contains("3 date: something of donor is sold before 2026-08-01"),
                reasons(ledger.read().questions()));
    }

    @Test
    void a_payment_years_from_the_next_one_is_asked_about_on_its_own_row() throws IOException {
        Ledger late = read("date,amount,note", "2026-08-01,5000,buy", "2062-08-21,45,seal", "2026-09-01,30,clip");
        assertTrue(reasons(late.read().questions()).contains("3 date: 2062-08-21 lies 13138 days after the payment before it"),
                reasons(late.read().questions()));
        Ledger early = read("date,amount,note", "2006-08-01,5000,buy", "2026-08-21,45,seal", "2026-09-01,30,clip");
        assertTrue(reasons(early.read().questions()).contains("2 date: 2006-08-01 lies 7325 days before the next payment"),
                reasons(early.read().questions()));
        assertEquals(List.of(), read("date,amount,note,direction", "2025-09-02,5000,buy,out", "2026-09-01,30,clip,out").read().questions());
    }

    @Test
    void a_missing_rate_and_an_unknown_currency_are_named_and_nothing_is_counted() throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-02-01,EUR,USD,1.10\n");
        Ledger ledger = read("date,amount,currency,note", "2026-03-04,80,USD,pump", "2026-03-05,15,USD,clip", "2026-01-05,50,EUR,too early",
                "2026-03-06,50,GBP,no rate at all", "2026-03-07,50,XQZ,no currency", "2026-03-08,10,EUR,fine", "2026-03-09,5,USD,pin");
        assertEquals(cents("111.00"), ledger.sums().total().net());
        assertEquals(2, ledger.read().setAside().size());
        String aside = reasons(ledger.read().setAside());
        assertTrue(aside.contains("no rate from EUR to USD on or before 2026-01-05") && aside.contains("no rate from GBP to USD"), aside);
        assertTrue(reasons(ledger.read().rejected()).contains("6 currency: this is no currency"), reasons(ledger.read().rejected()));
        assertEquals(7, ledger.read().used() + ledger.read().setAside().size() + ledger.read().rejected().size());
    }

    @Test
    void a_currency_without_cents_has_none() throws IOException {
        Ledger ledger = Ledger.withDefaults().in(Currency.getInstance("JPY")).read(Files.writeString(folder.resolve("ledger.csv"),
                "date,amount,currency,note,car\n2026-03-04,1001,JPY,pump,recipient; donor\n"));
        assertEquals(List.of(new Entry.Share("recipient", cents("501")), new Entry.Share("donor", cents("500"))),
                ledger.entries().get(0).shares());
    }

    @Test
    void the_share_of_one_car_alone_is_half_a_cell_and_rejected() throws IOException {
        Ledger ledger = read("date;amount;note;car;category", "2026-03-04;100;carriage;recipient: 60; donor: 40",
                "2026-03-05;100;carriage;\"recipient: 60; donor: 40\";freight", "2026-03-06;100;wire;donor: 100 %;part");
        assertEquals(2, ledger.entries().size());
        assertTrue(reasons(ledger.read().rejected()).startsWith("2 car: this is the share of one car without that of another; in a file of"
                + " semicolons"), reasons(ledger.read().rejected()));
    }

    /** Source: ISO 4217, minor units of KWD and JOD: 3, of EUR: 2. */
    @Test
    void three_decimals_of_an_amount_whose_currency_the_other_rows_say_are_fils_or_a_question() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,decimal mark,point\n");
        for (String dinar : List.of("KWD", "JOD")) {
            Ledger read = read("date,amount,note", "2026-03-04," + dinar + " 1.250,wire", "2026-03-05,2.500,hose",
                    "2026-03-06,12.255,hoses");
            assertEquals(dinar, read.currency().getCurrencyCode());
            assertEquals(List.of(cents("1.250"), cents("2.500"), cents("12.255")), read.entries().stream().map(Entry::amount).toList());
            assertEquals("", reasons(read.read().rejected()));
        }
        Ledger euros = read("date,amount,note", "2026-03-04,EUR 1.25,wire", "2026-03-05,2.500,hose", "2026-03-06,12.25,hoses");
        assertEquals(2, euros.entries().size());
        assertEquals("3 amount: by the stated decimal mark this is 2.500, and no amount of EUR has three decimals; is 2500 meant? Write it"
                + " without a mark", reasons(euros.read().rejected()));
    }

    @Test
    void amounts_of_which_nothing_says_the_currency_are_in_that_of_the_others_and_asked_about_once() throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-01-01,EUR,USD,1.25\n");
        Ledger ledger = read("date,amount,note", "2026-01-05,9800 EUR,the open car", "2026-01-09,5300 EUR,the saloon",
                "2026-01-20,500,freight", "2026-01-21,60,seals", "2026-01-22,120 EUR,belts");
        assertEquals("EUR", ledger.currency().getCurrencyCode());
        // 9,800 + 5,300 + 500 + 60 + 120, by hand
        assertEquals(cents("15780.00"), ledger.sums().total().net());
        assertTrue(reasons(ledger.read().questions()).contains("4 amount: nothing states the currency of this amount and 1 more: they are"
                + " counted in EUR, that of most rows"), reasons(ledger.read().questions()));
        assertEquals("USD", read("date,amount,note", "2026-01-05,9800,the open car").currency().getCurrencyCode());
    }

    @Test
    void a_ledger_without_its_columns_names_them() {
        UnusableFileException e = assertThrows(UnusableFileException.class, () -> read("date,amount", "2026-03-04,80"));
        assertTrue(e.getMessage().contains("note") && e.getMessage().contains("amount"), e.getMessage());
    }

    @Test
    void a_hundred_thousand_rows_add_up_to_the_cent() throws IOException {
        StringBuilder text = new StringBuilder("date,amount,note,car,category,status,low,likely,high\n");
        long sum = 0;
        for (int i = 0; i < 100_000; i++) {
            int cents = 100 + i * 37 % 90_000;
            sum += cents;
            text.append("2026-0").append(1 + i % 9).append("-1").append(i % 10).append(',').append(cents / 100).append('.')
                    .append(cents / 10 % 10).append(cents % 10).append(",thing ").append(i).append(",donor,part,,,,\n");
        }
        Path file = Files.writeString(folder.resolve("ledger.csv"), text);
        Ledger ledger = Ledger.read(file);
        assertEquals(BigDecimal.valueOf(sum, 2), ledger.sums().total().net());
    }
}
