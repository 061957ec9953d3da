package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.LevelOfTrade;
import swapworth.project.Gates.Answer;

/** The whole undertaking of a folder: what its files allow, and what it says of those that are missing. */
class UndertakingTest {
    private static final Path SAMPLE = Path.of("sample-listings");

    @TempDir
    Path folder;

    private void copy(String... names) throws IOException {
        for (String name : names) {
            Files.copy(SAMPLE.resolve(name), folder.resolve(name));
        }
    }

    @Test
    void the_sample_allows_everything() {
        Undertaking all = Undertaking.of(SAMPLE);
        assertTrue(all.ledger().isPresent() && all.forecast().isPresent() && all.finished().isPresent() && all.equity().isPresent());
        assertTrue(all.finishOrStop().isPresent() && all.redoCost().isPresent() && all.alternatives().isPresent());
        assertTrue(all.gates().isPresent() && all.walkAway().isPresent() && all.nowOrLater().isPresent());
        assertEquals(List.of(), all.missing());
        assertEquals(all.finished().get().draws().length, all.forecast().get().count());
        assertEquals(12, all.nowOrLater().get().months());
        assertTrue(all.nowOrLater().get().together(12) > 0.7, "both legs usually fall together");
        assertTrue(all.redoCost().get().evidence().get(1).contains("2 of them carried to today by the market"),
                "both cars were bought while listings were seen");
        assertTrue(all.narrowing().get(0).contains("swaps.csv"), all.narrowing().toString());
        assertEquals(7, all.alternatives().get().all().size());
    }

    @Test
    void what_is_left_counts_what_the_finished_car_sells_for_and_not_what_is_asked_for_it() {
        Undertaking all = Undertaking.of(SAMPLE);
        double[] asked = all.finished().get().draws();
        double[] sold = all.finished().get().soldDraws();
        assertEquals(LevelOfTrade.PRIVATE_ASKING, all.finished().get().level());
        assertArrayEquals(sold, all.equity().get().value());
        double step = Math.log(DrawFigures.median(asked) / DrawFigures.median(sold));
        assertEquals(0.058, step, 0.04, "what private people ask above what they get in the sample's world, log points");
    }

    @Test
    void a_ledger_alone_gives_its_sums_and_forecast_and_names_what_is_missing() throws IOException {
        copy("ledger.csv", "rates.csv", "words.csv");
        Undertaking some = Undertaking.of(folder);
        assertTrue(some.forecast().isPresent());
        assertFalse(some.equity().isPresent() || some.finishOrStop().isPresent() || some.nowOrLater().isPresent());
        String missing = String.join("\n", some.missing());
        for (String name : List.of("listings.csv", "cars.csv", "gates.csv", "alternatives.csv")) {
            assertTrue(missing.contains(name), missing);
        }
    }

    @Test
    void every_answer_that_is_not_there_gives_its_reason() throws IOException {
        copy("ledger.csv", "rates.csv", "words.csv");
        Undertaking.Answers answers = Undertaking.of(folder).answers();
        assertTrue(answers.ledger().told().isPresent() && answers.forecast().told().isPresent());
        for (var none : List.of(answers.market(), answers.finished(), answers.equity(), answers.finishOrStop(), answers.redoCost(),
                answers.nowOrLater(), answers.walkAway())) {
            assertEquals("there is no listings.csv and no cars.csv", none.match(told -> "told", swapworth.market.CannotTell::reason));
        }
        assertEquals("there is no gates.csv", answers.gates().match(told -> "told", swapworth.market.CannotTell::reason));
        assertEquals("there is no alternatives.csv", answers.alternatives().match(told -> "told", swapworth.market.CannotTell::reason));
    }

    @Test
    void an_empty_folder_names_every_file() {
        Undertaking none = Undertaking.of(folder);
        assertTrue(none.ledger().isEmpty() && none.alternatives().isEmpty());
        assertTrue(String.join("\n", none.missing()).contains("ledger.csv"), none.missing().toString());
    }

    @Test
    void walking_away_is_the_next_best_car_landed_and_what_this_one_is_worth_more() {
        WalkAway walk = Undertaking.of(SAMPLE).walkAway().orElseThrow();
        for (WalkAway.Price price : walk.prices()) {
            if (price.walkAway() instanceof swapworth.donor.HighestBid bid) {
                double most = DrawFigures.median(price.most());
                assertTrue(bid.landed().doubleValue() <= most + 0.01 && bid.nextLanded().doubleValue() > most - 0.01, price.car());
            }
        }
        assertEquals(4, walk.prices().size());
    }

