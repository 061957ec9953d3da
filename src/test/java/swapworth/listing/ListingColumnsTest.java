package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import swapworth.money.Money;

/** That listings come out of columns as they went in, whatever they hold. */
class ListingColumnsTest {

    private final SplittableRandom random = new SplittableRandom(5);

    @Test
    void whatever_a_listing_holds_comes_out_as_it_went_in() {
        List<Listing> listings = new ArrayList<>();
        for (int i = 0; i < 10_000; i++) {
            listings.add(any(i));
        }
        StoredListings stored = StoredListings.of(listings);
        assertEquals(listings, stored);
        for (int i = 0; i < listings.size(); i++) {
            Listing one = listings.get(i);
            ListingColumns columns = stored.columns();
            assertEquals(one.price().amount(), columns.amount(i));
            assertEquals(one.facts().mileage().map(Mileage::miles).orElse(Double.NaN), columns.miles(i));
            assertEquals(one.facts().ageOn(one.seenOn().orElse(LocalDate.of(2025, 1, 1))).orElse(0),
                    columns.age(i, LocalDate.of(2025, 1, 1).toEpochDay()));
        }
    }

    @Test
    void the_first_row_may_hold_nothing_and_the_last_one_all() {
        ListingColumns columns = new ListingColumns();
        Listing bare = new Listing(new Origin("", 0), Optional.empty(), Optional.empty(), CarFacts.of("").build(),
                new Price(Money.of("1", "USD"), 1, PriceKind.ASKING, PriceIncludes.UNKNOWN), Outcome.OPEN, Optional.empty(), Saved.UNKNOWN,
                Optional.empty(), Optional.empty(), List.of());
        for (int i = 0; i < 9_000; i++) {
            columns.add(bare);
        }
        Listing full = any(7);
        columns.add(full);
        assertEquals(bare, columns.listing(0));
        assertEquals(bare, columns.listing(8_999));
        assertEquals(full, columns.listing(9_000));
    }

    @Test
    void more_distinct_texts_than_are_shared_are_kept_row_by_row() {
        Texts texts = new Texts(3);
        List<Optional<String>> expected = new ArrayList<>();
        for (int row = 0; row < 20_000; row++) {
            expected.add(random.nextInt(4) == 0 ? Optional.empty() : Optional.of(text()));
            texts.set(row, expected.get(row));
        }
        for (int row = 0; row < expected.size(); row++) {
            assertEquals(expected.get(row), texts.get(row));
            assertEquals(expected.get(row).isPresent(), texts.has(row));
            int other = random.nextInt(expected.size());
            assertEquals(expected.get(row).equals(expected.get(other)), texts.same(row, other));
        }
    }

    @Test
    void numbers_of_every_width_are_kept() {
        Numbers numbers = new Numbers();
        long[] expected = new long[30_000];
        for (int row = 0; row < expected.length; row++) {
            expected[row] = random.nextInt(9) == 0 ? 0 : random.nextLong() >>> random.nextInt(64);
            numbers.set(row, expected[row]);
        }
        for (int row = 0; row < expected.length; row++) {
            assertEquals(expected[row], numbers.get(row));
            assertEquals(expected[row], Numbers.signed(Numbers.unsigned(expected[row])));
            assertEquals(-expected[row], Numbers.signed(Numbers.unsigned(-expected[row])));
        }
        assertEquals(0, numbers.get(1_000_000));
    }

    @Test
    void doubles_are_kept_to_the_last_bit_and_round_ones_in_few_bytes() {
        for (double value : new double[] {0, -0.0, 1, 110, 88_430, 0.1, Double.MIN_VALUE, Double.MAX_VALUE, -3.5,
                Double.POSITIVE_INFINITY}) {
            assertEquals(value, Numbers.toDouble(Numbers.ofDouble(value)));
        }
        assertEquals(true, Numbers.ofDouble(88_430) < 1L << 32);
    }

