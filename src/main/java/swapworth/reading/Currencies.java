package swapworth.reading;

import java.util.Currency;
import java.util.Locale;
import java.util.Optional;

/** Finds the currency that a word, a sign or a header names. */
public final class Currencies {

    /** What amounts are in where nothing says it: US dollars. */
    public static final Currency USUAL = Currency.getInstance("USD");

    private Currencies() {
    }

    /**
     * The currency of a word or sign.
     *
     * @param word for instance {@code EUR}, {@code eur}, {@code €} or {@code $}
     * @return the currency; US dollars for a bare {@code $}; nothing for a word that names none, or several
     */
    public static Optional<Currency> of(String word) {
        return MoneyText.currency(Spelling.stripped(word), Optional.empty());
    }

    /**
     * The currency that the last word of a header names.
     *
     * @param header for instance {@code price_eur} or {@code Price (€)}
     * @return the currency, if there is one
     */
    public static Optional<Currency> ofHeader(String header) {
        String words = Spelling.key(header.replace('(', ' ').replace(')', ' ').replace('[', ' ').replace(']', ' ').replace(',',
                ' '));
        int space = words.lastIndexOf(' ');
        return space < 0 ? Optional.empty() : of(words.substring(space + 1).toUpperCase(Locale.ROOT));
    }
}
