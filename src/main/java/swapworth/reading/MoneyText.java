package swapworth.reading;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import swapworth.money.Money;

/** Reads an amount of money with whatever stands around its digits. */
final class MoneyText {

    private static final List<String> DOLLARS = List.of("USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN");
    private static final List<String> CROWNS = List.of("SEK", "NOK", "DKK", "ISK", "CZK");
    /**
     * Codes that are also understood in lower case; the others are English words too often ({@code all}, {@code top}, {@code
     * try}).
     */
    private static final Set<String> COMMON = Set.of("eur", "usd", "gbp", "chf", "cad", "aud", "nzd", "jpy", "sek", "nok", "dkk",
            "pln", "czk", "huf");

    private MoneyText() {
    }

    /**
     * Reads an amount.
     *
     * @param column the currency that header or column state, with which the cell may be at odds
     * @param unsaid the currency of an amount that does not say its own
     */
    static Parsed<Money> read(String text, Optional<Currency> column, Optional<Currency> unsaid, Conventions conventions, char separator) {
        NumberText found = NumberText.of(withoutDash(text), conventions.decimalMark(), separator);
        if (!(found.value instanceof Parsed.Understood<BigDecimal> number)) {
            Parsed.Refused<BigDecimal> refused = (Parsed.Refused<BigDecimal>) found.value;
            return Parsed.refused(refused.reason().equals("this is no number") ? "this is no amount of money" : refused.reason(),
                    refused.question());
        }
        Around around = new Around(unsaid.or(conventions::currency));
        boolean minus = found.before.startsWith("-") || found.before.startsWith("\u2212");
        Optional<Parsed<Money>> refused = around.before(minus ? Spelling.stripped(found.before.substring(1)) : found.before)
                .or(() -> around.after(found.after));
        if (refused.isPresent()) {
            return refused.get();
        }
        if (around.own.isPresent() && column.isPresent() && !around.own.equals(column)) {
            around.remarks.add("the cell says " + around.own.get().getCurrencyCode() + ", its column " + column.get().getCurrencyCode()
                    + "; the cell's is used");
        }
        BigDecimal amount = minus ? number.value().negate() : number.value();
        Currency currency = around.own.or(() -> around.stated).orElse(Currencies.USUAL);
        return in(new Money(amount, currency), around.remarks);
    }

    /** What stands around the digits: a currency, and phrases that are kept as remarks. */
    private static final class Around {
        private final Optional<Currency> stated;
        private final List<String> remarks = new ArrayList<>(0);
        private Optional<Currency> own = Optional.empty();

        Around(Optional<Currency> stated) {
            this.stated = stated;
        }

        /** Takes in the words before the digits; says why where one is not understood. */
        Optional<Parsed<Money>> before(String words) {
            String rest = words;
            while (!rest.isEmpty()) {
                String word = currency(rest, stated).isPresent() || isPhrase(rest) ? rest : firstWord(rest);
                Optional<Currency> ahead = currency(word, stated);
                if (ahead.isPresent() && own.isEmpty()) {
                    own = ahead;
                } else if (CellReader.isAbout(word)) {
                    remarks.add("the row calls the price approximate");
                } else if (isPhrase(word)) {
                    remarks.add(kept(word));
                } else {
                    return Optional.of(ahead.isPresent() ? two() : unknown(rest));
                }
                rest = Spelling.stripped(rest.substring(word.length()));
            }
            return Optional.empty();
        }

        /** Takes in the words behind the digits. */
        Optional<Parsed<Money>> after(String words) {
            String rest = words;
            while (!rest.isEmpty()) {
                String word = firstWord(rest);
                if (isPhrase(rest)) {
                    remarks.add(kept(rest));
                    return Optional.empty();
                }
                Optional<Currency> behind = currency(word, stated);
                if (behind.isEmpty() || own.isPresent() && !behind.equals(own)) {
                    return Optional.of(behind.isEmpty() ? unknown(rest) : two());
                }
                own = behind;
                rest = Spelling.stripped(rest.substring(word.length()));
            }
            return Optional.empty();
        }

        private static Parsed<Money> two() {
            return Parsed.refused("two currencies in one cell", "which one is meant?");
        }
    }

