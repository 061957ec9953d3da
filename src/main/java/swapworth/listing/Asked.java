package swapworth.listing;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import swapworth.money.Money;
import swapworth.reading.CellReader;
import swapworth.reading.Parsed;

/**
 * What a row asks for its car.
 *
 * @param text as it stands
 * @param money the amount; empty where there is none, or none that was understood
 * @param refusal why it was not understood; else empty
 * @param remarks what a reader should know of how it was understood
 * @param isPlain whether the text is the digits of the amount and no more
 * @param currencyByDefault whether nothing states its currency
 */
record Asked(String text, Optional<Money> money, String refusal, List<String> remarks, boolean isPlain, boolean currencyByDefault) {
    static final Asked NOTHING = new Asked("", Optional.empty(), "", List.of(), false, false);

    /**
     * What a cell asks.
     *
     * @param currency the currency that stands beside it, or in its header
     * @param cells how the file writes numbers and money
     */
    static Asked of(String text, Optional<Currency> currency, CellReader cells) {
        boolean byDefault = currency.isEmpty() && cells.conventions().currency().isEmpty() && digitsOnly(text);
        Parsed<Money> parsed = cells.money(text, currency);
        if (parsed instanceof Parsed.Understood<Money> known) {
            Money money = known.value();
            return new Asked(text, Optional.of(money), "", known.remarks(), isPlain(text, money.amount()), byDefault);
        }
        String refusal = parsed instanceof Parsed.Refused<Money> no ? no.message() : "";
        return new Asked(text, Optional.empty(), refusal, List.of(), false, byDefault);
    }

    /** Whether a price cell is the digits of its amount and no more. */
    private static boolean isPlain(String text, BigDecimal amount) {
        long digits = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < '0' || c > '9' || i == 0 && c == '0' || i > 9) {
                return false;
            }
            digits = 10 * digits + c - '0';
        }
        return amount.scale() == 0 && amount.longValue() == digits;
    }

    private static boolean digitsOnly(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (Character.isLetter(text.charAt(i)) && text.charAt(i) != 'k'
                    || Character.getType(text.charAt(i)) == Character.CURRENCY_SYMBOL) {
                return false;
            }
        }
        return true;
    }
}
