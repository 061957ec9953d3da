package swapworth.money;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;

class MoneyTest {

    private static final Currency USD = Currency.getInstance("USD");
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final LocalDate DAY = LocalDate.of(2024, 5, 10);

    private static final Rates RATES = Rates.of(List.of(
            new Rates.Rate(LocalDate.of(2024, 5, 1), EUR, USD, new BigDecimal("1.10")),
            new Rates.Rate(LocalDate.of(2024, 5, 9), EUR, USD, new BigDecimal("1.20")),
            new Rates.Rate(LocalDate.of(2024, 5, 11), EUR, USD, new BigDecimal("1.50"))));

    @Test
    void an_amount_keeps_the_decimals_that_were_typed() {
        assertEquals("USD 12500.50", Money.of("12500.50", "USD").toString());
        String message = assertThrows(IllegalArgumentException.class, () -> Money.of("1", "XYZ")).getMessage();
        assertEquals("'1' in 'XYZ' is no amount: needed are plain digits and a code of ISO 4217", message);
    }

    @Test
    void the_rate_of_a_day_is_the_latest_on_or_before_it() {
        assertEquals(new Conversion.Converted(new BigDecimal("120.00"), LocalDate.of(2024, 5, 9)),
                RATES.convert(Money.of("100", "EUR"), USD, DAY));
        assertEquals(new Conversion.Converted(new BigDecimal("150.00"), LocalDate.of(2024, 5, 11)),
                RATES.convert(Money.of("100", "EUR"), USD, LocalDate.of(2024, 5, 11)));
    }

    @Test
    void a_pair_stated_one_way_serves_both_ways() {
        Conversion.Converted back = assertInstanceOf(Conversion.Converted.class, RATES.convert(Money.of("120", "USD"), EUR, DAY));
        assertEquals(0, back.amount().compareTo(new BigDecimal("100")));
    }

    @Test
    void a_missing_rate_is_a_reason() {
        Conversion.NoRate early = assertInstanceOf(Conversion.NoRate.class,
                RATES.convert(Money.of("100", "EUR"), USD, LocalDate.of(2024, 4, 30)));
        assertTrue(early.reason().contains("on or before 2024-04-30"));
        assertInstanceOf(Conversion.NoRate.class, RATES.convert(Money.of("100", "GBP"), USD, DAY));
    }

    @Test
    void the_same_currency_needs_no_rate() {
        assertEquals(new Conversion.Converted(BigDecimal.TEN, DAY), Rates.none().convert(Money.of("10", "USD"), USD, DAY));
    }

    @Test
    void a_rate_of_zero_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new Rates.Rate(DAY, EUR, USD, BigDecimal.ZERO));
    }

    @Test
    void of_a_rate_and_one_the_other_way_the_newer_counts() {
        Rates.Rate straight = new Rates.Rate(LocalDate.of(2024, 5, 1), EUR, USD, new BigDecimal("1.25"));
        Rates.Rate reverse = new Rates.Rate(LocalDate.of(2024, 5, 9), USD, EUR, new BigDecimal("0.50"));
        Rates both = Rates.of(List.of(straight, reverse));
        assertEquals(0, converted(both, DAY).compareTo(new BigDecimal("200")));
        assertEquals(0, converted(both, LocalDate.of(2024, 5, 8)).compareTo(new BigDecimal("125")));
    }

    private static BigDecimal converted(Rates rates, LocalDate on) {
        return assertInstanceOf(Conversion.Converted.class, rates.convert(Money.of("100", "EUR"), USD, on)).amount();
    }
}