    /** An amount, unless its decimals are likely thousands: where a coin has two decimals at most, nobody writes three of them. */
    static Parsed<Money> in(Money money, List<String> remarks) {
        int digits = money.currency().getDefaultFractionDigits();
        return digits >= 0 && digits < 3 && NumberText.isGroupTakenForDecimals(money.amount())
                ? Parsed.refused("by the stated decimal mark this is " + money.amount().toPlainString() + ", and no amount of "
                        + money.currency().getCurrencyCode() + " has three decimals",
                        "is " + money.amount().unscaledValue() + " meant? Write it without a mark")
                : new Parsed.Understood<>(money, remarks);
    }

    private static String kept(String phrase) {
        return "'" + Spelling.shortened(phrase, 30) + "' in the price is kept as a remark";
    }

    private static Parsed<Money> unknown(String words) {
        String key = Spelling.key(words);
        if (key.equals("kr") || key.equals("kr.")) {
            return Parsed.refused("'kr' is the sign of several currencies", "which one? State it in words.csv: *,currency,SEK");
        }
        return Parsed.refused("'" + Spelling.shortened(words, 30) + "' beside the amount is not understood",
                "write the amount and its currency alone, and the rest into another column");
    }

    /**
     * {@code 8500,-} and {@code 8500.-} write a dash for no cents. Where marks of the other kind stand before it, as in {@code 8.500,-},
     * the mark of the dash is that before decimals, and zeros take the place of the dash.
     */
    private static String withoutDash(String text) {
        for (int i = 1; i + 1 < text.length(); i++) {
            char c = text.charAt(i);
            if ((c == ',' || c == '.') && (text.charAt(i + 1) == '-' || text.charAt(i + 1) == '\u2013')
                    && Character.isDigit(text.charAt(i - 1))) {
                int end = i + 1;
                while (end < text.length() && (text.charAt(end) == '-' || text.charAt(end) == '\u2013')) {
                    end++;
                }
                int mark = i - 1;
                while (mark > 0 && Character.isDigit(text.charAt(mark))) {
                    mark--;
                }
                boolean groups = mark > 0 && text.charAt(mark) == (c == ',' ? '.' : ',');
                return text.substring(0, groups ? i + 1 : i) + (groups ? "00 " : " ") + text.substring(end);
            }
        }
        return text;
    }

    private static String firstWord(String text) {
        int end = 0;
        while (end < text.length() && !Spelling.isSpace(text.charAt(end)) && text.charAt(end) != ',') {
            end++;
        }
        return end == 0 ? text : text.substring(0, end);
    }

    private static boolean isPhrase(String words) {
        String key = Spelling.key(words);
        return switch (key.endsWith(":") ? key.substring(0, key.length() - 1) : key) {
            case "obo", "o.b.o.", "o.b.o", "(obo)", "or best offer", "ono", "o.n.o.", "o.n.o", "(ono)", "or near offer",
                    "or nearest offer", "firm", "(firm)", "neg", "neg.", "negotiable", "(negotiable)", "fixed", "fixed price",
                    "vb", "vhb", "fp", "cash", "asking" -> true;
            default -> false;
        };
    }

    /**
     * The currency of a word or sign.
     *
     * @param word for instance {@code EUR}, {@code $}, {@code dollars}; a code in lower case only if it is a common one
     * @param stated settles signs that several currencies share
     */
    static Optional<Currency> currency(String word, Optional<Currency> stated) {
        String code = switch (Spelling.key(word)) {
            case "\u20ac", "euro", "euros" -> "EUR";
            case "\u00a3", "pounds", "pound" -> "GBP";
            case "us$", "u.s.$" -> "USD";
            case "c$", "ca$", "can$" -> "CAD";
            case "a$", "au$" -> "AUD";
            case "nz$" -> "NZD";
            case "z\u0142" -> "PLN";
            case "fr", "fr.", "sfr", "sfr." -> "CHF";
            case "$", "dollar", "dollars", "bucks" -> shared(stated, DOLLARS, "USD");
            case "kr", "kr." -> shared(stated, CROWNS, "");
            case "\u00a5" -> shared(stated, List.of("JPY", "CNY"), "");
            default -> word;
        };
        return ofCode(code);
    }

    private static String shared(Optional<Currency> stated, List<String> sharing, String otherwise) {
        return stated.isPresent() && sharing.contains(stated.get().getCurrencyCode()) ? stated.get().getCurrencyCode()
                : otherwise;
    }

    private static Optional<Currency> ofCode(String code) {
        if (code.length() != 3) {
            return Optional.empty();
        }
        String upper = COMMON.contains(code) ? code.toUpperCase(Locale.ROOT) : code;
        try {
            return Optional.of(Currency.getInstance(upper));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