    @Test
    void rows_that_are_left_out_are_not_in_the_list() {
        ListingColumns columns = new ListingColumns();
        List<Listing> expected = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            Listing one = any(i);
            columns.add(one);
            if (i != 0 && i != 7 && i != 8 && i != 49) {
                expected.add(one);
            }
        }
        assertEquals(expected, StoredListings.without(new int[] {0, 7, 8, 49}, columns));
        assertEquals(50, StoredListings.without(new int[0], columns).size());
        assertEquals(List.of(), StoredListings.without(new int[] {0}, StoredListings.of(List.of(any(1))).columns()));
    }

    @Test
    void a_kept_list_is_not_copied_and_does_not_change() {
        List<Listing> stored = StoredListings.of(List.of(any(1), any(2)));
        assertSame(stored, KeptList.copyOf(stored));
        assertThrows(UnsupportedOperationException.class, () -> stored.remove(0));
        assertThrows(IndexOutOfBoundsException.class, () -> stored.get(2));
        assertEquals(stored, KeptList.copyOf(new ArrayList<>(stored)));
    }

    private Listing any(int line) {
        CarFacts.Builder facts = CarFacts.of(pick("Corvane", "Jorquist", "", "Tarn\u00e9 \u6c34"));
        if (random.nextBoolean()) {
            facts.trim(text()).body(text()).runningGear(text()).region(text()).options(text());
        }
        if (random.nextBoolean()) {
            facts.powerKw(measure()).cylinders(measure()).weightKg(measure()).ageYears(measure()).distanceAway(number());
        }
        if (random.nextBoolean()) {
            facts.modelYear(random.nextInt(1886, 2200));
        }
        if (random.nextBoolean()) {
            facts.firstRegistered(day());
        }
        if (random.nextBoolean()) {
            facts.mileage(new Mileage(number(), any(MileageStatus.values())))
                    .gearMileage(new Mileage(number(), any(MileageStatus.values())));
        }
        facts.drivenWheels(any(DrivenWheels.values())).seller(any(Seller.values())).runs(any(Runs.values())).rust(any(Condition.values()))
                .paint(any(Condition.values())).interior(any(Condition.values())).mechanical(any(Condition.values()))
                .records(any(Condition.values())).keys(any(Keys.values())).airbags(any(Airbags.values())).title(any(Title.values()));
        if (random.nextBoolean()) {
            facts.damage(random.nextBoolean() ? Set.of() : Set.of(any(Damage.values())));
        }
        if (random.nextInt(3) == 0) {
            Map<String, String> further = new HashMap<>();
            for (int k = random.nextInt(3); k >= 0; k--) {
                further.put("column " + random.nextInt(5), text());
            }
            facts.further(further);
        }
        BigDecimal typed = random.nextInt(20) == 0 ? new BigDecimal(BigInteger.ONE.shiftLeft(70), random.nextInt(-3, 9))
                : BigDecimal.valueOf(random.nextLong(1, 1L << random.nextInt(1, 62)), random.nextInt(-2, 6));
        Price price = new Price(new Money(typed, Currency.getInstance(pick("USD", "EUR", "GBP"))),
                random.nextBoolean() ? typed.doubleValue() : 1 + number(), any(PriceKind.values()), any(PriceIncludes.values()));
        return new Listing(new Origin(pick("a.csv", "b.csv"), random.nextInt(50) == 0 ? -line : line), perhaps(this::text),
                perhaps(this::day),
                facts.build(), price, any(Outcome.values()), perhaps(this::day), any(Saved.values()), perhaps(this::text),
                perhaps(this::text),
                random.nextInt(4) == 0 ? List.of(text(), text()) : List.of());
    }

    private double number() {
        return switch (random.nextInt(4)) {
            case 0 -> random.nextInt(200_000);
            case 1 -> 0;
            case 2 -> random.nextInt(200_000) * 0.621371;
            default -> random.nextDouble();
        };
    }

    /** A number that a car can have of something. */
    private double measure() {
        return Double.MIN_VALUE + number();
    }

    private LocalDate day() {
        return random.nextInt(100) == 0 ? LocalDate.of(1, 1, 1) : LocalDate.of(2024, 1, 1).plusDays(random.nextInt(700));
    }

    private String text() {
        return switch (random.nextInt(6)) {
            case 0 -> pick("", "Fitted", "one owner, new tyres");
            case 1 -> "x".repeat(random.nextInt(300));
            case 2 -> "caf\u00e9 \u6c34 " + random.nextInt(100);
            case 3 -> "\ud800 alone " + random.nextInt(9);
            default -> "c" + random.nextInt(100_000);
        };
    }

    private <T> Optional<T> perhaps(Supplier<T> value) {
        return random.nextInt(3) == 0 ? Optional.empty() : Optional.of(value.get());
    }

    private <E> E any(E[] values) {
        return values[random.nextInt(values.length)];
    }

    private String pick(String... words) {
        return any(words);
    }

    @Test
    void a_missing_measure_is_not_the_measure_0() {
        Measured measures = new Measured();
        measures.set(0, OptionalDouble.of(0));
        measures.set(1, OptionalDouble.empty());
        assertEquals(OptionalDouble.of(0), measures.get(0));
        assertEquals(OptionalDouble.empty(), measures.get(1));
    }
}
