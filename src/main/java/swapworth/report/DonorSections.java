package swapworth.report;

import java.util.ArrayList;
import java.util.List;
import swapworth.donor.Landed;

/** What a page says of donors and recipients. */
public final class DonorSections {

    private DonorSections() {
    }

    /**
     * What each car costs once it stands in the yard.
     *
     * @param landed the costs
     * @return a section
     */
    public static Section landed(Landed landed) {
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose("A bid is not what a car costs. Each line below is charged by a table of fees.csv; lines that add nothing say why."));
        landed.tables().forEach(table -> parts.add(Part.rows(table)));
        if (!landed.unpriced().isEmpty()) {
            parts.add(Part.prose("Without a price or a planned bid: " + String.join(", ", landed.unpriced()) + "."));
        }
        return Section.of("landed", "What each car costs at the door", parts.toArray(Part[]::new));
    }
}
