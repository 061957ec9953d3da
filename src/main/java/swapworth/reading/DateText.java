package swapworth.reading;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Pattern;

/** Reads days in the few ways in which people write them. */
final class DateText {

    private static final String[] MONTHS = {"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"};
    private static final String[] FULL = {"january", "february", "march", "april", "may", "june", "july", "august", "september",
            "october", "november", "december"};
    private static final Pattern TIME = Pattern.compile("([01]?[0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9])?");
    private static final String HOW = "write it as year-month-day, for instance 2024-04-03";

    private DateText() {
    }

    /** How much of a date a cell must give. */
    enum Detail { DAY, MONTH_OR_YEAR }

    static Parsed<LocalDate> read(String cell, Optional<DateOrder> order, Detail detail) {
        String text = Spelling.stripped(cell);
        if (text.length() == 10 && text.charAt(4) == '-' && text.charAt(7) == '-') {
            return day(text.substring(0, 4), text.substring(5, 7), text.substring(8));
        }
        if (Spelling.isBlank(text)) {
            return Parsed.blank();
        }
        Optional<Parsed<LocalDate>> noValue = NumberText.noValue(text);
        if (noValue.isPresent()) {
            return noValue.get();
        }
        if (text.length() > 60) {
            return Parsed.refused("this is no date", HOW);
        }
        String[] parts = parts(withoutTime(text));
        Optional<Parsed<LocalDate>> coarse = detail == Detail.MONTH_OR_YEAR ? coarse(parts) : Optional.empty();
        if (coarse.isPresent()) {
            return coarse.get();
        }
        if (text.length() == 5 && NumberText.whole(text) >= 0) {
            return Parsed.refused("this is a spreadsheet's number of a day",
                    "give the column the format year-month-day before you save it");
        }
        return parts.length == 3 ? ofThree(parts, order) : Parsed.refused("this is no date", HOW);
    }

    /** A year, or a year and a month in either order. */
    private static Optional<Parsed<LocalDate>> coarse(String[] parts) {
        if (parts.length == 1 && isYear(parts[0])) {
            return Optional.of(coarse(parts[0], "7", "1", "the year alone is given: counted from 1 July"));
        }
        if (parts.length == 2) {
            boolean yearFirst = isYear(parts[0]);
            String year = yearFirst ? parts[0] : parts[1];
            String month = month(yearFirst ? parts[1] : parts[0]);
            if (isYear(year) && isNumber(month)) {
                return Optional.of(coarse(year, month, "15", "the month alone is given: counted from its 15th"));
            }
        }
        return Optional.empty();
    }

    private static Parsed<LocalDate> ofThree(String[] parts, Optional<DateOrder> order) {
        if (isYear(parts[0])) {
            return day(parts[0], month(parts[1]), parts[2]);
        }
        if (!isYear(parts[2])) {
            return isNumber(parts[0]) && isNumber(parts[2])
                    ? Parsed.refused("a year of two digits can be read in several ways", HOW)
                    : Parsed.refused("this is no date", HOW);
        }
        if (!isNumber(parts[0]) && isNumber(month(parts[0]))) {
            return day(parts[2], month(parts[0]), ordinal(parts[1]));
        }
        if (!isNumber(parts[1]) && isNumber(month(parts[1]))) {
            return day(parts[2], month(parts[1]), ordinal(parts[0]));
        }
        return isNumber(parts[0]) && isNumber(parts[1]) ? inOrder(parts[0], parts[1], parts[2], order)
                : Parsed.refused("this is no date", HOW);
    }

