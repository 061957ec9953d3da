package swapworth.report;

import java.util.ArrayList;
import java.util.List;
import swapworth.market.IndexTables;
import swapworth.market.MarketIndex;
import swapworth.market.PriceModel;
import swapworth.table.Table;

/** The section on the market in time: how its level moved, how fast, when it stood highest, and where it may go. */
public final class MarketSection {

    private MarketSection() {
    }

    /**
     * The section of an index.
     *
     * @param model the model
     * @param index its index
     * @return the section
     */
    public static Section of(PriceModel model, MarketIndex index) {
        List<Part> parts = new ArrayList<>();
        for (Table table : IndexTables.all(model, index)) {
            parts.add(Part.rows(table));
        }
        return Section.of("market", "The market in time", parts.toArray(Part[]::new));
    }
}
