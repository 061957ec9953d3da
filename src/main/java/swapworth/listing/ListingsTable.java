package swapworth.listing;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * Listings as a Tablesaw table, for notebooks. Every column has a stated type: numbers are doubles, days are dates, all else is
 * text; nothing is detected. A missing number is missing, a missing text is empty.
 */
public final class ListingsTable {

    private ListingsTable() {
    }

    /**
     * The used rows as a table, one row a listing; distances in miles, prices in the base currency, further columns as text.
     *
     * @param read what came out of the files
     * @return a new table named {@code listings}
     */
    public static Table of(ListingsRead read) {
        int n = read.listings().size();
        StringColumn file = StringColumn.create("file", n);
        DoubleColumn line = DoubleColumn.create("line", n);
        StringColumn id = StringColumn.create("id", n);
        StringColumn car = StringColumn.create("car", n);
        DateColumn seenOn = DateColumn.create("seen_on", n);
        StringColumn vehicle = StringColumn.create("vehicle", n);
        StringColumn trim = StringColumn.create("trim", n);
        StringColumn body = StringColumn.create("body", n);
        StringColumn gear = StringColumn.create("running_gear", n);
        DoubleColumn modelYear = DoubleColumn.create("model_year", n);
        DoubleColumn age = DoubleColumn.create("age_years", n);
        DoubleColumn miles = DoubleColumn.create("mileage_mi", n);
        DoubleColumn price = DoubleColumn.create("price", n);
        StringColumn currency = StringColumn.create("typed_currency", n);
        StringColumn typed = StringColumn.create("typed_price", n);
        StringColumn level = StringColumn.create("level", n);
        StringColumn includes = StringColumn.create("price_includes", n);
        StringColumn seller = StringColumn.create("seller", n);
        StringColumn region = StringColumn.create("region", n);
        StringColumn runs = StringColumn.create("runs", n);
        StringColumn title = StringColumn.create("title", n);
        StringColumn outcome = StringColumn.create("outcome", n);
        Map<Origin, String> cars = new HashMap<>();
        Map<String, StringColumn> further = new TreeMap<>();
        for (Car one : read.cars()) {
            for (Listing sighting : one.sightings()) {
                cars.put(sighting.origin(), one.name());
            }
        }
        for (int i = 0; i < n; i++) {
            Listing listing = read.listings().get(i);
            CarFacts facts = listing.facts();
            file.set(i, listing.origin().file());
            line.set(i, listing.origin().line());
            text(id, i, listing.id());
            car.set(i, cars.getOrDefault(listing.origin(), ""));
            if (listing.seenOn().isPresent()) {
                seenOn.set(i, listing.seenOn().get());
            }
            vehicle.set(i, facts.vehicle());
            text(trim, i, facts.trim());
            text(body, i, facts.body());
            text(gear, i, facts.runningGear());
            if (facts.modelYear().isPresent()) {
                modelYear.set(i, facts.modelYear().getAsInt());
            }
            OptionalDouble years = listing.seenOn().isPresent() ? facts.ageOn(listing.seenOn().get()) : facts.ageYears();
            if (years.isPresent()) {
                age.set(i, years.getAsDouble());
            }
            if (facts.mileage().isPresent()) {
                miles.set(i, facts.mileage().get().miles());
            }
            price.set(i, listing.price().amount());
            currency.set(i, listing.price().typed().currency().getCurrencyCode());
            typed.set(i, listing.price().typed().amount().toPlainString());
            level.set(i, listing.level().words());
            includes.set(i, listing.price().includes().words());
            seller.set(i, facts.seller().words());
            text(region, i, facts.region());
            runs.set(i, facts.runs().words());
            title.set(i, facts.title().words());
            outcome.set(i, listing.outcome().words());
            for (Map.Entry<String, String> entry : facts.further().entrySet()) {
                further.computeIfAbsent(entry.getKey(), name -> StringColumn.create(name, n)).set(i, entry.getValue());
            }
        }
        Table table = Table.create("listings", file, line, id, car, seenOn, vehicle, trim, body, gear, modelYear, age, miles,
                price,
                currency, typed, level, includes, seller, region, runs, title, outcome);
        for (StringColumn column : further.values()) {
            String name = column.name();
            table.addColumns(table.containsColumn(name) ? column.setName("further " + name) : column);
        }
        return table;
    }

    private static void text(StringColumn column, int row, Optional<String> text) {
        column.set(row, text.orElse(""));
    }
}
