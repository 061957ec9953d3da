package swapworth.report;

import java.util.ArrayList;
import java.util.List;
import swapworth.donor.DonorStudy;
import swapworth.donor.Landed;
import swapworth.donor.PartOut;

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

    /**
     * What the left-over parts of each car bring.
     *
     * @param study what the folder says
     * @return a section
     */
    public static Section partOuts(DonorStudy study) {
        List<Part> parts = new ArrayList<>();
        String currency = study.currency().getCurrencyCode();
        parts.add(Part.prose("A list of all parts at full price is not money. Below is what comes back once each part has turned out good or not, has"
                + " waited for its buyer, and fees, postage, packing and returns are paid. Hours are counted and not priced. Prices rest on "
                + study.offers() + " offers of parts."));
        for (PartOut out : study.partOuts()) {
            String id = "parts-" + (study.partOuts().indexOf(out) + 1);
            out.recovery().ifPresent(recovery -> {
                parts.add(Part.rows(recovery.table(currency)));
                parts.add(Part.folded(id, out.car().name() + ": each part, each month, and what the damage leaves",
                        Part.rows(recovery.partsTable(currency)), Part.rows(recovery.monthsTable(currency)), Part.rows(out.leftTable())));
            });
        }
        return Section.of("parts", "What the parts bring", parts.toArray(Part[]::new));
    }

    /**
     * The cautions of crashed cars and of parts that are sold.
     *
     * @return a section
     */
    public static Section cautions() {
        List<String> cautions = new ArrayList<>(Cautions.ofCrashedCars());
        cautions.addAll(Cautions.ofPartsSold());
        return Section.of("cautions", "Cautions", Part.cautions("Before you rely on any of this", cautions));
    }
}
