package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AxisTest {

    @Test
    void mileages_are_written_out_with_thousands_separators() {
        Axis axis = Axis.of(ValueScale.LINEAR, 4_000, 180_000, 6);
        assertEquals(List.of("0", "50,000", "100,000", "150,000"), axis.labels());
        assertEquals(0, axis.min());
    }

    @Test
    void a_linear_axis_begins_at_zero_only_where_that_costs_little_room() {
        assertEquals(0, Axis.of(ValueScale.LINEAR, 3_000, 10_000, 6).min());
        Axis narrow = Axis.of(ValueScale.LINEAR, 9_000, 10_000, 6);
        assertEquals(8_960, narrow.min(), 1e-9);
        assertEquals(10_040, narrow.max(), 1e-9);
        assertEquals(List.of("9,000", "9,200", "9,400", "9,600", "9,800", "10,000"), narrow.labels());
    }

    @Test
    void values_all_the_same_stand_in_the_middle() {
        for (double value : new double[] {0, 5, -7_500, 1e15, 1e-12}) {
            Axis axis = Axis.of(ValueScale.LINEAR, value, value, 6);
            assertEquals(0.5, axis.fraction(value), 1e-9, () -> "at " + value);
            assertTrue(axis.ticks().length >= 2, () -> "at " + value);
        }
        assertEquals(0.5, axisAround(1, 1 + 1e-15).fraction(1), 1e-6);
    }

    private static Axis axisAround(double low, double high) {
        return Axis.of(ValueScale.LINEAR, low, high, 6);
    }

    @Test
    void a_logarithmic_axis_keeps_the_rounder_ticks() {
        assertEquals(List.of("2,000", "5,000", "10,000", "20,000", "50,000", "100,000"),
                Axis.of(ValueScale.LOGARITHMIC, 1_800, 120_000, 7).labels());
        assertEquals(List.of("0.5", "1", "2", "5", "10", "20"), Axis.of(ValueScale.LOGARITHMIC, 0.4, 26, 7).labels());
    }

    @Test
    void a_short_logarithmic_axis_is_ticked_in_equal_steps() {
        Axis axis = Axis.of(ValueScale.LOGARITHMIC, 9_000, 12_000, 6);
        assertEquals(List.of("9,000", "10,000", "11,000", "12,000"), axis.labels());
        assertEquals(Math.log10(9_000), axis.ticks()[0], 1e-12);
    }

    @Test
    void zero_and_less_have_no_place_on_a_logarithmic_axis() {
        Axis axis = Axis.of(ValueScale.LOGARITHMIC, 10, 1_000, 6);
        assertArrayEquals(new double[] {2, Double.NaN, Double.NaN, Double.NaN},
                axis.at(new double[] {100, 0, -5, Double.POSITIVE_INFINITY}), 1e-12);
    }

    @Test
    void a_year_and_a_half_is_ticked_in_quarters_with_the_year_where_it_begins() {
        Axis axis = Axis.dates(LocalDate.of(2025, 5, 5), LocalDate.of(2026, 10, 26), 7);
        assertEquals(List.of("Jul 2025", "Oct", "Jan 2026", "Apr", "Jul", "Oct"), axis.labels());
        assertEquals(LocalDate.of(2025, 7, 1).toEpochDay(), axis.ticks()[0]);
        assertEquals(LocalDate.of(2026, 10, 1).toEpochDay(), axis.ticks()[5]);
    }

    @Test
    void a_month_is_ticked_in_days() {
        Axis axis = Axis.dates(LocalDate.of(2026, 2, 20), LocalDate.of(2026, 3, 20), 7);
        assertEquals(List.of("21 Feb 2026", "26 Feb", "3 Mar", "8 Mar", "13 Mar", "18 Mar"), axis.labels());
    }

    @Test
    void one_date_alone_and_centuries_have_ticks_too() {
        assertEquals(0.5, Axis.dates(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 1, 1), 7)
                .fraction(LocalDate.of(2026, 1, 1).toEpochDay()), 1e-12);
        assertEquals(List.of("1700", "1800", "1900", "2000"),
                Axis.dates(LocalDate.of(1650, 1, 1), LocalDate.of(2026, 1, 1), 7).labels());
    }

    @Test
    void ticks_ascend_within_the_ends_are_few_and_have_different_words() {
        Random random = new Random(5);
        for (int i = 0; i < 3_000; i++) {
            double low = (random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(9) - 2);
            double high = low + random.nextDouble() * Math.pow(10, random.nextInt(9) - 2);
            ValueScale scale = random.nextBoolean() ? ValueScale.LINEAR : ValueScale.LOGARITHMIC;
            int most = 4 + random.nextInt(5);
            Axis axis = Axis.of(scale, low, high, most);
            String about = scale + " from " + low + " to " + high + ": " + axis.labels();
            assertTrue(axis.ticks().length >= 1 && axis.ticks().length <= 1.4 * most + 1, about);
            assertEquals(axis.ticks().length, axis.labels().size(), about);
            assertEquals(axis.labels().size(), new HashSet<>(axis.labels()).size(), about);
            assertTrue(axis.holds(axis.at(low)) && axis.holds(axis.at(high)), about);
            double span = axis.max() - axis.min();
            for (int t = 0; t < axis.ticks().length; t++) {
                assertTrue(axis.ticks()[t] >= axis.min() - 1e-9 * span && axis.ticks()[t] <= axis.max() + 1e-9 * span, about);
                assertTrue(t == 0 || axis.ticks()[t] > axis.ticks()[t - 1], about);
                assertTrue(axis.labels().get(t).indexOf('E') < 0, about);
            }
        }
    }

    @Test
    void a_place_beyond_an_end_is_brought_just_inside() {
        Axis axis = Axis.between(0, 100, 5);
        assertEquals(1.2, axis.clamp(-5), 1e-12);
        assertEquals(98.8, axis.clamp(1e9), 1e-12);
        assertEquals(50, axis.clamp(50));
    }
}
