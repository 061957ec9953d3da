package swapworth.market;

import swapworth.market.Measures.Measured;

/** How many cars of a line have prices, and from which age and mileage to which they reach. */
final class LineExtent {
    private int cars;
    private double leastAge = Double.POSITIVE_INFINITY;
    private double mostAge = Double.NEGATIVE_INFINITY;
    private double leastMiles = Double.POSITIVE_INFINITY;
    private double mostMiles = Double.NEGATIVE_INFINITY;

    /**
     * Takes in a row. What was filled in has not been seen.
     *
     * @param isOfNextCar whether the row before is one of another car
     */
    void take(Measured row, boolean isOfNextCar) {
        cars += isOfNextCar ? 1 : 0;
        if (row.isAgeStated()) {
            leastAge = Math.min(leastAge, row.age());
            mostAge = Math.max(mostAge, row.age());
        }
        if (row.isMileageStated()) {
            leastMiles = Math.min(leastMiles, row.miles());
            mostMiles = Math.max(mostMiles, row.miles());
        }
    }

    /** Takes in what other rows of the line reach. */
    void take(LineExtent more) {
        cars += more.cars;
        leastAge = Math.min(leastAge, more.leastAge);
        mostAge = Math.max(mostAge, more.mostAge);
        leastMiles = Math.min(leastMiles, more.leastMiles);
        mostMiles = Math.max(mostMiles, more.mostMiles);
    }

    int cars() {
        return cars;
    }

    /** Whether a car's age is stated, and lies more than half a year outside of those that others state. */
    boolean isOutsideAges(Measured car) {
        return car.isAgeStated() && leastAge <= mostAge && (car.age() < leastAge - 0.5 || car.age() > mostAge + 0.5);
    }

    /** Whether a car's mileage is stated, and lies more than 2,000 miles outside of those that others state. */
    boolean isOutsideMiles(Measured car) {
        return car.isMileageStated() && leastMiles <= mostMiles && (car.miles() < leastMiles - 2000 || car.miles() > mostMiles + 2000);
    }
}
