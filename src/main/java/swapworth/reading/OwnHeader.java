package swapworth.reading;

import java.util.Currency;
import java.util.List;
import java.util.Optional;

/** A header of the user's own beside the name that {@code words.csv} puts in its place. */
final class OwnHeader {
    private final String header;
    private final String name;

    OwnHeader(String header, String name) {
        this.header = header;
        this.name = name;
    }

    /** The unit or currency that the header states against the name; nothing where the two agree, or one of them states none. */
    Optional<String> contradiction() {
        if (header.equals(name)) {
            return Optional.empty();
        }
        return clash(DistanceUnit.named(lastWord(name)), DistanceUnit.ofHeader(header)).map(DistanceUnit::symbol)
                .or(() -> clash(Currencies.ofHeader(name), Currencies.ofOwnHeader(header)).map(Currency::getCurrencyCode))
                .or(() -> clash(power(lastWord(name)), power(lastWord(header))))
                .or(() -> clash(weight(lastWord(name)), weight(lastWord(header))));
    }

    private static <T> Optional<T> clash(Optional<T> ofName, Optional<T> ofHeader) {
        return ofHeader.filter(unit -> ofName.isPresent() && !ofName.get().equals(unit));
    }

    private static Optional<String> power(String word) {
        return Optional.of(word).filter(List.of("kw", "hp", "ps")::contains);
    }

    private static Optional<String> weight(String word) {
        return word.equals("lbs") ? Optional.of("lb") : Optional.of(word).filter(List.of("kg", "lb")::contains);
    }

    private static String lastWord(String header) {
        String words = Spelling.header(header);
        return words.substring(words.lastIndexOf(' ') + 1);
    }
}
