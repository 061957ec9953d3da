package swapworth.world;

import java.util.List;

/**
 * Every name of the sample world, in one place. All are coined for it: none is a real maker, model, person, place or seller.
 */
final class Names {

    static final String MAKER = "Ostrivell";

    static final String ROADSTER = "Sivrette";
    static final String SALOON = "Velmarch";
    static final String OPEN_SIX = "Galdrise";
    static final String ESTATE = "Loddimer";
    static final String COUPE = "Drisque";
    static final String COUPE_SIX = "Drisque Six";

    static final String PLAIN = "Plain";
    static final String FITTED = "Fitted";

    static final String FOUR = "four 2.0";
    static final String SIX = "six 3.2";

    static final List<String> REGIONS = List.of("Norrowfen", "Eastmarl", "Ossreach");

    static final List<String> AUCTIONS = List.of("Ninth Gantry Auctions", "Ossreach Lot Hall", "Blue Hopper Lot Sales");
    static final List<String> PRIVATE_SOURCES = List.of("owners' notice board", "weekly paper", "windscreen notice");
    static final List<String> TRADE_SOURCES = List.of("yard list", "weekly paper");

    static final List<String> COLOURS = List.of("silver", "blue", "black", "white", "red", "green", "grey");

    private Names() {
    }
}
