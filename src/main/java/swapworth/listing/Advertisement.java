package swapworth.listing;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/** One advertisement: the sightings of one id, or one row without an id, with its facts laid out for quick comparison. */
final class Advertisement {

    /** By day; rows without a day first; the order of the files within a day. */
    static final Comparator<Listing> BY_DAY = new Comparator<>() {
        @Override
        public int compare(Listing a, Listing b) {
            return a.seenOn().orElse(LocalDate.MIN).compareTo(b.seenOn().orElse(LocalDate.MIN));
        }
    };

    final List<Listing> sightings;
    final CarFacts facts;
    final String vehicle;
    final int year;
    final String trim;
    final String region;
    final String source;
    final String note;
    final String options;
    final double firstMiles;
    final double lastMiles;
    final double firstPrice;
    final double lastPrice;
    final long firstDay;
    final long lastDay;
    final boolean dated;

    /** The advertisement of some rows, which stand in the order of their days. */
    Advertisement(List<Listing> ordered) {
        sightings = ordered;
        CarFacts known = ordered.get(0).facts();
        for (int i = 1; i < ordered.size(); i++) {
            known = known.updatedBy(ordered.get(i).facts());
        }
        facts = known;
        vehicle = known.vehicle();
        year = known.modelYear().isPresent() ? known.modelYear().getAsInt()
                : known.firstRegistered().isPresent() ? -known.firstRegistered().get().getYear() : 0;
        trim = known.trim().orElse("");
        region = known.region().orElse("");
        source = ordered.get(0).source().orElse("");
        note = ordered.get(0).note().orElse("");
        options = known.options().orElse("");
        double from = Double.NaN;
        double to = Double.NaN;
        for (Listing listing : ordered) {
            if (listing.facts().mileage().isPresent()) {
                to = listing.facts().mileage().get().miles();
                from = Double.isNaN(from) ? to : from;
            }
        }
        firstMiles = from;
        lastMiles = to;
        firstPrice = ordered.get(0).price().amount();
        lastPrice = ordered.get(ordered.size() - 1).price().amount();
        dated = ordered.get(0).seenOn().isPresent();
        firstDay = dated ? ordered.get(0).seenOn().get().toEpochDay() : 0;
        lastDay = dated ? ordered.get(ordered.size() - 1).seenOn().get().toEpochDay() : 0;
    }

    Origin origin() {
        return sightings.get(0).origin();
    }
}
