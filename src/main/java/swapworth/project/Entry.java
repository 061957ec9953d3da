package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import swapworth.money.Money;

/**
 * One row of a ledger, in the base currency and rounded to its smallest coin, so that sums can be added again by hand.
 *
 * @param line the line of the file on which it begins
 * @param date its day
 * @param due the day on which it is paid or received: for what is done its own
 * @param item what it belongs to; empty where the row does not say
 * @param category what the money is for
 * @param direction whether money goes out or comes in
 * @param status whether it is done
 * @param typed the amount as it was typed; for a part sold with its gross price what was left of it
 * @param amount the amount in the base currency, at least 0; of an estimate the likely one
 * @param range the ends between which an estimate lies, where the row states them
 * @param kept the part of the amount that is not charged to the undertaking: tools that stay
 * @param shares what of the charged amount falls on which car; they add up to it
 * @param sale gross price, fee and postage of a part sold, where the row states them
 * @param hours own hours
 * @param receipt the name of the receipt; empty for none
 * @param note the note
 * @param plan what was expected of a row that is done, where it still says so
 * @param extra that the finished car does without it, where the row says so
 */
public record Entry(int line, LocalDate date, LocalDate due, String item, Category category, Direction direction, Status status,
        Money typed, BigDecimal amount, Optional<Ends> range, BigDecimal kept, List<Share> shares, Optional<Sale> sale, double hours,
        String receipt, String note, Optional<Plan> plan, Optional<Extra> extra) {

    /** Whether money goes out or comes in. */
    public enum Direction {
        /** It is paid. */
        OUT,
        /** It is received: for parts sold, or back from what was paid. */
        IN
    }

    /** Whether a row is done. */
    public enum Status {
        /** Paid or received. */
        ACTUAL("actual"),
        /** Ordered or agreed. */
        COMMITTED("committed"),
        /** A guess of what is to come. */
        ESTIMATE("estimate");

        private final String words;

        Status(String words) {
            this.words = words;
        }

        /**
         * How it stands in a file and on a page.
         *
         * @return plain words in lower case
         */
        public String words() {
            return words;
        }
    }

    /**
     * The ends of an estimate.
     *
     * @param low the least
     * @param high the most
     */
    public record Ends(BigDecimal low, BigDecimal high) {
    }

    /**
     * What was expected of a row before it was done.
     *
     * @param likely the likely amount, in the base currency
     * @param range the ends between which it was expected, where the row states them
     */
    public record Plan(BigDecimal likely, Optional<Ends> range) {
    }

    /**
     * What is wanted and not needed: the car is finished without it.
     *
     * @param adds what it adds to the price of the finished car by the guess of the row, in the base currency
     */
    public record Extra(Optional<BigDecimal> adds) {
    }

    /**
     * What falls on one car.
     *
     * @param car recipient, donor, project, or another name
     * @param amount its part of the charged amount
     */
    public record Share(String car, BigDecimal amount) {
    }

    /**
     * How the price of a part sold became what was left of it.
     *
     * @param gross what the buyer paid
     * @param fee what the marketplace kept
     * @param postage what sending it cost
     */
    public record Sale(BigDecimal gross, BigDecimal fee, BigDecimal postage) {
    }

    /** Copies the list in. */
    public Entry {
        requireNonNull(typed, "typed");
        shares = List.copyOf(shares);
    }

    /**
     * The amount with the sign of money in the undertaking: out counts up, in counts down; what is kept counts too.
     *
     * @return in the base currency
     */
    public BigDecimal cash() {
        return direction == Direction.OUT ? amount : amount.negate();
    }

    /**
     * The cars that it falls on.
     *
     * @return recipient, donor, project, or other names
     */
    public List<String> cars() {
        return shares.stream().map(Share::car).toList();
    }

    /**
     * Whether money of it came back that had been paid, and was not got for something sold.
     *
     * @return true for a refund
     */
    public boolean isRefund() {
        return direction == Direction.IN && !category.isSale();
    }
}
