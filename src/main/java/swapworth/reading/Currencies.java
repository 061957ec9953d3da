package swapworth.reading;

import java.util.Currency;
import java.util.Locale;
import java.util.Optional;

/** Finds the currency that a word, a sign or a header names. */
public final class Currencies {

    /** What amounts are in where nothing says it: US dollars. */
    public static final Currency USUAL = Currency.getInstance("USD");
    /** The code of ISO 4217 for no currency: that of amounts whose currency nothing says, until others say it. */
    public static final Currency UNSAID = Currency.getInstance("XXX");

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
        String words = Spelling.header(header);
        int space = words.lastIndexOf(' ');
        return space < 0 ? Optional.empty() : of(words.substring(space + 1).toUpperCase(Locale.ROOT));
    }

    /**
     * The currency of a column: that of its name, else that of the header as the user typed it, where {@code words.csv} put the name in its
     * place.
     *
     * @param name the name in place of the header
     * @param header the header as typed, for instance {@code Betrag (€)}
     * @return the currency, if there is one
     */
    public static Optional<Currency> ofColumn(String name, String header) {
        return ofHeader(name).or(() -> name.equals(header) ? Optional.empty() : ofOwnHeader(header));
    }

    /** Of a header in any language a sign, a code in capitals, or one of a few common codes is taken for a currency. */
    static Optional<Currency> ofOwnHeader(String header) {
        String typed = Spelling.stripped(Spelling.withoutBrackets(header).replace('_', ' ').replace('-', ' '));
        int space = typed.lastIndexOf(' ');
        String word = typed.substring(space + 1);
        return space < 0 ? Optional.empty() : of(word).or(() -> of(word.toLowerCase(Locale.ROOT)));
    }
}
