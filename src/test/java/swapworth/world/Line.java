package swapworth.world;

import java.util.List;
import swapworth.listing.DrivenWheels;

/**
 * The model lines of the sample world, none of which is built any longer. Each has one body and one running gear; the coupe's
 * body is seen with both gears, so that all bodies and gears are linked.
 */
public enum Line {
    /** The light two-seat roadster: the recipient. */
    ROADSTER(Names.ROADSTER, "siv", Names.ROADSTER + " open", Names.FOUR, List.of(Names.PLAIN, Names.FITTED),
            112, 4, 1035, 85, 2012, 2021, 6_300, 0.18, 0.20, 0.60),
    /** The six-cylinder saloon: the donor. */
    SALOON(Names.SALOON, "vel", Names.SALOON + " saloon", Names.SIX, List.of(Names.PLAIN, Names.FITTED),
            196, 6, 1520, 92, 2013, 2021, 11_000, 0.55, 0.15, 0.85),
    /** The factory car that comes closest to the swap: an open body of its own with the saloon's running gear. */
    OPEN_SIX(Names.OPEN_SIX, "gal", Names.OPEN_SIX + " open", Names.SIX, List.of(Names.FITTED),
            196, 6, 1310, 40, 2014, 2021, 6_500, 0.10, 0.35, 0.60),
    /** The estate with the saloon's running gear. */
    ESTATE(Names.ESTATE, "lod", Names.ESTATE + " estate", Names.SIX, List.of(Names.PLAIN, Names.FITTED),
            190, 6, 1610, 30, 2013, 2021, 11_500, 0.15, 0.30, 0.60),
    /** The coupe with the roadster's running gear. */
    COUPE(Names.COUPE, "dri", Names.COUPE + " coupe", Names.FOUR, List.of(Names.PLAIN, Names.FITTED),
            112, 4, 1120, 33, 2012, 2020, 8_500, 0.15, 0.20, 0.60),
    /** The same coupe with the saloon's running gear: the only body that is seen with both. */
    COUPE_SIX(Names.COUPE_SIX, "dsx", Names.COUPE + " coupe", Names.SIX, List.of(Names.FITTED),
            192, 6, 1255, 25, 2013, 2020, 8_000, 0.15, 0.25, 0.60);

    private final String vehicle;
    private final String idPrefix;
    private final String body;
    private final String gear;
    private final List<String> trims;
    private final int powerKw;
    private final int cylinders;
    private final int weightKg;
    private final int usualCars;
    private final int firstModelYear;
    private final int lastModelYear;
    private final int milesPerYear;
    private final double auctionShare;
    private final double tradeShare;
    private final double crashedAtAuction;

    Line(String vehicle, String idPrefix, String body, String gear, List<String> trims, int powerKw, int cylinders,
            int weightKg, int usualCars, int firstModelYear, int lastModelYear, int milesPerYear, double auctionShare,
            double tradeShare, double crashedAtAuction) {
        this.vehicle = vehicle;
        this.idPrefix = idPrefix;
        this.body = body;
        this.gear = gear;
        this.trims = trims;
        this.powerKw = powerKw;
        this.cylinders = cylinders;
        this.weightKg = weightKg;
        this.usualCars = usualCars;
        this.firstModelYear = firstModelYear;
        this.lastModelYear = lastModelYear;
        this.milesPerYear = milesPerYear;
        this.auctionShare = auctionShare;
        this.tradeShare = tradeShare;
        this.crashedAtAuction = crashedAtAuction;
    }

    /** The name in the column {@code vehicle}. */
    public String vehicle() {
        return vehicle;
    }

    /** The name in the column {@code body}. */
    public String body() {
        return body;
    }

    /** The name in the column {@code running_gear}. */
    public String gear() {
        return gear;
    }

    /** The line of that name. */
    public static Line named(String vehicle) {
        for (Line line : values()) {
            if (line.vehicle.equals(vehicle)) {
                return line;
            }
        }
        throw new IllegalArgumentException("no line is named " + vehicle);
    }

    String idPrefix() {
        return idPrefix;
    }

    List<String> trims() {
        return trims;
    }

    int powerKw() {
        return powerKw;
    }

    int cylinders() {
        return cylinders;
    }

    int weightKg() {
        return weightKg;
    }

    DrivenWheels drivenWheels() {
        return DrivenWheels.REAR;
    }

    int usualCars() {
        return usualCars;
    }

    int firstModelYear() {
        return firstModelYear;
    }

    int lastModelYear() {
        return lastModelYear;
    }

    int milesPerYear() {
        return milesPerYear;
    }

    double auctionShare() {
        return auctionShare;
    }

    double tradeShare() {
        return tradeShare;
    }

    double crashedAtAuction() {
        return crashedAtAuction;
    }
}
