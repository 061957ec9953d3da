package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The word that says on which level of a group a subject stands. */
final class LevelWords {
    private static final int FIRST_YEAR = 1900;
    /** The words of the usual years, made once for all rows. */
    private static final List<Optional<String>> YEARS = new ArrayList<>();
    private static final Optional<String> UNSTATED = Optional.of("");

    static {
        for (int year = FIRST_YEAR; year < 2100; year++) {
            YEARS.add(Optional.of(Integer.toString(year)));
        }
    }

    private LevelWords() {
    }

    /** The line of a subject; none where it stands for all lines together. */
    static Optional<String> line(Subject subject) {
        String line = subject.facts().vehicle();
        return line.isEmpty() ? Optional.empty() : Optional.of(line);
    }

    /** A word for a model year: its own where given, else the year of first registration. */
    static Optional<String> vintage(Subject subject) {
        if (subject.facts().modelYear().isPresent()) {
            return year(subject.facts().modelYear().getAsInt());
        }
        return subject.facts().firstRegistered().isPresent() ? year(subject.facts().firstRegistered().get().getYear()) : Optional.empty();
    }

    private static Optional<String> year(int year) {
        int at = year - FIRST_YEAR;
        return at >= 0 && at < YEARS.size() ? YEARS.get(at) : Optional.of(Integer.toString(year));
    }

    /** The level of a region: where a car stands, or the level of those of which nobody says it. */
    static Optional<String> region(Subject subject) {
        Optional<String> region = subject.facts().region();
        return region.isPresent() ? region : UNSTATED;
    }
}
