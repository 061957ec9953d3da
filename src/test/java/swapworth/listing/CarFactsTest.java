package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class CarFactsTest {

    @Test
    void a_measure_that_no_car_has_is_refused_where_it_is_stated() {
        CarFacts car = CarFacts.of("Sivrette").build();
        List<CarFacts.Builder> wrong = List.of(car.toBuilder().powerKw(Double.NaN), car.toBuilder().cylinders(0),
                car.toBuilder().weightKg(-1), car.toBuilder().ageYears(-4), car.toBuilder().distanceAway(-5),
                car.toBuilder().distanceAway(Double.NaN), car.toBuilder().modelYear(-3));
        wrong.forEach(builder -> assertThrows(IllegalArgumentException.class, builder::build));
    }

    @Test
    void a_refused_measure_is_told_with_what_it_may_be() {
        CarFacts.Builder car = CarFacts.of("Sivrette");
        assertEquals("no car has the model year 16: it must be 1886 to 2200",
                assertThrows(IllegalArgumentException.class, () -> car.modelYear(16).build()).getMessage());
        assertEquals("no car has the power -3.5: it must be a finite number of kilowatts above 0",
                assertThrows(IllegalArgumentException.class, () -> CarFacts.of("Sivrette").powerKw(-3.5).build()).getMessage());
    }

    @Test
    void the_same_car_of_another_line_keeps_all_other_facts() {
        CarFacts car = CarFacts.of("Sivrette").modelYear(2016).title(Title.CLEAN).build();
        assertEquals(CarFacts.of("Velmarch").modelYear(2016).title(Title.CLEAN).build(), car.toBuilder().vehicle("Velmarch").build());
    }
}
