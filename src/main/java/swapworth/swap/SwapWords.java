package swapworth.swap;

import java.util.Map;
import java.util.Optional;
import swapworth.reading.CellReader;
import swapworth.reading.Parsed;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** The words of the columns that only swaps have, beside those of listings. */
final class SwapWords {
    static final Vocabulary<BuiltBy> BUILT_BY = Vocabulary.<BuiltBy>empty()
            .with(BuiltBy.OWNER, "owner", "self", "home", "me", "private")
            .with(BuiltBy.SHOP, "shop", "workshop", "garage", "trade", "professional")
            .with(BuiltBy.UNKNOWN, "unknown");

    private SwapWords() {
    }

    /** A further column of a row; empty where it is blank. */
    static Optional<String> text(Map<String, String> further, String column) {
        return Optional.ofNullable(further.get(column)).or(() -> Optional.ofNullable(further.get(column.replace('_', ' '))))
                .map(Spelling::stripped).filter(t -> !Spelling.isBlank(t));
    }

    /** Yes, no or unknown; what is neither is unknown. */
    static Known known(Optional<String> text) {
        return text.map(CellReader::yesOrNo).filter(Parsed.Understood.class::isInstance)
                .map(p -> ((Parsed.Understood<Boolean>) p).value() ? Known.YES : Known.NO).orElse(Known.UNKNOWN);
    }
}
