package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Listings;
import swapworth.statistics.SparseRow;

/** That rows made from the design when asked for are the rows that a smaller collection keeps. */
class EncodedRowsTest {
    private final EvidenceList.Found found = EvidenceList.in(Listings.read(Path.of("sample-listings", "listings.csv")).cars(), List.of());
    private final EvidenceList evidence = found.evidence();
    private final Encoder encoder = new Encoder(evidence, found.stock(), Assumptions.defaults(), List.of());
    private final EncodedRows kept = new EncodedRows(evidence, encoder, 0.1, Integer.MAX_VALUE);
    private final EncodedRows made = new EncodedRows(evidence, encoder, 0.1, 0);

    @Test
    void a_row_made_when_asked_for_is_the_row_kept() {
        int remarks = 0;
        int differences = 0;
        for (int i = 0; i < evidence.size(); i++) {
            Encoded one = kept.get(i);
            Encoded other = made.get(i);
            sameEntries(one.row(), other.row(), i);
            sameEntries(one.row(), made.row(i), i);
            assertEquals(one.inflation(), other.inflation());
            assertEquals(one.growth(), other.growth());
            assertEquals(one.remarks(), other.remarks());
            double[] ones = new double[encoder.columns()];
            java.util.Arrays.fill(ones, 1);
            assertArrayEquals(one.byTerm(ones, encoder.terms().size()), other.byTerm(ones, encoder.terms().size()), "row " + i);
            remarks += one.remarks().size();
            differences += kept.isDifference(i) ? 1 : 0;
        }
        assertTrue(remarks > 0 && differences > 0, "the sample has rows of both kinds that need care: " + remarks + ", " + differences);
    }

    @Test
    void the_design_is_the_same_either_way() {
        for (int i = 0; i < evidence.size(); i++) {
            sameEntries(kept.design().row(i), made.design().row(i), i);
        }
    }

    @Test
    void the_second_price_of_a_car_enters_as_its_difference_from_the_first() {
        for (int i = 0; i < evidence.size(); i++) {
            if (kept.isDifference(i)) {
                sameEntries(kept.get(i).row().plus(-1, kept.get(evidence.comparedWith(i)).row()), kept.design().row(i), i);
            }
        }
    }

    private static void sameEntries(SparseRow one, SparseRow other, int row) {
        assertEquals(one.size(), other.size(), "row " + row);
        for (int e = 0; e < one.size(); e++) {
            assertEquals(one.index(e), other.index(e), "row " + row);
            assertEquals(one.value(e), other.value(e), "row " + row);
        }
    }
}
