package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.table.Cell;

/**
 * Which rows with one id show one car. Rows are gone through day by day, and each is put with the car of its id that was seen last, or
 * another one of it, unless something speaks against it: another line; a model year more than one apart; a mileage that falls by more
 * than 10 % and 1,000 miles, or grows by more than that and by more than 150 miles a day; an end that was recorded more than 14 days before
 * for a sale, 45 for a car that merely vanished, 180 for one that its seller took back. The price that was paid may be told at any time
 * after the end, once. All limits are common practice, no source: a sale falls through within days, an advertisement that ran out is put
 * in again within weeks, one taken back may return next season, and no car on offer is driven 55,000 miles a year.
 *
 * <p>Where more than half of the ids that stand on several rows contradict themselves by line, year or mileage, and three rows or more do
 * so, ids number rows, places or looks, and no id joins anything.
 */
final class SharedIds {
    private static final double SLIP = 0.1;
    private static final double SLIP_MILES = 1_000;
    private static final double MOST_MILES_A_DAY = 150;
    private static final int[] DAYS_AFTER = daysAfter();
    private static final int CONTRADICTIONS_OF_CHANCE = 2;
    /** An id that stands for more cars than that is no name of any. */
    private static final int CARS_LOOKED_AT = 30;

    private final ListingColumns columns;
    private final List<RowProblem> odd = new ArrayList<>();
    private int repeated;
    private int contradicted;
    private int contradictions;
    private Optional<Origin> first = Optional.empty();

    private SharedIds(ListingColumns columns) {
        this.columns = columns;
    }

    private static int[] daysAfter() {
        int[] days = new int[Outcome.values().length];
        days[Outcome.SOLD.ordinal()] = 14;
        days[Outcome.GONE.ordinal()] = 45;
        days[Outcome.WITHDRAWN.ordinal()] = 180;
        return days;
    }

    /** By how many miles two rows of one car may differ, one of which says so many. */
    static double slip(double miles) {
        return Math.max(SLIP * miles, SLIP_MILES);
    }

    /** The rules in words. */
    static String rules() {
        return "The same id on another day joins rows of one line and of one model year to within one, unless the mileage falls by"
                + " more than " + Cell.format(100 * SLIP, 0) + " % and " + Cell.format(SLIP_MILES, 0)
                + " miles, or grows by more than that and by more than " + Cell.format(MOST_MILES_A_DAY, 0)
                + " miles a day, or the car was recorded as sold more than "
                + DAYS_AFTER[Outcome.SOLD.ordinal()] + " days before, as gone more than " + DAYS_AFTER[Outcome.GONE.ordinal()]
                + ", or as withdrawn more than " + DAYS_AFTER[Outcome.WITHDRAWN.ordinal()] + ". Where most ids that stand on several rows"
                + " contradict themselves by line, year or mileage, none joins anything.";
    }

    /**
     * The rows of each advertisement, in the order of their days.
     *
     * @param rows rows of the columns, in ascending order
     * @param firsts for each row of the columns the first with its id
     * @param problems takes what looked odd
     */
    static Advertisements.Rows advertisements(ListingColumns columns, int[] rows, int[] firsts, List<RowProblem> problems) {
        int[] groupOf = new int[columns.size()];
        Advertisements.Rows byId = grouped(columns, rows, firsts, groupOf);
        if (byId.count() == rows.length) {
            return byId;
        }
        SharedIds ids = new SharedIds(columns);
        int count = byId.count();
        for (int id = 0; id < byId.count(); id++) {
            if (byId.begin()[id + 1] - byId.begin()[id] > 1) {
                count = ids.tellApart(byId, id, groupOf, count);
            }
        }
        if (ids.contradictions > CONTRADICTIONS_OF_CHANCE && 2 * ids.contradicted > ids.repeated) {
            problems.add(ids.question());
            for (int row : rows) {
                groupOf[row] = row;
            }
            return grouped(columns, rows, groupOf, groupOf);
        }
        problems.addAll(ids.odd);
        return count == byId.count() ? byId : grouped(columns, rows, firstOfEach(rows, groupOf, count), groupOf);
    }

