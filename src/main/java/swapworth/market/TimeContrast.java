package swapworth.market;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import swapworth.listing.CarFacts;
import swapworth.listing.Days;
import swapworth.listing.Facts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.statistics.SparseRow;

/**
 * What the model's terms say of a change of the level between two months, as a weighted sum of coefficients.
 *
 * @param line the line whose drift counts; empty for what all have in common
 * @param held what is held still
 */
record TimeContrast(Encoder encoder, String line, Held held) {
    /** The level with its season. */
    static final Set<Group> LEVEL = EnumSet.of(Group.TIME, Group.SEASON);
    static final Set<Group> TREND = EnumSet.of(Group.TIME);
    /** What a car loses by age. */
    static final Set<Group> AGEING = EnumSet.of(Group.AGE, Group.MILEAGE);

    /** The time terms of a line on a day. */
    static SparseRow on(LocalDate day, Encoder encoder, Set<Group> groups, String line) {
        return encoder.part(groups, subject(line, day), Measures.Measured.stated(encoder.middleAge(), encoder.middleMiles()));
    }

    private static Subject subject(String line, LocalDate day) {
        return new Subject(CarFacts.of(line).build(), LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, Optional.of(day));
    }

    /** The time terms on a day. */
    SparseRow on(LocalDate day, Set<Group> groups) {
        return on(day, encoder, groups, line);
    }

    /** The difference of the level between two months, each in its middle, or where its days seen end. */
    SparseRow between(Set<Group> groups, YearMonth from, YearMonth to) {
        SparseRow difference = on(middle(to), groups).plus(-1, on(middle(from), groups));
        return held == Held.MODEL_YEAR ? difference.plus(1, ageing(from, to)) : difference;
    }

    /** What one and the same car, of middle age on the last day seen, loses by age from the middle of one month to that of another. */
    SparseRow ageing(YearMonth from, YearMonth to) {
        double years = ChronoUnit.DAYS.between(middle(from), middle(to)) / Days.PER_YEAR;
        double ahead = ChronoUnit.DAYS.between(encoder.end().orElseThrow(), middle(to)) / Days.PER_YEAR;
        return ageing(ahead).plus(-1, ageing(ahead - years));
    }

    /** The part of age in the price of a car that is of middle age on the last day seen, so many years after it. */
    private SparseRow ageing(double yearsAhead) {
        return encoder.part(AGEING, subject(line, encoder.end().orElseThrow()),
                Measures.Measured.stated(encoder.middleAge() + yearsAhead, encoder.middleMiles()));
    }

    boolean isOfLine(Evidence e) {
        return isOfLine(e.subject().facts());
    }

    /** Whether a car is one of those whose level is asked for. */
    boolean isOfLine(Facts car) {
        return line.isEmpty() || car.vehicle().equals(line);
    }

    /** The middle of a month, or the nearest day to it that was seen. */
    LocalDate middle(YearMonth month) {
        LocalDate day = month.atDay(15);
        LocalDate begin = encoder.begin().orElseThrow();
        LocalDate end = encoder.end().orElseThrow();
        return day.isBefore(begin) ? begin : day.isAfter(end) ? end : day;
    }
}
