package swapworth.report;

import java.util.ArrayList;
import java.util.List;
import swapworth.chart.TimeCharts;
import swapworth.market.IndexTables;
import swapworth.market.MarketIndex;
import swapworth.market.PriceModel;
import swapworth.market.TimeOnMarket;

/** The section on the market in time: how its level moved, how fast, when it stood highest, and where it may go. */
public final class MarketSection {
    static final String ID = "market";

    private MarketSection() {
    }

    /**
     * The section of a model.
     *
     * @param model the model
     * @return the section; with listings of one day or without dates, why there is no index
     */
    public static Section of(PriceModel model) {
        return model.index().match(index -> of(model, index), no -> section(List.of(Part.prose(IndexTables.summary(model)))));
    }

    private static Section section(List<Part> parts) {
        return new Section(ID, "The market in time", parts);
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
        parts.add(Part.prose(IndexTables.summary(index)));
        parts.add(Part.bullets(index.cautions().stream().map(c -> c + ".").toList()));
        parts.add(Part.picture(TimeCharts.index(index)));
        parts.add(Part.picture(TimeCharts.againstDepreciation(index)));
        parts.add(Part.rows(IndexTables.drift(index)));
        parts.add(Part.rows(IndexTables.lines(model, index)));
        parts.add(Part.rows(IndexTables.peak(index)));
        parts.add(Part.rows(IndexTables.outlook(model, index)));
        parts.add(Part.folded("index-months", "The level of each month", Part.rows(IndexTables.months(index)),
                Part.rows(IndexTables.comparison(index))));
        TimeOnMarket.of(model).match(time -> {
            // Without a sale all its lines would lie on each other at 100 %; the table says why.
            if (time.untilSale(TimeOnMarket.Vanished.SOLD).endings() > 0) {
                parts.add(Part.picture(TimeCharts.untilSale(time)));
                parts.add(Part.picture(TimeCharts.untilSaleByAsk(time)));
            }
            parts.add(Part.picture(TimeCharts.cuts(time)));
            time.tables().forEach(table -> parts.add(Part.rows(table)));
            return parts;
        }, no -> {
            parts.add(Part.prose("Cannot tell how long such cars take to sell: " + no.reason() + "; needed: " + no.needed() + "."));
            return parts;
        });
        return section(parts);
    }
}
