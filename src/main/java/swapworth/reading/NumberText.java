package swapworth.reading;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Finds the one number in a text and reads it by the stated decimal mark, or by what its own marks leave no doubt about.
 * A number is digits, with marks or spaces between groups of three, with at most one decimal mark, and with a {@code k} for
 * thousands. Everything before and behind it is left to the caller.
 */
final class NumberText {

    private static final int MOST_DIGITS = 18;
    /** A longer text is prose in which a digit stands. */
    private static final int MOST_CHARACTERS = 200;
    /** In place of a decimal mark: that a number has none, */
    private static final char NO_MARK = 'x';
    /** and that its one mark may stand before decimals or between thousands. */
    private static final char IN_DOUBT = '?';

    final String before;
    final Parsed<BigDecimal> value;
    final String after;

    private NumberText(String before, Parsed<BigDecimal> value, String after) {
        this.before = before;
        this.value = value;
        this.after = after;
    }

    /**
     * Reads the number in a text.
     *
     * @param text without spaces around it
     * @param stated the stated decimal mark
     * @param separator the separator of the file: {@code 12,500} is in doubt where commas do not separate cells
     */
    static NumberText of(String text, Optional<DecimalMark> stated, char separator) {
        int length = text.length();
        long whole = whole(text);
        if (whole >= 0) {
            return new NumberText("", Parsed.understood(BigDecimal.valueOf(whole)), "");
        }
        Optional<Parsed<BigDecimal>> noValue = noValue(text);
        if (noValue.isPresent()) {
            return new NumberText("", noValue.get(), "");
        }
        int start = firstDigit(text);
        if (start == length) {
            return new NumberText(text, Parsed.refused("this is no number", ""), "");
        }
        if (length > MOST_CHARACTERS) {
            return refused("a text of " + length + " characters is no number", "");
        }
        if (start > 0 && (text.charAt(start - 1) == '.' || text.charAt(start - 1) == ',')) {
            return refused("a number begins with a digit, not with a mark", "write 0.5 for .5");
        }
        int end = endOfNumber(text, start);
        String digits = text.substring(start, end);
        Parsed<BigDecimal> number = read(digits, stated, separator);
        int behind = end;
        if (behind < length && (text.charAt(behind) == 'k' || text.charAt(behind) == 'K')
                && (behind + 1 == length || !Character.isLetterOrDigit(text.charAt(behind + 1)))) {
            behind++;
            number = number.map(value -> value.scaleByPowerOfTen(3).setScale(Math.max(0, value.scale() - 3)));
        }
        int lead = start;
        if (lead > 0 && (text.charAt(lead - 1) == '-' || text.charAt(lead - 1) == '\u2212')) {
            lead--;
            number = number.map(BigDecimal::negate);
        } else if (lead > 0 && text.charAt(lead - 1) == '+') {
            lead--;
        }
        String after = Spelling.stripped(text.substring(behind));
        if (behind < length && isPowerOfTen(text.substring(behind))) {
            return refused("a number shortened to a power of ten, as spreadsheets do", "its last digits may be lost; write all of them");
        }
        if (firstDigit(after) < after.length()) {
            return refused("two numbers in one cell", "which one is meant?");
        }
        return new NumberText(Spelling.stripped(text.substring(0, lead)), number, after);
    }

    private static NumberText refused(String reason, String question) {
        return new NumberText("", Parsed.refused(reason, question), "");
    }

    /** Where the first digit stands; the length of a text without one. */
    private static int firstDigit(String text) {
        int at = 0;
        while (at < text.length() && !isDigit(text.charAt(at))) {
            at++;
        }
        return at;
    }

    /** Why a text is not what somebody wrote but what a spreadsheet made, or was to make, of it. */
    static <T> Optional<Parsed<T>> noValue(String text) {
        if (Spelling.isFault(text)) {
            return Optional.of(Parsed.refused("a spreadsheet's error stands here in place of the value",
                    "mend it there, or leave the cell blank"));
        }
        return text.startsWith("=") ? Optional.of(Parsed.refused("a formula stands here in place of its value",
                "save the file with values, or write the value")) : Optional.empty();
    }

    /** Whether what follows a number at once is {@code E5}, {@code e+05} or the like, and perhaps a unit behind it. */
    private static boolean isPowerOfTen(String behind) {
        int at = behind.length() > 1 && (behind.charAt(1) == '+' || behind.charAt(1) == '-') ? 2 : 1;
        int end = at;
        while (end < behind.length() && isDigit(behind.charAt(end))) {
            end++;
        }
        return (behind.charAt(0) == 'e' || behind.charAt(0) == 'E') && end > at
                && (end == behind.length() || Spelling.isSpace(behind.charAt(end)));
    }

    /** A separator belongs to the number if a digit follows; a space only if exactly three digits follow and a group is open. */
    private static int endOfNumber(String text, int start) {
        int end = start;
        int run = 0;
        while (end < text.length()) {
            char c = text.charAt(end);
            if (isDigit(c)) {
                run++;
                end++;
            } else if ((c == '.' || c == ',' || c == '\'' || c == '\u2019') && end + 1 < text.length()
                    && isDigit(text.charAt(end + 1))) {
                run = 0;
                end++;
            } else if (Spelling.isSpace(c) && run <= 3 && threeDigits(text, end + 1)) {
                run = 0;
                end++;
            } else {
                break;
            }
        }
        return end;
    }

