package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.Listings;
import swapworth.statistics.Quantiles;

/**
 * How much of an outlook is assumed is how far it follows when another drift is assumed. A year and a half of listings settle how the
 * market moved, and far less how it goes on.
 */
class OutlookAssumedTest {
    private static final int AHEAD = 12;

    private final List<Car> cars = Listings.read(Path.of("sample-listings", "listings.csv")).cars();

    private PriceModel model(double driftPercent) {
        Assumption drift = Assumptions.defaults().get("market_drift");
        return PriceModel.options().with(Assumptions.defaults().with(new Assumption(drift.name(), drift.question(), driftPercent,
                drift.spread(), drift.unit(), drift.source(), drift.note()))).fit(cars);
    }

    private static double logOfMiddle(PriceModel model) {
        return Math.log(Quantiles.median(model.index().orElseThrow().outlook().orElseThrow().factors(model.draws(4000, 1), "", AHEAD)));
    }

    // By another way: the model fitted again to drifts of +0.5 and -0.5 % a month, which lie 12 x 0.01 log points apart after a year.
    @Test
    void what_is_said_to_be_assumed_is_how_far_the_outlook_follows_the_assumption() {
        double follows = (logOfMiddle(model(0.5)) - logOfMiddle(model(-0.5))) / (AHEAD * Math.log(1.005 / 0.995));
        Outlook outlook = model(0).index().orElseThrow().outlook().orElseThrow();
        assertEquals(follows, outlook.weightOfAssumption(), 0.06);
        assertTrue(follows > 0.3, "by " + follows + ", where the movement of the year before is assumed by 3 %");
    }

    @Test
    void the_table_says_it() {
        PriceModel model = model(0);
        MarketIndex index = model.index().orElseThrow();
        String text = IndexTables.outlook(model, index).text().replaceAll("\\s+", " ");
        String share = Figures.share(index.outlook().orElseThrow().weightOfAssumption()).shown();
        assertTrue(text.contains("over 12 months it follows what is assumed of the drift (market_drift) by " + share), text);
    }
}
