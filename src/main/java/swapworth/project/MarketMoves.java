package swapworth.project;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.market.Subject;
import swapworth.statistics.Quantiles;

/** How money of the ledger moves with the market: estimates of cars and parts draw by draw, and cars that were bought since then. */
final class MarketMoves {
    private final CarsInPlay cars;
    private final Assumptions assumptions;

    MarketMoves(CarsInPlay cars, Assumptions assumptions) {
        this.cars = cars;
        this.assumptions = assumptions;
    }

    /**
     * What the level of the donor's line may be beside its middle moves what parts bring in; that of the recipient's what cars cost.
     */
    Forecast.Options moving(Forecast.Options options) {
        Forecast.Options moving = options;
        double follow = assumptions.get("parts_move_with_cars").middle() / 100;
        Optional<double[]> donor = cars.donor().flatMap(car -> cars.level(car.facts()));
        Optional<double[]> recipient = cars.recipient().flatMap(car -> cars.level(car.facts()));
        if (donor.isPresent()) {
            moving = moving.moving(Category.SOLD, DrawFigures.power(beside(donor.get()), follow));
        }
        return recipient.isPresent() ? moving.moving(Category.PURCHASE, beside(recipient.get())) : moving;
    }

    /** Draws over their median. */
    private static double[] beside(double[] draws) {
        return DrawFigures.times(draws, 1 / Quantiles.median(draws));
    }

    /**
     * For each car that was bought while listings were seen, by the line of its row: how such a car of the same age has moved since, by
     * the model line of its role.
     */
    Map<Integer, double[]> since(Ledger ledger) {
        Optional<LocalDate> first = cars.market().read().cars().stream().flatMap(c -> c.firstSeen().stream()).min(LocalDate::compareTo);
        Map<Integer, double[]> since = new HashMap<>();
        for (Entry entry : ledger.entries()) {
            Optional<String> line = entry.shares().size() == 1 ? cars.lineOf(entry.shares().get(0).car()) : Optional.empty();
            boolean seen = first.isPresent() && !entry.date().isBefore(first.get());
            if (entry.category() == Category.PURCHASE && entry.status() == Entry.Status.ACTUAL && seen && line.isPresent()) {
                double[] now = ofTheAge(line.get(), ledger.on());
                double[] then = ofTheAge(line.get(), entry.date());
                for (int i = 0; i < now.length; i++) {
                    now[i] /= then[i];
                }
                since.put(entry.line(), now);
            }
        }
        return since;
    }

    /** A car of the line whose age is stated outright, so that it does not grow older from one day to another. */
    private double[] ofTheAge(String line, LocalDate day) {
        double age = assumptions.get("redo_age").middle();
        double miles = age * assumptions.get("miles_per_year").middle();
        CarFacts facts = CarFacts.of(line).ageYears(age).mileage(new Mileage(miles, MileageStatus.UNKNOWN)).build();
        return cars.values().level(Subject.of(facts, LevelOfTrade.PRIVATE_ASKING, day));
    }
}