    private static boolean threeDigits(String text, int at) {
        return at + 3 <= text.length() && isDigit(text.charAt(at)) && isDigit(text.charAt(at + 1)) && isDigit(text.charAt(at + 2))
                && (at + 3 == text.length() || !isDigit(text.charAt(at + 3)));
    }

    /** The number of a text that is digits and nothing else, as most numbers are; else -1. */
    static long whole(String text) {
        int length = text.length();
        long number = length == 0 || length > MOST_DIGITS ? -1 : 0;
        for (int i = 0; i < length && number >= 0; i++) {
            char c = text.charAt(i);
            if (!isDigit(c)) {
                return -1;
            }
            number = 10 * number + c - '0';
        }
        return number;
    }

    /** Whether a number was read as one to three digits, a mark and three decimals, which most writers mean for thousands. */
    static boolean isGroupTakenForDecimals(BigDecimal number) {
        return number.scale() == 3 && number.abs().compareTo(BigDecimal.ONE) >= 0
                && number.abs().compareTo(BigDecimal.valueOf(1000)) < 0;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static Parsed<BigDecimal> read(String digits, Optional<DecimalMark> stated, char separator) {
        int points = 0;
        int commas = 0;
        int others = 0;
        int count = 0;
        for (int i = 0; i < digits.length(); i++) {
            char c = digits.charAt(i);
            points += c == '.' ? 1 : 0;
            commas += c == ',' ? 1 : 0;
            count += isDigit(c) ? 1 : 0;
            others += isDigit(c) || c == '.' || c == ',' ? 0 : 1;
        }
        if (count > MOST_DIGITS) {
            return Parsed.refused("a number of " + count + " digits", "");
        }
        if (points + commas + others == 0) {
            return Parsed.understood(new BigDecimal(digits));
        }
        boolean both = points > 0 && commas > 0;
        boolean pointLast = digits.lastIndexOf('.') > digits.lastIndexOf(',');
        if (both && (others > 0 || (pointLast ? points : commas) > 1) || others > 0 && points + commas > 1) {
            return Parsed.refused("the marks in this number contradict each other", "which one stands before the decimals?");
        }
        char decimal = decimalMark(digits, points, commas, others);
        if (decimal == IN_DOUBT) {
            if (stated.isEmpty() && (points == 1 || separator == ';')) {
                char mark = points == 1 ? '.' : ',';
                String whole = digits.replace(String.valueOf(mark), "");
                return Parsed.refused("this can be " + whole + " or " + digits.replace(mark, '.')
                        + " by the country of the writer",
                        "which mark stands before decimals? State it in words.csv: *,decimal mark,comma (or point)");
            }
            boolean point = points == 1;
            decimal = stated.isEmpty() ? NO_MARK : stated.get() == (point ? DecimalMark.POINT : DecimalMark.COMMA) ? point ? '.' : ','
                    : NO_MARK;
        } else if (stated.isPresent() && contradicts(stated.get(), decimal, points, commas)) {
            return Parsed.refused("the stated decimal mark is a " + stated.get().words()
                    + ", and this number is written otherwise",
                    "what number is meant?");
        }
        return grouped(digits, decimal);
    }

    /** The decimal mark that the digits themselves prove: a mark, {@link #NO_MARK} or {@link #IN_DOUBT}. */
    private static char decimalMark(String digits, int points, int commas, int others) {
        if (points > 0 && commas > 0) {
            return digits.lastIndexOf('.') > digits.lastIndexOf(',') ? '.' : ',';
        }
        if (points + commas == 0 || points + commas > 1) {
            return NO_MARK;
        }
        int at = Math.max(digits.indexOf('.'), digits.indexOf(','));
        boolean couldGroup = digits.length() - at == 4 && at <= 3 && digits.charAt(0) != '0' && others == 0;
        return couldGroup ? IN_DOUBT : digits.charAt(at);
    }

    private static boolean contradicts(DecimalMark stated, char decimal, int points, int commas) {
        char mark = stated == DecimalMark.POINT ? '.' : ',';
        return decimal == NO_MARK ? (mark == '.' ? points : commas) > 0 : decimal != mark;
    }

    private static Parsed<BigDecimal> grouped(String digits, char decimal) {
        StringBuilder plain = new StringBuilder(digits.length());
        int run = 0;
        boolean grouping = false;
        char groupMark = 0;
        for (int i = 0; i <= digits.length(); i++) {
            char c = i < digits.length() ? digits.charAt(i) : decimal;
            if (isDigit(c)) {
                plain.append(c);
                run++;
                continue;
            }
            boolean first = !grouping;
            boolean end = c == decimal || i == digits.length();
            if (grouping && run != 3 || first && !end && (run == 0 || run > 3) || !end && groupMark != 0 && groupMark != c) {
                return Parsed.refused("the groups of digits are not groups of three", "what number is meant?");
            }
            if (c == decimal && i < digits.length()) {
                plain.append('.').append(digits, i + 1, digits.length());
                break;
            }
            groupMark = c;
            grouping = true;
            run = 0;
        }
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if (!isDigit(c) && c != '.' || c == '.' && plain.indexOf(".", i + 1) >= 0) {
                return Parsed.refused("the marks in this number contradict each other", "what number is meant?");
            }
        }
        return Parsed.understood(new BigDecimal(plain.toString()));
    }
}
