package swapworth.listing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import swapworth.reading.Spelling;

/**
 * What a cell says of damage.
 *
 * @param zones empty if it does not say
 * @param unmatched words that were not understood
 */
record Damaged(Optional<Set<Damage>> zones, List<String> unmatched) {
    private static final String MARKS = ";,/+|&";

    /**
     * What a cell says.
     *
     * @param meaning the program's word for a word of the user's
     */
    static Damaged of(String text, UnaryOperator<String> meaning) {
        List<String> unmatched = new ArrayList<>(0);
        if (Spelling.isBlank(text)) {
            return new Damaged(Optional.empty(), unmatched);
        }
        if (ListingWords.saysNoDamage(Spelling.key(text))) {
            return new Damaged(Optional.of(Set.of()), unmatched);
        }
        Set<Damage> zones = EnumSet.noneOf(Damage.class);
        for (String zone : parts(text)) {
            Optional<Damage> known = ListingWords.DAMAGE.meaning(meaning.apply(zone));
            if (known.isPresent()) {
                zones.add(known.get());
            } else {
                unmatched.add(zone);
            }
        }
        return new Damaged(zones.isEmpty() ? Optional.empty() : Optional.of(Collections.unmodifiableSet(zones)), unmatched);
    }

    /** What stands between the marks of a list, whichever marks its writer took. */
    private static List<String> parts(String text) {
        List<String> parts = new ArrayList<>();
        int start = 0;
        for (int i = 0; i <= text.length(); i++) {
            if (i == text.length() || MARKS.indexOf(text.charAt(i)) >= 0) {
                String part = Spelling.stripped(text.substring(start, i));
                start = i + 1;
                if (!part.isEmpty()) {
                    parts.add(part);
                }
            }
        }
        return parts;
    }
}
