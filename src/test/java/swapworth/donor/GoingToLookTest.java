package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.table.Cell;
import swapworth.table.Table;

/** Whether it pays to go and look at a car, by hand: twice the way at so much a mile against price x chance x part of the price. */
class GoingToLookTest {

    @TempDir
    private Path folder;

    private Optional<Table> table(Assumptions assumptions, String... cars) throws IOException {
        Donors donors = new Donors(folder);
        String[] lines = new String[cars.length + 1];
        lines[0] = "name,role,vehicle,seller,price,distance_away";
        System.arraycopy(cars, 0, lines, 1, cars.length);
        donors.file("cars.csv", lines).file("fees.csv", "table,kind,flat", "title,paper,38");
        return Landed.of(donors.cars(), FeeFiles.read(folder.resolve("fees.csv")), Optional.empty()).lookTable(assumptions);
    }

    private static String shown(Table table, int row, int column) {
        return table.rows().get(row).get(column).shown();
    }

    @Test
    void the_way_is_held_against_what_a_car_that_is_not_as_described_costs() throws IOException {
        Table table = table(Donors.assuming(false, "trip_cost", 0.5, "not_as_described", 50, "misdescribed_by", 4),
                "near,donor,Velmarch,private,8000,100", "far,donor,Velmarch,private,8000,400", "unknown,donor,Velmarch,private,8000,")
                .orElseThrow();
        assertEquals(List.of("near", "far"), table.rows().stream().map(row -> row.get(0).shown()).toList(), "without a distance no row");
        assertEquals(List.of("near", "100", "100 to 100", "160", "160 to 160", "> 99", "go and look"),
                table.rows().get(0).stream().map(Cell::shown).toList());
        assertEquals("400", shown(table, 1, 1));
        assertEquals("< 1", shown(table, 1, 5));
        assertTrue(shown(table, 1, 6).startsWith("ask for photographs and a film first"), shown(table, 1, 6));
        assertTrue(String.join(" ", table.notes()).contains("you look at 2.0 for each that you bring home"), table.notes().toString());
    }

    @Test
    void what_is_assumed_is_as_unsure_as_stated() throws IOException {
        Table table = table(Assumptions.defaults(), "close,donor,Velmarch,private,5000,140").orElseThrow();
        double chance = Double.parseDouble(table.rows().get(0).get(5).exact());
        assertTrue(chance > 20 && chance < 80, "a close call: " + chance);
        assertTrue(shown(table, 0, 6).contains("close call"), shown(table, 0, 6));
    }

    @Test
    void where_every_car_is_taken_to_be_worse_none_is_brought_home() throws IOException {
        Table table = table(Donors.assuming(false, "not_as_described", 100), "near,donor,Velmarch,private,8000,100").orElseThrow();
        String notes = String.join(" ", table.notes());
        assertTrue(notes.contains("100 of 100 cars") && notes.contains("you bring none home."), notes);
        assertEquals("go and look", shown(table, 0, 6));
    }

    // By hand: 2 x 10 miles x 0.125 a mile; 8,000 x 0.25 % x 2.5 % = 0.5.
    @Test
    void what_is_assumed_is_shown_as_it_was_stated() throws IOException {
        Table table = table(Donors.assuming(false, "trip_cost", 0.125, "not_as_described", 0.25, "misdescribed_by", 2.5),
                "near,donor,Velmarch,private,8000,10").orElseThrow();
        String notes = String.join(" ", table.notes());
        assertTrue(notes.contains("0.25 of 100 cars turn out worse than described, and are then worth 2.5 % less; a mile of the way costs"
                + " 0.125 ("), notes);
        assertEquals(2.5, Double.parseDouble(table.rows().get(0).get(1).exact()), 1e-9);
        assertEquals(0.5, Double.parseDouble(table.rows().get(0).get(3).exact()), 1e-9);
        assertEquals("0 to 0", shown(table, 0, 4));
    }

    @Test
    void a_longer_way_and_a_cheaper_car_speak_against_looking() throws IOException {
        Table table = table(Assumptions.defaults(), "car,donor,Velmarch,private,5000,140", "farther,donor,Velmarch,private,5000,200",
                "cheaper,donor,Velmarch,private,3500,140").orElseThrow();
        double[] chance = table.rows().stream().mapToDouble(row -> Double.parseDouble(row.get(5).exact())).toArray();
        assertTrue(chance[1] < chance[0] && chance[2] < chance[0], Arrays.toString(chance));
        assertEquals(chance[1], chance[2], 1e-9, "as much by as much");
    }

    // Four in five that one costs more than the other is where a close call ends, at either end.
    @Test
    void what_is_said_follows_from_how_often_looking_costs_less() throws IOException {
        String[] cars = IntStream.range(0, 60).mapToObj(k -> "car " + k + ",donor,Velmarch,private,5000," + (20 + 10 * k))
                .toArray(String[]::new);
        Table table = table(Assumptions.defaults(), cars).orElseThrow();
        Set<String> said = new HashSet<>();
        double before = 100;
        for (int row = 0; row < cars.length; row++) {
            double chance = Double.parseDouble(table.rows().get(row).get(5).exact());
            String expected = chance >= 80 ? "go and look" : chance > 20 ? "a close call" : "ask for photographs and a film first";
            assertTrue(shown(table, row, 6).startsWith(expected), chance + ": " + shown(table, row, 6));
            assertTrue(chance <= before);
            before = chance;
            said.add(expected);
        }
        assertEquals(3, said.size());
        assertTrue(String.join(" ", table.notes()).contains("you look at 1.3 for each"), "1 / (1 - 0.25)");
    }

    @Test
    void where_no_distance_is_known_nothing_is_said() throws IOException {
        assertEquals(Optional.empty(), table(Assumptions.defaults(), "car,donor,Velmarch,private,5000,"));
    }
}