    /** Day and month by number, of which either may come first. */
    private static Parsed<LocalDate> inOrder(String one, String other, String year, Optional<DateOrder> order) {
        int first = Integer.parseInt(one);
        int second = Integer.parseInt(other);
        if (first == second) {
            return day(year, other, one);
        }
        Optional<DateOrder> only = first > 12 && second <= 12 ? Optional.of(DateOrder.DAY_FIRST)
                : second > 12 && first <= 12 ? Optional.of(DateOrder.MONTH_FIRST) : Optional.empty();
        if (only.isPresent() && order.isPresent() && !only.equals(order)) {
            return Parsed.refused("the stated date order is " + order.get().words() + ", and this date is written otherwise",
                    "what day is meant? If the others of this file are written so too, change the date order in words.csv; " + HOW);
        }
        if (only.isEmpty() && order.isEmpty() && first <= 12) {
            return Parsed.refused("the day or the month can come first in this date",
                    "which one? State it in words.csv: *,date order,day first (or month first)");
        }
        return only.or(() -> order).equals(Optional.of(DateOrder.MONTH_FIRST)) ? day(year, one, other) : day(year, other, one);
    }

    private static Parsed<LocalDate> coarse(String year, String month, String day, String remark) {
        return day(year, month, day).match(value -> Parsed.understood(value.value(), remark), Parsed::blank, no -> no);
    }

    private static Parsed<LocalDate> day(String year, String month, String day) {
        if (!isNumber(year) || !isNumber(month) || !isNumber(day)) {
            return Parsed.refused("this is no date", HOW);
        }
        int y = Integer.parseInt(year);
        if (y < 1885 || y > 2200) {
            return Parsed.refused("the year " + y + " is not one of a car", HOW);
        }
        try {
            return Parsed.understood(LocalDate.of(y, Integer.parseInt(month), Integer.parseInt(day)));
        } catch (DateTimeException e) {
            return Parsed.refused("the calendar has no such day", HOW);
        }
    }

    /** Behind a date, an ISO date above all, may stand a time; the day alone is of use. */
    private static String withoutTime(String text) {
        boolean iso = text.length() > 11 && text.charAt(4) == '-' && text.charAt(7) == '-';
        if (iso && (text.charAt(10) == 'T' || text.charAt(10) == ' ') && Character.isDigit(text.charAt(11))
                && text.indexOf(':', 11) == 13) {
            return text.substring(0, 10);
        }
        int space = text.lastIndexOf(' ');
        return space > 0 && TIME.matcher(text.substring(space + 1)).matches() ? Spelling.stripped(text.substring(0, space)) : text;
    }

    private static String[] parts(String text) {
        String[] found = new String[4];
        int count = 0;
        int start = -1;
        for (int i = 0; i <= text.length(); i++) {
            char c = i < text.length() ? text.charAt(i) : ' ';
            boolean between = Spelling.isSpace(c) || c == '-' || c == '/' || c == '.' || c == ',';
            if (between && start >= 0) {
                if (count == 4) {
                    return new String[0];
                }
                found[count++] = text.substring(start, i);
                start = -1;
            } else if (!between && start < 0) {
                start = i;
            }
        }
        String[] parts = new String[count];
        System.arraycopy(found, 0, parts, 0, count);
        return parts;
    }

    private static boolean isNumber(String part) {
        for (int i = 0; i < part.length(); i++) {
            if (part.charAt(i) < '0' || part.charAt(i) > '9') {
                return false;
            }
        }
        return !part.isEmpty() && part.length() <= 4;
    }

    private static boolean isYear(String part) {
        return part.length() == 4 && isNumber(part);
    }

    /** The number of a month that is given by number or by English name; else the text itself. */
    private static String month(String part) {
        if (isNumber(part)) {
            return part;
        }
        String key = Spelling.key(part);
        for (int m = 0; m < 12; m++) {
            if (key.equals(MONTHS[m]) || key.equals(FULL[m]) || m == 8 && key.equals("sept")) {
                return Integer.toString(m + 1);
            }
        }
        return part;
    }

    private static String ordinal(String part) {
        String key = Spelling.key(part);
        boolean ordinal = key.endsWith("st") || key.endsWith("nd") || key.endsWith("rd") || key.endsWith("th");
        return ordinal ? key.substring(0, key.length() - 2) : part;
    }
}