    @Test
    void a_next_best_car_whose_landed_cost_lacks_a_line_is_no_limit_without_a_remark() throws IOException {
        for (String name : List.of("listings.csv", "words.csv", "lines.csv", "cars.csv", "rates.csv")) {
            copy(name);
        }
        String fees = Files.readString(SAMPLE.resolve("fees.csv"));
        Files.writeString(folder.resolve("fees.csv"), fees.replace("premium,fee,3500,4999,510,", "premium,fee,3500,4999,call,"));
        WalkAway walk = Undertaking.of(folder).walkAway().orElseThrow();
        WalkAway.Price front = walk.prices().stream().filter(p -> p.car().equals("front hit")).findFirst().orElseThrow();
        assertEquals("tail hit", front.nextBest());
        assertTrue(front.open().get(0).contains("premium"), front.open().toString());
        assertTrue(walk.table().text().contains("tail hit costs more than is counted"), walk.table().text());
        WalkAway whole = Undertaking.of(SAMPLE).walkAway().orElseThrow();
        assertTrue(whole.prices().stream().allMatch(p -> p.open().isEmpty()));
    }

    @Test
    void gates_that_are_no_or_unknown_are_warned_of_with_what_to_do() throws IOException {
        Path file = Files.writeString(folder.resolve("gates.csv"), "gate,answer,note\nlegal,no,the registry says so\nINSURABLE,yes,\n"
                + "neighbours agree,unknown,\ninsured,no,again\nstripping,perhaps,\n,yes,\n");
        Gates gates = Gates.read(file);
        assertEquals(6, gates.gates().size());
        assertEquals(Answer.NO, gates.gates().get(0).answer());
        List<String> warnings = gates.warnings();
        assertTrue(warnings.get(0).startsWith("lawful here: no (the registry says so). Ask"), warnings.get(0));
        assertEquals(5, warnings.size(), "stripping, inspectable and lender are not answered, the user's own is open");
        assertEquals(1, gates.read().setAside().size());
        assertEquals(1, gates.read().rejected().size());
    }

    @Test
    void with_nothing_to_come_there_is_nothing_to_finish() throws IOException {
        copy("listings.csv", "cars.csv", "lines.csv", "words.csv", "rates.csv");
        List<String> done = Files.readAllLines(SAMPLE.resolve("ledger.csv")).stream()
                .filter(line -> !line.contains(",committed,") && !line.contains(",estimate,")).toList();
        Files.write(folder.resolve("ledger.csv"), done);
        Undertaking all = Undertaking.of(folder);
        assertTrue(all.equity().isPresent());
        assertEquals("no row of ledger.csv is still to come: there is nothing left to finish",
                all.answers().finishOrStop().match(told -> "told", swapworth.market.CannotTell::reason));
    }

    @Test
    void when_the_finished_car_is_sold_what_came_in_is_what_is_left_after_the_money_and_nothing_is_to_be_finished() throws IOException {
        copy("listings.csv", "cars.csv", "lines.csv", "words.csv", "rates.csv");
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,category\n2026-03-01,9000,body,purchase\n"
                + "2026-09-01,3000,work,labour\n2026-10-01,11000,sold,sale of the car\n");
        Undertaking all = Undertaking.of(folder);
        assertEquals(11_000 - 9_000 - 3_000, all.equity().orElseThrow().inCash()[0], 1e-9);
        assertEquals(List.of(), all.narrowing(), "nothing of it is unsure");
        assertEquals("the finished car is sold: there is nothing left to finish or to stop",
                all.answers().finishOrStop().match(told -> "told", swapworth.market.CannotTell::reason));
        assertTrue(DrawFigures.median(all.redoCost().orElseThrow().cash()) > 11_000, "12,000 a few months ago");
    }

    @Test
    void what_is_agreed_is_owed_whether_one_finishes_or_stops() throws IOException {
        copy("listings.csv", "cars.csv", "lines.csv", "words.csv", "rates.csv");
        List<String> rows = Files.readAllLines(SAMPLE.resolve("ledger.csv"));
        Files.write(folder.resolve("ledger.csv"), rows);
        FinishOrStop agreed = Undertaking.of(folder).finishOrStop().orElseThrow();
        Files.write(folder.resolve("ledger.csv"), rows.stream().filter(line -> !line.contains("price agreed")).toList());
        FinishOrStop without = Undertaking.of(folder).finishOrStop().orElseThrow();
        for (int exit = 0; exit < agreed.exits().size(); exit++) {
            assertEquals(DrawFigures.median(without.gain(without.exits().get(exit))),
                    DrawFigures.median(agreed.gain(agreed.exits().get(exit))), 60,
                    "1,700 stand on both sides; other draws are the same but for their order");
        }
        assertTrue(agreed.exits().get(0).how().endsWith("less 1,700 that is agreed and still to be paid, which is owed either way"),
                agreed.exits().get(0).how());
    }
}
