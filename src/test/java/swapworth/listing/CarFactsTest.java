package swapworth.listing;

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
}