    private RowProblem question() {
        Origin origin = first.orElseThrow();
        return new RowProblem(origin.file(), origin.line(), "id", "", RowProblem.Kind.QUESTION, contradicted + " of " + repeated
                + " ids that stand on several rows contradict themselves (another line or model year, a mileage that falls or leaps), first"
                + " here: rows are taken for one car by their facts alone, whatever their id. Do the ids number rows or places? Give each"
                + " car an id of its own");
    }

    /** For each row the first one of its group. */
    private static int[] firstOfEach(int[] rows, int[] groupOf, int count) {
        int[] oneMore = new int[count];
        int[] firsts = new int[groupOf.length];
        for (int row : rows) {
            oneMore[groupOf[row]] = oneMore[groupOf[row]] == 0 ? row + 1 : oneMore[groupOf[row]];
            firsts[row] = oneMore[groupOf[row]] - 1;
        }
        return firsts;
    }

    /** Rows put together by what is the first of each, in the order in which their groups begin; tells the group of each. */
    private static Advertisements.Rows grouped(ListingColumns columns, int[] rows, int[] firsts, int[] groupOf) {
        int[] oneMore = new int[columns.size()];
        int[] group = new int[rows.length];
        int count = 0;
        for (int place = 0; place < rows.length; place++) {
            int of = firsts[rows[place]];
            oneMore[of] = oneMore[of] == 0 ? ++count : oneMore[of];
            group[place] = oneMore[of] - 1;
        }
        int[] begin = new int[count + 1];
        int[] ordered = Orders.grouped(group, begin);
        for (int k = 0; k < ordered.length; k++) {
            int place = ordered[k];
            ordered[k] = rows[place];
            groupOf[rows[place]] = group[place];
        }
        for (int i = 0; i < count; i++) {
            if (begin[i + 1] - begin[i] > 1) {
                columns.sortByDay(ordered, begin[i], begin[i + 1]);
            }
        }
        return new Advertisements.Rows(ordered, begin);
    }

    /** Gives the rows of further cars of an id groups of their own; how many groups there are then. */
    private int tellApart(Advertisements.Rows byId, int id, int[] groupOf, int groups) {
        int count = groups;
        int before = contradictions;
        List<CarOfId> cars = new ArrayList<>();
        for (int k = byId.begin()[id]; k < byId.begin()[id + 1]; k++) {
            int row = byId.rows()[k];
            Optional<CarOfId> its = itsCar(cars, row);
            if (its.isEmpty()) {
                its = Optional.of(new CarOfId(cars.isEmpty() ? id : count++));
                if (!cars.isEmpty()) {
                    note(row, cars.get(cars.size() - 1));
                }
            } else {
                cars.remove(its.get());
            }
            cars.add(its.get());
            its.get().take(row);
            groupOf[row] = its.get().group;
        }
        repeated++;
        contradicted += contradictions > before ? 1 : 0;
        return count;
    }

    /** The car of an id that a row shows, the one seen last before all others. */
    private Optional<CarOfId> itsCar(List<CarOfId> cars, int row) {
        for (int i = cars.size() - 1; i >= Math.max(0, cars.size() - CARS_LOOKED_AT); i--) {
            if (cars.get(i).against(row) == Against.NOTHING) {
                return Optional.of(cars.get(i));
            }
        }
        return Optional.empty();
    }

    private void note(int row, CarOfId other) {
        Origin origin = columns.origin(row);
        Against against = other.against(row);
        if (against != Against.END) {
            contradictions++;
            first = first.or(() -> Optional.of(origin));
        }
        odd.add(new RowProblem(origin.file(), origin.line(), "id", columns.id.get(row).orElse(""), RowProblem.Kind.ODD,
                other.sentence(row, against)));
    }

    /** What speaks against it that a row shows a car of its id. */
    private enum Against { NOTHING, LINE, YEAR, MILEAGE, END }

