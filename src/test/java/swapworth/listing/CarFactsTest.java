package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
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

    /** Facts of every kind, so that one that is forgotten where cars are copied is seen. */
    private static CarFacts whole(String word, int number) {
        return CarFacts.of("line " + word).trim("trim " + word).body("body " + word).runningGear("gear " + word).powerKw(number)
                .cylinders(number).weightKg(number).drivenWheels(DrivenWheels.values()[number]).modelYear(2000 + number)
                .firstRegistered(LocalDate.of(2000 + number, 1, 1)).ageYears(number).mileage(new Mileage(number, MileageStatus.READ))
                .gearMileage(new Mileage(number, MileageStatus.READ)).seller(Seller.values()[number]).region("region " + word)
                .distanceAway(number).runs(Runs.values()[number]).rust(Condition.values()[number]).paint(Condition.values()[number])
                .interior(Condition.values()[number]).mechanical(Condition.values()[number]).records(Condition.values()[number])
                .keys(Keys.values()[number]).airbags(Airbags.values()[number]).title(Title.values()[number])
                .damage(Set.of(Damage.values()[number])).options("options " + word).further(Map.of("colour", word)).build();
    }

    @Test
    void in_the_form_of_another_a_car_takes_what_its_maker_made_and_keeps_the_rest() throws ReflectiveOperationException {
        CarFacts own = whole("own", 1);
        CarFacts form = whole("form", 2);
        CarFacts both = own.inFormOf(form);
        Set<String> taken = Set.of("vehicle", "trim", "body", "runningGear", "powerKw", "cylinders", "weightKg", "drivenWheels");
        for (RecordComponent component : CarFacts.class.getRecordComponents()) {
            Object ofOwn = component.getAccessor().invoke(own);
            Object ofForm = component.getAccessor().invoke(form);
            assertNotEquals(ofOwn, ofForm, component.getName() + " is not in whole()");
            assertEquals(taken.contains(component.getName()) ? ofForm : ofOwn, component.getAccessor().invoke(both),
                    component.getName());
        }
        assertEquals(CarFacts.of("line").modelYear(2001).build(), CarFacts.of("own").trim("Plain").body("shell").powerKw(90)
                .modelYear(2001).build().inFormOf(CarFacts.of("line").build()), "what is not known of the form is not that of the car");
    }
}
