package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;

class ListingsTableTest extends ReadingListings {

    @Test
    void listings_become_a_table_of_stated_types() {
        Table table = ListingsTable.of(read("id,seen_on,vehicle,trim,year,mileage_mi,price,price kind,Price,region\n"
                .replace(",Price,", ",Boot,")
                + "0123,2024-01-01,A,340t,2010,50000,9000,asking,NA,N\nb,,A,,2011,,8000,sold,1E5,\n"));
        assertEquals(2, table.rowCount());
        assertEquals("0123", table.stringColumn("id").get(0));
        assertEquals("340t", table.stringColumn("trim").get(0));
        assertEquals("", table.stringColumn("boot").get(0));
        assertEquals("1E5", table.stringColumn("boot").get(1));
        assertEquals(ColumnType.DOUBLE, table.column("mileage_mi").type());
        assertTrue(table.column("mileage_mi").isMissing(1));
        assertTrue(table.column("seen_on").isMissing(1));
        assertEquals(8000, table.doubleColumn("price").get(1));
        assertEquals("private sold", table.stringColumn("level").get(1));
    }
}