    /** One of the cars that an id stands for, as far as its rows are gone through. */
    private final class CarOfId {
        private final int group;
        private int firstRow = -1;
        private int year;
        private int rowOfYear = -1;
        /** The last row with a day and a mileage above 0, and the last one if it records an end; -1 for none. */
        private int driven = -1;
        private int ended = -1;
        private boolean paid;

        CarOfId(int group) {
            this.group = group;
        }

        void take(int row) {
            firstRow = firstRow < 0 ? row : firstRow;
            if (year == 0) {
                year = columns.modelYear(row);
                rowOfYear = row;
            }
            driven = columns.isDated(row) && columns.miles(row) > 0 ? row : driven;
            paid |= isPaid(row);
            ended = endOf(row).isPresent() ? row : -1;
        }

        Against against(int row) {
            int its = columns.modelYear(row);
            if (columns.vehicle.code(firstRow) != columns.vehicle.code(row)) {
                return Against.LINE;
            } else if (its != 0 && year != 0 && Math.abs(its - year) > 1) {
                return Against.YEAR;
            } else if (mileageContradicts(row)) {
                return Against.MILEAGE;
            }
            return endContradicts(row) ? Against.END : Against.NOTHING;
        }

        private boolean mileageContradicts(int row) {
            if (driven < 0 || Double.isNaN(columns.miles(row))) {
                return false;
            }
            double more = columns.miles(row) - columns.miles(driven);
            double slip = slip(columns.miles(driven));
            return -more > slip || more > slip && more > MOST_MILES_A_DAY * (columns.day(row) - columns.day(driven));
        }

        private boolean endContradicts(int row) {
            if (ended < 0 || !columns.isDated(row) || isPaid(row) && !paid) {
                return false;
            }
            // Where each row of an advertisement tells how it ended and none tells when, the first one does not mean its own day.
            boolean sameWord = columns.outcome(row) == columns.outcome(ended) && columns.endedOn(ended).isEmpty()
                    && columns.endedOn(row).isEmpty() && !isPaid(ended);
            return !sameWord && columns.day(row) - endOf(ended).orElseThrow().toEpochDay() > DAYS_AFTER[outcomeOf(ended).ordinal()];
        }

        String sentence(int row, Against against) {
            return switch (against) {
                case LINE -> "the id stands for a " + Spelling.shortened(columns.vehicle.get(firstRow), 40) + " in "
                        + columns.origin(firstRow) + "; taken for another car";
                case YEAR -> "the id stands for a car of model year " + year + " in " + columns.origin(rowOfYear)
                        + "; taken for another car";
                case MILEAGE -> {
                    double times = columns.miles(row) / columns.miles(driven);
                    yield "under this id the mileage " + (times < 1 ? "falls by " : "grows by ")
                            + Cell.format(100 * Math.abs(times - 1), 0) + " % from " + columns.origin(driven) + (times < 1 ? "" : " within "
                            + (columns.day(row) - columns.day(driven)) + " days") + "; taken for another car. Is one of the two mistyped,"
                            + " or does the id stand for two cars?";
                }
                case END, NOTHING -> {
                    LocalDate end = endOf(ended).orElseThrow();
                    yield "the id stands for a car recorded as " + outcomeOf(ended).words() + " on " + end + " in " + columns.origin(ended)
                            + ", " + (columns.day(row) - end.toEpochDay()) + " days before: whether it is that car again is told by"
                            + " the facts, not by the id";
                }
            };
        }
    }

    private boolean isPaid(int row) {
        return columns.kind(row) == PriceKind.SOLD;
    }

    private Outcome outcomeOf(int row) {
        return isPaid(row) ? Outcome.SOLD : columns.outcome(row);
    }

    /** The day on which a row says that its offer ended. */
    private Optional<LocalDate> endOf(int row) {
        return outcomeOf(row) == Outcome.OPEN ? Optional.empty() : columns.endedOn(row).or(() -> columns.seenOn(row));
    }
}
