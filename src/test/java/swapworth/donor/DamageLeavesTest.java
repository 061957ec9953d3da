package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Airbags;
import swapworth.listing.CarFacts;
import swapworth.listing.Damage;
import swapworth.listing.Runs;

/** What damage leaves: common practice of the trade, no source. */
class DamageLeavesTest {

    private static String left(String part, Runs runs, Airbags airbags, Damage... damage) {
        Set<Damage> all = EnumSet.noneOf(Damage.class);
        all.addAll(Set.of(damage));
        CarFacts car = CarFacts.of("Velmarch").runs(runs).airbags(airbags).damage(all).build();
        return DamageLeaves.of(car, PartCatalogue.get().kind(part).orElseThrow()).state().words();
    }

    private static String left(String part, Damage... damage) {
        return left(part, Runs.DRIVES, Airbags.IN_PLACE, damage);
    }

    @Test
    void a_blow_makes_doubtful_what_lies_in_its_way_and_leaves_the_far_end() {
        assertEquals("doubtful", left("radiator", Damage.FRONT));
        assertEquals("likely good", left("gearbox", Damage.FRONT));
        assertEquals("present", left("boot lid", Damage.FRONT));
        assertEquals("doubtful", left("rear axle", Damage.REAR));
        assertEquals("present", left("engine", Damage.REAR));
        assertEquals("present", left("engine"));
    }

    @Test
    void a_blow_from_one_side_spares_the_doors_of_the_other() {
        assertEquals("gone", left("left door", Damage.LEFT));
        assertEquals("doubtful", left("left headlamp", Damage.LEFT));
        assertEquals("present", left("right door", Damage.LEFT));
        assertEquals("present", left("right headlamp", Damage.LEFT));
        assertEquals("gone", left("right door", Damage.LEFT, Damage.RIGHT));
    }

    @Test
    void of_several_damages_the_worst_counts() {
        assertEquals("gone", left("left door", Damage.ROOF, Damage.LEFT));
        assertEquals("doubtful", left("windscreen", Damage.FRONT, Damage.ROOF));
    }

    @Test
    void flood_and_fire_take_electronics_and_seats() {
        for (Damage damage : Set.of(Damage.FLOOD, Damage.FIRE)) {
            for (String part : Set.of("engine control unit", "main loom", "front seats", "dashboard")) {
                assertEquals("gone", left(part, damage), part + " after " + damage);
            }
            assertEquals("doubtful", left("engine", damage));
        }
    }

    @Test
    void a_car_that_does_not_run_has_no_engine_to_sell_and_fired_airbags_are_gone() {
        assertEquals("gone", left("engine", Runs.ENGINE_DEAD, Airbags.IN_PLACE));
        assertEquals("present", left("gearbox", Runs.ENGINE_DEAD, Airbags.IN_PLACE));
        assertEquals("doubtful", left("engine", Runs.NOT_TRIED, Airbags.IN_PLACE));
        assertEquals("likely good", left("engine", Runs.ENGINE_FIRES, Airbags.IN_PLACE));
        assertEquals("gone", left("driver airbag", Runs.DRIVES, Airbags.FIRED));
        assertEquals("doubtful", left("dashboard", Runs.DRIVES, Airbags.FIRED));
    }

    @Test
    void each_group_of_parts_has_its_numbers_and_each_name_one_meaning() {
        for (String group : PartCatalogue.get().groups()) {
            if (!group.equals(PartKind.HULK) && !group.equals(PartKind.CORE)) {
                for (String of : Set.of("sells_", "days_", "hours_", "postage_")) {
                    assertTrue(Assumptions.defaults().get(of + group).middle() > 0, of + group);
                }
            }
        }
        assertFalse(PartCatalogue.get().kind("thingummy").isPresent());
        assertEquals("engine", PartCatalogue.get().kind(" MOTOR ").orElseThrow().name());
    }
}
