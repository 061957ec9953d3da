package swapworth.listing;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import swapworth.reading.Spelling;

/** The columns that a listings file may have, each with the headers by which it is known. */
enum ListingColumn {
    NAME("name", "car name"),
    ROLE("role"),
    ID("id", "ad", "ad id", "advert", "advert id", "advertisement", "listing", "listing id", "ref", "reference", "lot",
            "lot number"),
    SEEN_ON("seen_on", "date", "seen", "date seen", "seen date", "observed", "observed on", "sighted", "day"),
    VEHICLE("vehicle", "line", "model line", "car", "model"),
    MAKER("maker", "make", "manufacturer", "marque"),
    TRIM("trim", "trim level", "variant", "version", "grade"),
    BODY("body", "body shell", "shell"),
    RUNNING_GEAR("running_gear", "gear", "powertrain"),
    POWER("power_kw", "power", "kw", "power hp", "hp", "power ps", "ps"),
    CYLINDERS("cylinders", "cyl"),
    WEIGHT("weight_kg", "weight", "kerb weight", "curb weight", "weight lb", "weight lbs", "kerb weight kg", "curb weight lb"),
    DRIVEN_WHEELS("driven_wheels", "drive", "driven", "drive wheels"),
    MODEL_YEAR("model_year", "year", "my"),
    FIRST_REGISTERED("first_registered", "registered", "first registration", "registered on", "registration date", "first reg"),
    AGE("age_years", "age"),
    MILEAGE("mileage", "miles", "mi", "km", "kms", "odometer", "odo", "kilometres", "kilometers", "distance", "chassis mileage"),
    GEAR_MILEAGE("gear_mileage", "engine mileage", "running gear mileage"),
    MILEAGE_STATUS("mileage_status", "odometer status"),
    GEAR_MILEAGE_STATUS("gear_mileage_status", "engine mileage status"),
    PRICE("price", "ask", "asking", "asking price", "price asked", "amount", "sold price", "sale price", "price paid",
            "hammer price",
            "winning bid"),
    PLANNED_BID("planned_bid", "bid"),
    CURRENCY("currency", "ccy"),
    PRICE_KIND("price_kind", "kind", "price type", "kind of price"),
    PRICE_INCLUDES("price_includes", "includes", "included", "fees included"),
    SELLER("seller", "seller kind", "seller type", "sold by", "offered by"),
    REGION("region", "location", "place", "town", "city", "state", "area", "county"),
    DISTANCE_AWAY("distance_away", "away", "how far", "distance from me"),
    RUNS("runs", "running", "moves", "starts"),
    RUST("rust", "corrosion"),
    PAINT("paint", "paintwork"),
    INTERIOR("interior", "inside"),
    MECHANICAL("mechanical", "mechanicals", "mechanics"),
    RECORDS("records", "service records", "service history", "history"),
    KEYS("keys", "key"),
    AIRBAGS("airbags", "airbag"),
    TITLE("title", "title status", "title brand"),
    DAMAGE("damage", "damaged", "damage zone", "damage zones"),
    OUTCOME("outcome", "result", "ended how"),
    ENDED_ON("ended_on", "ended", "end date", "date ended", "sold on", "date sold"),
    SAVED("saved", "saved how", "collected", "collected how"),
    OPTIONS("options", "equipment", "extras"),
    SOURCE("source", "site", "website", "found on", "found at", "link", "url"),
    NOTE("note", "notes", "comment", "comments", "remark", "remarks", "description");

    private static final Map<String, ListingColumn> BY_KEY = new HashMap<>();

    static {
        for (ListingColumn column : values()) {
            BY_KEY.put(Spelling.key(column.header), column);
            for (String synonym : column.synonyms) {
                BY_KEY.put(synonym, column);
            }
        }
    }

    private final String header;
    private final String[] synonyms;

    ListingColumn(String header, String... synonyms) {
        this.header = header;
        this.synonyms = synonyms;
    }

    /** The name by which the column stands in templates and messages. */
    String header() {
        return header;
    }

    /** The column that a header means; {@code words} is its key without a unit or currency behind it. */
    static Optional<ListingColumn> of(String words) {
        return Optional.ofNullable(BY_KEY.get(words));
    }
}
