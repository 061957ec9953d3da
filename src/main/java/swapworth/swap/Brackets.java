package swapworth.swap;

import java.util.Optional;
import swapworth.listing.CarFacts;

/**
 * What stands around a finished car: draws of the logarithm of the middle price of the stock car, and of the factory equivalent at the
 * distances of chassis and running gear and with the effect of distance shared. Each is empty where the listings cannot tell.
 */
final class Brackets {
    final Optional<double[]> stock;
    final Optional<double[]> factoryAtChassis;
    final Optional<double[]> factoryAtGear;
    final Optional<double[]> factoryShared;

    private final Situation s;

    Brackets(MiddlePrices prices) {
        this.s = prices.situation();
        this.stock = Optional.of(s.stock).filter(prices::isKnown).map(prices::logLevel);
        Optional<CarFacts> factory = s.factory.filter(prices::isKnown);
        this.factoryShared = factory.map(prices::logLevel);
        this.factoryAtChassis = factory.map(prices::logAtChassis);
        this.factoryAtGear = factory.flatMap(f -> f.gearMileage().map(m -> prices.logAtChassis(Situation.changed(f, b -> b.mileage(m)))));
    }

    /** Why an approach that begins with the stock car cannot tell. */
    Approach withoutStock(Approach.Kind kind) {
        return new Approach.Untold(kind, "the listings do not tell what the stock car is worth", s.model.lines().contains(s.stock.vehicle())
                ? "running_gear (and body) of the recipient in cars.csv, as the listings of the line '" + s.stock.vehicle() + "' name them"
                : "listings of the line '" + s.stock.vehicle() + "'");
    }
}
