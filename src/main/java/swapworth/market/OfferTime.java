package swapworth.market;

import swapworth.assumptions.Assumptions;
import swapworth.listing.Days;
import swapworth.statistics.Bound;
import swapworth.statistics.SparseRow;

/**
 * What the time on offer of each price tells of it beside the market: cars still on offer at the last look stand above it, and a sale may
 * stay with the ask that it was haggled down from. No value is asked for with either.
 */
final class OfferTime {
    /**
     * On what part of the step of cars still on offer at the last look each price stands, 0 to 1: the dear ones stay, so that the longer a
     * car has stood the further it stands above the market. Empty where no price stands on it.
     */
    private final float[] stepOnOffer;
    private int onOfferColumn = -1;
    /**
     * How many months after the first price of its car each later one was made, at another level of trade: what is paid may have stayed
     * with the ask that it was haggled down from, or have followed the market since. Empty where all were made at once.
     */
    private final float[] monthsAfterAsk;
    private int afterAskColumn = -1;

    OfferTime(EvidenceList evidence, Stock stock, Assumptions assumptions) {
        this.stepOnOffer = stepsOnOffer(evidence, stock, assumptions);
        this.monthsAfterAsk = monthsAfterAsk(evidence, stock);
    }

    /** Half of the step after so many days, three quarters after twice as many: nobody knows of a car just listed that nobody takes it. */
    private static float[] stepsOnOffer(EvidenceList evidence, Stock stock, Assumptions assumptions) {
        double half = assumptions.get("still_on_offer_half").middle();
        double lately = assumptions.get("still_on_offer_days").middle();
        float[] steps = new float[evidence.isWatched() ? evidence.size() : 0];
        boolean any = false;
        for (int i = 0; i < steps.length; i++) {
            if (evidence.onOffer(i) && stock.seenLately(i, lately)) {
                steps[i] = (float) (1 - StrictMath.pow(2, -stock.stood(i) / half));
                any |= steps[i] > 0;
            }
        }
        return any ? steps : new float[0];
    }

    /** A bid that missed says nothing of it: it stands with the price that it is compared with. */
    private static float[] monthsAfterAsk(EvidenceList evidence, Stock stock) {
        float[] months = new float[evidence.size()];
        boolean any = false;
        for (int i = 0; i < months.length; i++) {
            int before = evidence.bound(i) == Bound.NONE ? evidence.comparedWith(i) : -1;
            if (before >= 0) {
                months[i] = months[before] + (float) (stock.daysBetween(before, i) / Days.PER_MONTH);
                any |= months[i] != 0;
            }
        }
        for (int i = 0; i < months.length; i++) {
            int with = evidence.bound(i) == Bound.NONE ? -1 : evidence.comparedWith(i);
            months[i] = with >= 0 ? months[with] : months[i];
        }
        return any ? months : new float[0];
    }

    /** Adds a term for each of the two that some price tells of. */
    void addTo(ModelTerms terms) {
        if (stepOnOffer.length > 0) {
            onOfferColumn = terms.add(new Terms.Measure("still on offer at the last look", Group.TIME, "%",
                    Terms.Prior.of(terms.assumptions(), "still_on_offer"), (s, m) -> 0)).from();
        }
        if (monthsAfterAsk.length > 0) {
            afterAskColumn = terms.add(new Terms.Measure("a sale stays with its ask", Group.TIME, "% per month",
                    Terms.Prior.of(terms.assumptions(), "sale_stays_with_ask"), (s, m) -> 0)).from();
        }
    }

    /** Whether the cars still on offer at the last look stand on a step of their own. */
    boolean setsOnOfferApart() {
        return onOfferColumn >= 0;
    }

    /** Whether it tells anything of a price. */
    boolean tellsOf(int price) {
        return stepOnOffer(price) != 0 || monthsAfterAsk(price) != 0;
    }

    /** Writes what it tells of a price. */
    void encode(int price, SparseRow.Writer row) {
        row.add(onOfferColumn, stepOnOffer(price));
        row.add(afterAskColumn, monthsAfterAsk(price));
    }

    private double stepOnOffer(int price) {
        return onOfferColumn >= 0 ? stepOnOffer[price] : 0;
    }

    private double monthsAfterAsk(int price) {
        return afterAskColumn >= 0 ? monthsAfterAsk[price] : 0;
    }

    /** A row as it were had the car not been on offer any more, or been sold when it was asked for. */
    SparseRow without(SparseRow row) {
        return row.without(onOfferColumn).without(afterAskColumn);
    }
}
