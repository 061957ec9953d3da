package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
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
        assertTrue(String.join(" ", table.notes()).contains("2.0 on average"), table.notes().toString());
    }

    @Test
    void what_is_assumed_is_as_unsure_as_stated() throws IOException {
        Table table = table(Assumptions.defaults(), "close,donor,Velmarch,private,5000,140").orElseThrow();
        double chance = Double.parseDouble(table.rows().get(0).get(5).exact());
        assertTrue(chance > 20 && chance < 80, "a close call: " + chance);
        assertTrue(shown(table, 0, 6).contains("close call"), shown(table, 0, 6));
    }

    @Test
    void where_no_distance_is_known_nothing_is_said() throws IOException {
        assertEquals(Optional.empty(), table(Assumptions.defaults(), "car,donor,Velmarch,private,5000,"));
    }
}
