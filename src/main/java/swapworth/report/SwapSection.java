package swapworth.report;

import java.util.ArrayList;
import java.util.List;
import swapworth.assumptions.Question;
import swapworth.chart.SwapCharts;
import swapworth.listing.CarsFile;
import swapworth.swap.SwapAnswer;
import swapworth.swap.Swaps;
import swapworth.table.Table;

/** The finished swaps of a folder as a section of its page, or as a page of their own. */
public final class SwapSection {
    static final String ID = "swap";

    private SwapSection() {
    }

    /**
     * The section.
     *
     * @param swaps the finished cars with their answers
     * @return one block a car, the details folded
     */
    public static Section of(Swaps swaps) {
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose("The finished car has the body of one line and the running gear of another; such cars are seldom sold. Up to"
                + " three approaches answer for one quantity, the price of this one car. They share listings and assumptions, so they"
                + " are put together by how they move together, and what they say is shown beside the result. The range is wide because"
                + " little is known; swaps that you saw and offers for your own car narrow it. Amounts are in "
                + swaps.currency().getCurrencyCode() + "."));
        if (!swaps.notes().isEmpty()) {
            parts.add(Part.bullets(swaps.notes()));
        }
        int number = 1;
        for (SwapAnswer answer : swaps.answers()) {
            answer.answer().told().ifPresent(value -> parts.add(Part.picture(SwapCharts.approaches(value,
                    swaps.currency().getCurrencyCode()))));
            List<Table> tables = answer.tables();
            for (int t = 0; t < tables.size(); t++) {
                Part rows = Part.rows(tables.get(t));
                parts.add(t < 3 ? rows : Part.folded("swap-" + number + "-" + t, tables.get(t).title(), rows));
            }
            number++;
        }
        parts.add(Part.folded("swap-assumptions", "Assumptions on finished swaps", Part.rows(swaps.assumptions().table(Question.SWAP))));
        parts.add(Part.cautions("Before you sell, lend on or insure a swap", Cautions.ofSwaps()));
        return new Section(ID, "The finished swap", parts);
    }

    /**
     * A page of the finished swaps alone.
     *
     * @param swaps the finished cars with their answers
     * @param cars the file in which they stand
     * @return the page
     */
    public static Page page(Swaps swaps, CarsFile cars) {
        List<Section> sections = new ArrayList<>(CarsSection.toLookAt(cars));
        sections.add(of(swaps));
        sections.add(Section.of("cautions", "Cautions", Part.cautions("Before you rely on any of this", Cautions.ofValues())));
        return Page.of("Finished swaps", "Prices in " + swaps.currency().getCurrencyCode() + ".", sections);
    }
}
