package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;

/** What a handful of rows gives: values that say how much of them is assumed. */
class FewListingsTest {

    private static final String NINE_AND_SIX = """
            vehicle,seen_on,model_year,mileage_mi,price_usd
            Aral Siv,2026-05-03,2014,71000,9800
            Aral Siv,2026-05-03,2015,66000,10400
            Aral Siv,2026-05-10,2016,52000,12300
            Aral Siv,2026-05-10,2013,88000,8100
            Aral Siv,2026-05-17,2018,31000,16200
            Aral Siv,2026-05-17,2015,59500,11100
            Aral Siv,2026-05-24,2017,44000,13900
            Aral Siv,2026-05-24,2012,97000,7300
            Aral Siv,2026-05-31,2016,61000,11600
            Aral Vel,2026-05-03,2017,82000,12900
            Aral Vel,2026-05-10,2018,64000,15500
            Aral Vel,2026-05-10,2016,99000,10700
            Aral Vel,2026-05-17,2019,51000,17900
            Aral Vel,2026-05-24,2015,121000,8600
            Aral Vel,2026-05-31,2017,77000,13300
            """;

    @TempDir
    Path folder;

    private List<Car> nineAndSix() throws IOException {
        ListingsRead read = Listings.read(Files.writeString(folder.resolve("listings.csv"), NINE_AND_SIX));
        assertEquals(15, read.cars().size(), () -> read.setAside() + " " + read.rejected());
        return read.cars();
    }

    @Test
    void nine_rows_of_one_line_and_six_of_another_are_judged_and_say_how_much_is_assumed() throws IOException {
        List<Car> cars = nineAndSix();
        PriceModel model = PriceModel.fit(cars);
        for (Judgement judged : model.judgeAll()) {
            FairValue value = TestCars.fair(judged.valuation());
            double price = judged.listing().price().amount();
            assertTrue(value.median() > price / 1.35 && value.median() < price * 1.35, judged.car() + " " + price + " " + value);
            assertTrue(value.range(0.95).low() < value.range(0.80).low() && value.range(0.80).low() < value.median());
            assertTrue(value.range(0.95).high() > value.range(0.80).high() && value.range(0.80).high() > value.median());
            assertTrue(value.priorShare() > 0.1 && value.priorShare() < 0.95, judged.car() + " held " + value.priorShare());
            assertTrue(value.largestAssumption().share() <= value.priorShare());
            assertTrue(!value.largestAssumption().assumption().isEmpty());
            assertEquals(14, value.carsInFile());
            assertEquals(judged.listing().facts().vehicle().equals("Aral Siv") ? 8 : 5, value.carsOfLine());
        }
        for (String slope : List.of("age", "mileage")) {
            double share = term(model, slope).priorShare();
            assertTrue(share > 0.04 && share < 0.9, "fifteen cars leave some of a slope to what is assumed: " + share);
        }
    }

    @Test
    void prices_without_any_order_give_no_value_and_no_absurd_figure() throws IOException {
        StringBuilder text = new StringBuilder("vehicle,seen_on,model_year,mileage_mi,price_usd\n");
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 60; i++) {
            text.append("Aral Siv,2026-05-03,").append(2001 + random.nextInt(15)).append(',').append(10_000 + random.nextInt(190_000))
                    .append(',').append(Math.round(Math.pow(10, random.nextDouble(1, 8)))).append('\n');
        }
        ListingsRead read = Listings.read(Files.writeString(folder.resolve("wild.csv"), text));
        List<String> reasons = PriceModel.fit(read.cars()).judgeAll().stream()
                .map(judged -> assertInstanceOf(CannotTell.class, judged.valuation()).reason()).toList();
        assertEquals(60, reasons.size());
        assertTrue(reasons.stream().anyMatch(r -> r.endsWith("more than 1,000 times its lower end")), reasons.get(0));
        assertTrue(reasons.stream().allMatch(r -> r.matches(".*(more than 1,000|\\d{1,3}\\.\\d) times its lower end")), reasons.get(0));
    }

    private static TermEffect term(PriceModel model, String label) {
        return model.terms().stream().filter(t -> t.label().equals(label)).findFirst().orElseThrow();
    }

    @Test
    void assumptions_hold_less_of_a_slope_the_more_cars_there_are() {
        for (String slope : List.of("age", "mileage")) {
            double before = 1;
            for (int count : new int[] {6, 30, 200}) {
                double share = term(PriceModel.fit(TestCars.line("Aral Siv", 11_000, count, 5)), slope).priorShare();
                assertTrue(share > 0 && share < before, slope + " of " + count + " cars: " + share + " after " + before);
                before = share;
            }
            assertTrue(before < 0.2, slope + ": " + before);
        }
    }

    @Test
    void one_car_gives_a_model_whose_own_judgement_cannot_tell() {
        Car only = TestCars.car(0, "Aral Siv", 2016, 60_000, 11_000, PriceKind.ASKING, Seller.PRIVATE);
        PriceModel model = PriceModel.fit(List.of(only));
        Judgement judged = model.judge(only.latest());
        assertEquals(Position.CANNOT_TELL, judged.position());
        CannotTell no = assertInstanceOf(CannotTell.class, judged.valuation());
        assertTrue(no.reason().contains("Aral Siv"), no.reason());
        assertEquals(0, no.carsOfLine());
    }

    @Test
    void a_line_that_nobody_listed_cannot_be_valued() {
        PriceModel model = PriceModel.fit(TestCars.line("Aral Siv", 11_000, 8, 1));
        Valuation valuation = model.value(Subject.of(CarFacts.of("Aral Dri").modelYear(2017).build(), LevelOfTrade.PRIVATE_ASKING,
                LocalDate.of(2026, 6, 1)));
        assertTrue(assertInstanceOf(CannotTell.class, valuation).reason().contains("Aral Dri"));
    }

    @Test
    void no_car_at_all_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> PriceModel.fit(new ArrayList<>()));
    }
}
