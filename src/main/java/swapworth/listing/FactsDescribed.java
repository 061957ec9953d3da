package swapworth.listing;

import java.util.ArrayList;
import java.util.List;

/** The facts of a car in sentences: what is stated, and what is not. */
final class FactsDescribed {
    private static final String UNKNOWN = Title.UNKNOWN.words();

    private final List<String> stated = new ArrayList<>();
    private final List<String> open = new ArrayList<>();

    private FactsDescribed(Facts facts) {
        stated.add(facts.words() + (facts.modelYear().isPresent() ? "" : facts.firstRegistered().map(day -> ", first registered on "
                + day).orElse(facts.ageYears().isPresent() ? ", " + facts.ageYears().getAsDouble() + " years old" : "")));
        if (facts.modelYear().isEmpty() && facts.firstRegistered().isEmpty() && facts.ageYears().isEmpty()) {
            open.add("age");
        }
        facts.mileage().ifPresentOrElse(miles -> stated.add(miles.toString()), () -> open.add("mileage"));
        of("title", facts.title().words());
        of("", facts.runs() == Runs.UNKNOWN ? "" : facts.runs().words());
        if (facts.runs() == Runs.UNKNOWN) {
            open.add("whether it runs");
        }
        of("damage", facts.damageInWords());
        of("rust", facts.rust().words());
        of("paint", facts.paint().words());
        of("interior", facts.interior().words());
        of("mechanical parts", facts.mechanical().words());
        of("records", facts.records().words());
        of("keys", facts.keys().words());
        of("airbags", facts.airbags().words());
        facts.region().ifPresentOrElse(region -> stated.add("region " + region), () -> open.add("region"));
    }

    private void of(String what, String words) {
        if (words.equals(UNKNOWN)) {
            open.add(what);
        } else if (!words.isEmpty()) {
            stated.add(what.isEmpty() ? words : what + " " + words);
        }
    }

    static String of(Facts facts) {
        FactsDescribed made = new FactsDescribed(facts);
        return String.join("; ", made.stated) + "." + (made.open.isEmpty() ? "" : " Not stated: " + String.join(", ", made.open) + ".");
    }
}
