package swapworth.swap;

import java.util.List;
import swapworth.listing.CarFacts;
import swapworth.table.Cell;

/** What the value of a finished swap stands by, in words. */
final class Basis {
    private final SwapValue value;
    private final Situation s;
    private final Approaches worked;

    Basis(SwapValue value) {
        this.value = value;
        this.s = value.situation();
        this.worked = value.worked();
    }

    /** What the value stands by: approaches, cars, swaps and offers. */
    String words() {
        long ofLine = ofLine(s.stock);
        int swaps = worked.seen.used().size();
        int offers = value.offers().size();
        return told() + " of 3 approaches, " + ofLine + (ofLine == 1 ? " car" : " cars") + " of the line '" + s.stock.vehicle() + "', "
                + s.model.cars().size() + " in the listings, " + (swaps == 0 ? "no swap seen" : swapsSeen(swaps)) + ", " + offers
                + (offers == 1 ? " offer" : " offers") + " for the car itself";
    }

    static String swapsSeen(long count) {
        return count + (count == 1 ? " swap seen" : " swaps seen");
    }

    /** By what the price was found, in sentences: a sale of this very car first, then the approaches that told, swaps seen and offers. */
    String howFound() {
        List<OwnOffer> sales = value.offers().stream().filter(o -> o.kind() == OwnOffer.Kind.SOLD).sorted(OwnOffer.ORDER).toList();
        int alike = worked.alike.count();
        int listed = s.model.pricesOfPair(s.finished);
        String sources = String.join("; ", value.weights().entrySet().stream().filter(e -> e.getValue() > 0).map(e -> source(e.getKey())
                + " (weight " + Math.round(100 * e.getValue()) + " %)").toList());
        String first = sales.isEmpty() ? listed + alike > 0 ? "" : "no car like this is in the owner's listings or among the swaps seen. "
                : "this very car was sold, " + String.join(" and ", sales.stream().map(o -> "for " + Cell.format(o.amount(), 0)
                        + o.on().map(d -> " on " + d).orElse("")).toList()) + ", and the range stands by that first. ";
        String seen = listed == 0 ? "" : " Of such cars " + listed + (listed == 1 ? " price is" : " prices are") + " in the listings.";
        if (!worked.seen.used().isEmpty()) {
            long sold = worked.seen.used().stream().filter(swap -> swap.kind() == SeenSwap.Kind.SOLD).count();
            seen += " Beside the listings: " + swapsSeen(worked.seen.used().size()) + " that other people made, " + sold + " of them sold, "
                    + alike + " with this body and this running gear" + (alike == 0 ? "." : ", which count in the result itself.");
        }
        int others = value.offers().size() - sales.size();
        return first + (sales.isEmpty() ? "The price" : "Beside that it") + " is put together from " + sources + "." + seen
                + (others == 0 ? "" : " What happened when this car was on offer, " + others + (others == 1 ? " time" : " times")
                + ", counts too.");
    }

    private String source(Approach.Kind kind) {
        return switch (kind) {
            case BODY_AND_GEAR -> "cars that share its body and cars that share its running gear";
            case COST -> "what the car without its running gear, that gear and the work cost";
            case POSITION -> "where swaps stand between the stock car and the car that the maker sold with such running gear";
        };
    }

    /** How much of it is assumption. */
    String held() {
        return "Assumptions hold " + Math.round(100 * value.priorShare()) + " % of what is unsure about the middle price of such swaps"
                + (value.offers().isEmpty() ? "" : " before the offers for this car") + ", the largest part '"
                + value.largestAssumption().assumption() + "' with " + Math.round(100 * value.largestAssumption().share()) + " %";
    }

    private long told() {
        return worked.all().stream().filter(Approach.Told.class::isInstance).count();
    }

    private long ofLine(CarFacts facts) {
        return s.model.cars().stream().filter(c -> c.facts().vehicle().equals(facts.vehicle())).count();
    }

    /** Parts are priced as sound: which of them a fault of the whole car is in, nobody states. */
    static String soundParts(FinishedCar car) {
        return car.statedFaults().isEmpty() ? "" : "; its parts are taken to have none of its faults";
    }

    /** At what distance the factory equivalent is held against the finished car where its gear has run another one. */
    static String halfWay(Approaches worked) {
        return worked.brackets.factoryAtGear.isEmpty() ? "" : " at a price between those at chassis and at running-gear mileage, as the"
                + " finished car is (swap_mileage_share)";
    }
}
