package swapworth.world;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An invented market of used parts with a known truth, and the files that the collector of the sample kept of it: {@code parts.csv},
 * {@code partout.csv} and {@code fees.csv}. The same seed gives the same files on every machine.
 */
public final class PartsWorld {

    /** True prices of parts of the small line at 70,000 miles when sold. */
    private static final Map<String, Integer> PRICES = new LinkedHashMap<>();
    private static final List<String> MECHANICAL = List.of("engine", "gearbox", "propshaft", "rear axle", "front suspension",
            "rear suspension",
            "half shafts", "drivetrain set");
    private static final Map<String, List<String>> SPELLINGS = Map.ofEntries(
            Map.entry("engine", List.of("engine", "Engine", "motor", "lump", "engine complete")),
            Map.entry("gearbox", List.of("gearbox", "transmission", "box", "gear box")),
            Map.entry("rear axle", List.of("rear axle", "diff", "final drive")),
            Map.entry("radiator pack", List.of("radiator pack", "radiator", "rad")),
            Map.entry("engine control unit", List.of("engine control unit", "ECU", "brain")),
            Map.entry("front seats", List.of("front seats", "seats")), Map.entry("wheels", List.of("wheels", "alloys", "rims")),
            Map.entry("left headlamp", List.of("left headlamp", "headlight left")), Map.entry("bonnet", List.of("bonnet", "hood")),
            Map.entry("instrument cluster", List.of("instrument cluster", "clocks")), Map.entry("exhaust", List.of("exhaust", "silencer")));
    /** The parts of the other line against these: a little less, for there are more of them. */
    private static final double SIX = 0.9;

    static {
        Object[] table = {"engine", 2415, "gearbox", 1525, "drivetrain set", 4680, "propshaft", 190, "rear axle", 420, "half shafts", 160,
            "front suspension", 205, "exhaust", 190, "radiator pack", 160, "engine control unit", 190, "alternator", 100,
            "starter motor", 80,
            "front brakes", 145, "instrument cluster", 140, "wheels", 480, "front seats", 465, "left headlamp", 220, "right headlamp", 220,
            "left door", 275, "right door", 275, "boot lid", 220, "rear bumper", 205, "front bumper", 220, "bonnet", 245, "dashboard", 160,
            "centre console", 85, "main loom", 205, "left rear lamp", 110, "right rear lamp", 110, "carpet", 65, "lock set",
            100, "radio", 130};
        for (int i = 0; i < table.length; i += 2) {
            PRICES.put((String) table[i], (Integer) table[i + 1]);
        }
    }

    /** The scale of how one part departs from its like, with 5 degrees of freedom. */
    public static final double ERROR = 0.18;

    private final long seed;
    private final double mechanicalSlope;
    private final double otherSlope;
    private final double gearFactor;

    private PartsWorld(long seed, double mechanicalSlope, double otherSlope, double gearFactor) {
        this.seed = seed;
        this.mechanicalSlope = mechanicalSlope;
        this.otherSlope = otherSlope;
        this.gearFactor = gearFactor;
    }

    /** The usual world: prices fall by these log points with each 10,000 miles. */
    public static PartsWorld of(long seed) {
        return new PartsWorld(seed, -0.14, -0.07, 1);
    }

    /** The same with other slopes, log points per 10,000 miles. */
    public PartsWorld withSlopes(double mechanical, double other) {
        return new PartsWorld(seed, mechanical, other, gearFactor);
    }

    /** The same with engines and gearboxes dearer by a factor. */
    public PartsWorld withGearFactor(double factor) {
        return new PartsWorld(seed, mechanicalSlope, otherSlope, factor);
    }

    /** The middle of the logarithm of what a part sells for on the last evening. */
    public double soldLog(String part, boolean six, double miles) {
        return StrictMath.log(PRICES.get(part)) + (six ? StrictMath.log(SIX) : 0)
                + (part.equals("engine") || part.equals("gearbox") ? StrictMath.log(gearFactor) : 0)
                + (MECHANICAL.contains(part) ? mechanicalSlope : otherSlope) * (miles - 70_000) / 10_000;
    }

    /** The kinds of parts. */
    public static List<String> names() {
        return List.copyOf(PRICES.keySet());
    }

