package swapworth.listing;

/**
 * A model line, a year and a number that members of it may share. Equality is written out because records otherwise find it by
 * reflection, which a short run pays for.
 */
record Cohort(String vehicle, int year, long number) {

    @Override
    public boolean equals(Object other) {
        return other instanceof Cohort c && year == c.year && number == c.number && vehicle.equals(c.vehicle);
    }

    @Override
    public int hashCode() {
        return (31 * vehicle.hashCode() + year) * 31 + Long.hashCode(number * 0x9E3779B97F4A7C15L);
    }
}
