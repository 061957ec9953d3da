package swapworth.report;

import java.util.regex.Pattern;

/** Keeps links, addresses and numbers of people out of what strangers read. */
final class Discreet {
    private static final Pattern DAY = Pattern.compile("\\b(19|20)\\d\\d[-_.]?[01]\\d[-_.]?[0-3]\\d\\b");
    private static final Pattern REVEALING = Pattern.compile("(?i)https?:|www\\.|@|\\+\\s?\\d|\\d([ ./()-]{0,2}\\d){6,}");

    private Discreet() {
    }

    /** The text, or in its place words that say that the owner keeps it. */
    static String text(String text) {
        return REVEALING.matcher(DAY.matcher(text).replaceAll("")).find() ? "(kept by the owner)" : text;
    }
}
