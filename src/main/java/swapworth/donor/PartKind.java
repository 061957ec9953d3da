package swapworth.donor;

/**
 * A kind of part that the program knows.
 *
 * @param name its name
 * @param group the group whose numbers hold for it where the user gives none
 * @param zone where it sits
 * @param driven the wheels that a car with this part drives: front, rear, or empty for any
 */
record PartKind(String name, String group, String zone, String driven) {

    static final String HULK = "hulk";
    static final String CORE = "core";
    static final String ENGINE = "engine";
    static final String GEARBOX = "gearbox";
    private static final String SET = "set";
    private static final String AIRBAGS = "airbags";

    boolean isEngine() {
        return group.equals(ENGINE);
    }

    boolean isEngineOrGearbox() {
        return isEngine() || group.equals(GEARBOX);
    }

    boolean isAirbag() {
        return group.equals(AIRBAGS);
    }

    boolean isHulk() {
        return group.equals(HULK);
    }

    /** A dead engine, sold for what is in it. */
    boolean isCore() {
        return group.equals(CORE);
    }

    /** Whether it is what is left of the car or of its engine, rather than a part of it. */
    boolean isLeftOver() {
        return isHulk() || isCore();
    }

    /** Whether its price falls with the distance it has run, and belongs to the running gear rather than to the line. */
    boolean mechanical() {
        return isEngineOrGearbox() || group.equals("axles") || isSet();
    }

    /** Engine, gearbox and what belongs to them, sold as one. */
    boolean isSet() {
        return group.equals(SET);
    }

    /** What to know of it where it goes into another car; empty for most. */
    String inAnotherCar(GoesTo where) {
        if (where != GoesTo.SWAP) {
            return "";
        }
        return isAirbag() ? "; whether a used one may be fitted is for your local law to say: leave it to trained people"
                : name.equals("instrument cluster") ? "; its odometer shows the donor's distance, which is not that of the other car:"
                        + " follow your odometer law, and keep proof of both readings" : "";
    }

    /** Whether it may be sold only where the local rule is met. */
    boolean ruled() {
        return isAirbag() || group.equals("catalyst");
    }

    /** left, right, or empty. */
    String side() {
        return name.startsWith("left ") ? "left" : name.startsWith("right ") ? "right" : "";
    }
}
