package swapworth.listing;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** A look at a row of {@link ListingColumns}: both what was seen and what it says of the car. */
final class StoredRow implements Sighting, Facts {
    private final ListingColumns columns;
    private final int row;

    StoredRow(ListingColumns columns, int row) {
        this.columns = columns;
        this.row = row;
    }

    @Override
    public Origin origin() {
        return columns.origin(row);
    }

    @Override
    public Facts facts() {
        return this;
    }

    @Override
    public double amount() {
        return columns.amount(row);
    }

    @Override
    public CarFacts made() {
        return columns.facts(row);
    }

    @Override
    public Map<String, String> further() {
        return columns.further(row);
    }

    @Override
    public Optional<String> id() {
        return columns.id.get(row);
    }

    @Override
    public Optional<LocalDate> seenOn() {
        return columns.seenOn.get(row);
    }

    @Override
    public PriceKind kind() {
        return columns.kind.get(row);
    }

    @Override
    public PriceIncludes includes() {
        return columns.includes.get(row);
    }

    @Override
    public Outcome outcome() {
        return columns.outcome.get(row);
    }

    @Override
    public Saved saved() {
        return columns.saved.get(row);
    }

    @Override
    public List<String> remarks() {
        return columns.remarks.get(row);
    }

    @Override
    public String vehicle() {
        return columns.vehicle.get(row);
    }

    @Override
    public Optional<String> trim() {
        return columns.trim.get(row);
    }

    @Override
    public Optional<String> body() {
        return columns.body.get(row);
    }

    @Override
    public Optional<String> runningGear() {
        return columns.runningGear.get(row);
    }

    @Override
    public OptionalDouble powerKw() {
        return columns.powerKw.get(row);
    }

    @Override
    public OptionalDouble cylinders() {
        return columns.cylinders.get(row);
    }

    @Override
    public OptionalDouble weightKg() {
        return columns.weightKg.get(row);
    }

    @Override
    public DrivenWheels drivenWheels() {
        return columns.drivenWheels.get(row);
    }

    @Override
    public OptionalInt modelYear() {
        return columns.modelYear.get(row);
    }

    @Override
    public Optional<LocalDate> firstRegistered() {
        return columns.firstRegistered.get(row);
    }

    @Override
    public OptionalDouble ageYears() {
        return columns.ageYears.get(row);
    }

    @Override
    public Optional<Mileage> mileage() {
        return columns.mileage.get(row);
    }

    @Override
    public Seller seller() {
        return columns.seller.get(row);
    }

    @Override
    public Optional<String> region() {
        return columns.region.get(row);
    }

    @Override
    public Runs runs() {
        return columns.runs.get(row);
    }

    @Override
    public Condition rust() {
        return columns.rust.get(row);
    }

    @Override
    public Condition paint() {
        return columns.paint.get(row);
    }

    @Override
    public Condition interior() {
        return columns.interior.get(row);
    }

    @Override
    public Condition mechanical() {
        return columns.mechanical.get(row);
    }

    @Override
    public Condition records() {
        return columns.records.get(row);
    }

    @Override
    public Keys keys() {
        return columns.keys.get(row);
    }

    @Override
    public Airbags airbags() {
        return columns.airbags.get(row);
    }

    @Override
    public Title title() {
        return columns.title.get(row);
    }

    @Override
    public Optional<Set<Damage>> damage() {
        return columns.damage.get(row);
    }
}
