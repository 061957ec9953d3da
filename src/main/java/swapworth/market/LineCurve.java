package swapworth.market;

import java.util.List;

/**
 * How price runs with mileage in one line: the fitted curve for a stated car of the line, and the prices of its cars, each adjusted to
 * that car in everything but mileage.
 *
 * @param line the line
 * @param car the stated car in words
 * @param miles ascending mileages, miles
 * @param middle the median price at each
 * @param low lower end of the 80 % range of one car at each
 * @param high upper end
 * @param points the cars
 */
public record LineCurve(String line, String car, double[] miles, double[] middle, double[] low, double[] high, List<Point> points) {

    /** Copies the figures in. */
    public LineCurve {
        miles = miles.clone();
        middle = middle.clone();
        low = low.clone();
        high = high.clone();
        points = List.copyOf(points);
    }

    @Override
    public double[] miles() {
        return miles.clone();
    }

    @Override
    public double[] middle() {
        return middle.clone();
    }

    @Override
    public double[] low() {
        return low.clone();
    }

    @Override
    public double[] high() {
        return high.clone();
    }

    /** Which line, which car and how many prices. */
    @Override
    public String toString() {
        return "price by mileage in the line '" + line + "', for " + car + ", by " + points.size()
                + (points.size() == 1 ? " price" : " prices");
    }

    /**
     * A price of a car of the line.
     *
     * @param car the name of the car
     * @param miles its mileage
     * @param price the price as seen
     * @param adjusted the price adjusted to the stated car in everything but mileage
     * @param mileage where its mileage is from
     */
    public record Point(String car, double miles, double price, double adjusted, OfMileage mileage) {
    }

    /** Where a mileage is from. */
    public enum OfMileage {
        /** The row states it. */
        STATED,
        /** It is filled in by the age of the car: the place of the price tells nothing of how price runs with mileage. */
        FILLED_IN
    }
}