    /** The offers as the collector wrote them down. */
    public String parts(LocalDate lastEvening) {
        Chance chance = Chance.of(seed, "parts");
        List<String> rows = new ArrayList<>();
        rows.add("id,seen_on,part,vehicle,running_gear,mileage,price,price_kind,source,note");
        List<String> names = List.copyOf(PRICES.keySet());
        int number = 0;
        for (String name : names) {
            int offers = name.equals("drivetrain set") ? 4 : name.equals("engine") || name.equals("gearbox") ? 14 : 5;
            for (int k = 0; k < offers; k++) {
                number++;
                boolean six = name.equals("drivetrain set") || chance.happens(0.5);
                int miles = 1_000 * chance.whole(25, 130);
                int days = chance.whole(0, 300);
                boolean sold = chance.happens(0.3);
                double log = soldLog(name, six, miles)
                        + (sold ? 0 : 0.15) + 0.005 * days / 30.4375 + ERROR * chance.studentT(5);
                long price = Math.max(5, 5 * Math.round(StrictMath.exp(log) / 5));
                String id = "p-" + Integer.toString(1_000 + number).substring(1);
                String spelled = chance.oneOf(SPELLINGS.getOrDefault(name, List.of(name)));
                String vehicle = six ? chance.oneOf(List.of("Velmarch", "Galdrise")) : "Sivrette";
                vehicle = MECHANICAL.contains(name) || !six ? vehicle : "Velmarch";
                LocalDate seen = lastEvening.minusDays(days);
                rows.add(String.join(",", id, seen.toString(), spelled, vehicle, "", chance.happens(0.85) ? "" + miles : "", "" + price,
                        sold ? "sold" : "asking", chance.oneOf(List.of("yard list", "owners' notice board", "weekly paper")), ""));
                if (k == 0 && name.equals("engine")) {
                    rows.add(String.join(",", id, seen.plusDays(9).toString(), spelled, vehicle, "", "" + miles, ""
                            + (price - 50), "asking",
                            "yard list", "the same one again"));
                }
            }
        }
        rows.add("p-900," + lastEvening.minusDays(40) + ",thingummy bracket,Velmarch,,60000,35,asking,yard list,whatever that is");
        rows.add("p-901," + lastEvening.minusDays(12) + ",alternator,Sivrette,,64000,0,asking,weekly paper,free to a good home");
        return String.join("\n", rows) + "\n";
    }

    /** The parts of the cars in play and what becomes of them. */
    public static String partout() {
        List<String> rows = new ArrayList<>();
        rows.add("car,part,goes_to,state,price,bundle,local_rule,note");
        for (String car : List.of("tidy roadster", "dead roadster")) {
            for (String part : List.of("engine", "gearbox", "propshaft", "rear axle", "exhaust", "radiator pack", "engine control unit",
                    "alternator",
                    "starter motor", "front brakes", "instrument cluster", "front seats", "wheels", "left headlamp", "right headlamp")) {
                boolean lamp = part.endsWith("headlamp");
                boolean kept = lamp || car.equals("dead roadster") && (part.equals("wheels") || part.equals("front seats"));
                rows.add(String.join(",", car, part, kept ? "keep" : "sell", "", "",
                        part.equals("alternator") || part.equals("starter motor") ? "ancillaries" : "", "", lamp
                        ? "stays on the car" : ""));
            }
        }
        for (String car : List.of("front hit", "tail hit")) {
            for (String part : List.of("engine", "gearbox", "propshaft", "rear axle", "half shafts", "engine control unit", "main loom",
                    "instrument cluster", "front brakes", "exhaust")) {
                rows.add(car + "," + part + ",swap,,,,,");
            }
            for (String part : List.of("radiator pack", "front bumper", "bonnet", "left headlamp", "right headlamp", "left door",
                    "right door",
                    "boot lid", "rear bumper", "left rear lamp", "right rear lamp", "dashboard", "centre console", "carpet",
                    "front seats", "wheels",
                    "alternator", "starter motor", "radio", "lock set", "front suspension")) {
                boolean trim = part.equals("centre console") || part.equals("carpet");
                rows.add(String.join(",", car, part, "sell", car.equals("front hit") && part.equals("bonnet") ? "gone" : "",
                        "", trim ? "trim" : "",
                        "", ""));
            }
            rows.add(car + ",passenger airbag,sell,,60,,,not counted until the local rule is known");
            rows.add(car + ",catalyst,sell,,240,,no,");
        }
        rows.add("tail hit,hulk,sell,,150,,,the yard in Norrowfen said so");
        return String.join("\n", rows) + "\n";
    }

    /** The fee tables of an invented auction and of an invented carrier. */
    public static String fees() {
        return """
                table,kind,from,to,flat,percent,minimum,per_day,free_days,days,per_mile,applies_to,seller,when,car,note
                premium,fee,1,499,85,,,,,,,,auction,,,the buyer's fee of an invented auction
                premium,fee,500,999,160,,,,,,,,auction,,,
                premium,fee,1000,1999,245,,,,,,,,auction,,,
                premium,fee,2000,3499,380,,,,,,,,auction,,,
                premium,fee,3500,4999,510,,,,,,,,auction,,,
                premium,fee,5000,7499,640,,,,,,,,auction,,,
                premium,fee,7500,,,9,,,,,,bid,auction,,,
                gate,fee,,,75,,,,,,,,auction,,,
                online bid,fee,,,,1.5,20,,,,,bid,auction,,,
                sales tax,tax,,,,6,,,,,,bid; premium; gate; online bid,auction; trade,,,\
                private sales are not taxed where this collector lives
                title,paper,,,38,,,,,,,,,,,
                yard,storage,,,,,,40,2,4,,,auction,,,fetched on the fourth day
                freight,freight,0,150,110,,,,,,1.60,,,,,a fixed part and so much a mile
                freight,freight,150,500,180,,,,,,1.10,,,,,
                winching,freight,,,130,,,,,,,,,non-runner,,
                second key,key,,,210,,,,,,,,,no key,,
                fluids and tyres,disposal,,,45,,,,,,,,auction,,,
                bids,increment,0,1000,25,,,,,,,,,,,bids rise by so much
                bids,increment,1000,5000,50,,,,,,,,,,,
                bids,increment,5000,,100,,,,,,,,,,,
                """;
    }
}
