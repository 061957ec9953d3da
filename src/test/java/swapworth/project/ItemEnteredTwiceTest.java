package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.reading.RowProblem;

class ItemEnteredTwiceTest {

    @TempDir
    Path folder;

    private Alternatives read(String rows) throws IOException {
        Path file = folder.resolve("alternatives.csv");
        Files.writeString(file, "alternative,item,amount,kind,month\n" + rows);
        return Alternatives.withDefaults().read(file);
    }

    @Test
    void an_item_that_stands_twice_in_one_way_is_asked_about() throws IOException {
        Alternatives twice = read("buy it,the car,9000,cost,0\nbuy it,The  Car,9000,cost,0\nbuy it,then,5000,resale,\n");
        assertEquals(List.of("3 the same item of this alternative stands on line 2 too; both are counted: is it one item entered twice?"),
                twice.rowsRead().questions().stream().map(p -> p.line() + " " + p.message()).toList());
        Alternatives apart = read("buy it,insurance,90,cost,0\nbuy it,insurance,90,cost,12\nleave it,insurance,90,cost,0\n"
                + "buy it,then,5000,resale,\nleave it,then,100,resale,\n");
        assertEquals(List.of(), apart.rowsRead().questions().stream().map(RowProblem::message).toList());
    }

    @Test
    void two_exports_behind_each_other_count_once() throws IOException {
        String rows = "buy it,the car,9000,cost,0\nbuy it,then,5000,resale,\n";
        Alternatives twice = read(rows + "alternative,item,amount,kind,month\n" + rows);
        assertEquals("alternatives.csv, 5 rows: 2 used, 2 set aside, 1 rejected, 0 blank", twice.rowsRead().sentence());
        assertArrayEquals(read(rows).all().get(0).netCost(), twice.all().get(0).netCost(), 1e-9);
    }

    @Test
    void a_row_of_sums_is_no_way_and_no_gate() throws IOException {
        assertEquals(1, read("buy it,the car,9000,cost,0\nbuy it,then,5000,resale,\nTotal (USD),,4000,,\n").all().size());
        Path gates = folder.resolve("gates.csv");
        Files.writeString(gates, "gate,answer\ninsurable,yes\nSum,\n");
        assertEquals("gates.csv, 2 rows: 1 used, 1 set aside, 0 rejected, 0 blank", Gates.read(gates).read().sentence());
    }
}
