package swapworth.project;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What a ledger adds up to, exactly: each figure is a sum of amounts of its rows, which {@link #rowsOf} lists, in any order. Money out
 * counts up, money in counts down; own hours stand apart and are in no amount.
 */
public final class LedgerSums {
    private final Ledger ledger;
    private final BigDecimal none;

    LedgerSums(Ledger ledger) {
        this.ledger = ledger;
        none = ledger.nothing();
    }

    /**
     * A sum of rows.
     *
     * @param name what they have in common
     * @param rows how many they are
     * @param paid money paid
     * @param refunded money of it that came back
     * @param sold money received for what was sold, net of fee and postage
     * @param committed still to be paid less still to be received, as agreed
     * @param estimated the same as guessed, by the likely amounts
     */
    public record Sum(String name, int rows, BigDecimal paid, BigDecimal refunded, BigDecimal sold, BigDecimal committed,
            BigDecimal estimated) {

        /**
         * Paid less refunded less sold.
         *
         * @return in the base currency
         */
        public BigDecimal net() {
            return paid.subtract(refunded).subtract(sold);
        }

        /**
         * What it will be when all is done, by the likely amounts.
         *
         * @return in the base currency
         */
        public BigDecimal atCompletion() {
            return net().add(committed).add(estimated);
        }

        private Sum plus(Entry entry, BigDecimal amount) {
            BigDecimal cash = entry.direction() == Direction.OUT ? amount : amount.negate();
            if (entry.status() == Status.COMMITTED) {
                return new Sum(name, rows + 1, paid, refunded, sold, committed.add(cash), estimated);
            }
            if (entry.status() == Status.ESTIMATE) {
                return new Sum(name, rows + 1, paid, refunded, sold, committed, estimated.add(cash));
            }
            if (entry.direction() == Direction.OUT) {
                return new Sum(name, rows + 1, paid.add(amount), refunded, sold, committed, estimated);
            }
            return entry.isRefund() ? new Sum(name, rows + 1, paid, refunded.add(amount), sold, committed, estimated)
                    : new Sum(name, rows + 1, paid, refunded, sold.add(amount), committed, estimated);
        }
    }

    private Sum zero(String name) {
        return new Sum(name, 0, none, none, none, none, none);
    }

    /**
     * All rows.
     *
     * @return their sum, tools that are kept included
     */
    public Sum total() {
        Sum sum = zero("all");
        for (Entry entry : ledger.entries()) {
            sum = sum.plus(entry, entry.amount());
        }
        return sum;
    }

    /**
     * By what the money is for, in the order of {@link Category}.
     *
     * @return a sum for each category that has rows
     */
    public List<Sum> byCategory() {
        return List.copyOf(categories().values());
    }

    private Map<Category, Sum> categories() {
        Map<Category, Sum> sums = new EnumMap<>(Category.class);
        for (Entry entry : ledger.entries()) {
            sums.put(entry.category(), sums.getOrDefault(entry.category(), zero(entry.category().words())).plus(entry, entry.amount()));
        }
        return sums;
    }

    /**
     * By the car on which the money falls; what is kept of tools stands by itself, so that the sums add up to {@link #total}.
     *
     * @return recipient, donor and project first, then other names
     */
    public List<Sum> byCar() {
        Map<String, Sum> sums = new LinkedHashMap<>();
        for (String first : List.of("recipient", LedgerRow.DONOR, LedgerRow.PROJECT)) {
            sums.put(first, zero(first));
        }
        // Case, spaces and hyphens make no other car: the first spelling stands for all.
        Map<String, Sum> others = new TreeMap<>();
        Sum kept = zero("tools kept, not charged");
        for (Entry entry : ledger.entries()) {
            for (Entry.Share share : entry.shares()) {
                Map<String, Sum> where = sums.containsKey(share.car()) ? sums : others;
                String car = where == sums ? share.car() : Spelling.name(share.car());
                where.put(car, where.getOrDefault(car, zero(share.car())).plus(entry, share.amount()));
            }
            kept = entry.kept().signum() == 0 ? kept : kept.plus(entry, entry.kept());
        }
        List<Sum> all = new ArrayList<>(sums.values());
        all.addAll(others.values());
        all.add(kept);
        all.removeIf(sum -> sum.rows() == 0);
        return all;
    }

    /**
     * What tools cost that stay when the undertaking is over: paid, but not charged to it.
     *
     * @return paid less what came back of it, as of the day of the ledger
     */
    public BigDecimal keptSoFar() {
        return kept(entry -> entry.status() == Status.ACTUAL);
    }

    /**
     * What tools that stay will have cost when all is done.
     *
     * @return the same with what is to come
     */
    public BigDecimal keptAtCompletion() {
        return kept(entry -> true);
    }

    /**
     * What is still to be done until the car is finished: money that only comes in, and what goes back to a buyer of parts, is not of it.
     *
     * @return the committed and estimated rows of money that goes out and of own hours; none when the finished car is sold
     */
    public List<Entry> toFinish() {
        return ledger.carSold().isPresent() ? List.of() : ledger.entries().stream().filter(entry -> entry.status() != Status.ACTUAL
                && entry.direction() == Direction.OUT && entry.category() != Category.SOLD).toList();
    }

    /**
     * When the car is done.
     *
     * @return the month in which the last of {@link #toFinish} is due; nothing where all is done
     */
    public Optional<YearMonth> doneIn() {
        return toFinish().stream().map(entry -> YearMonth.from(entry.due())).max(YearMonth::compareTo);
    }

    /**
     * The cars that are bought.
     *
     * @return for how many cars a row of their purchase is done; rows that name no car stand for one each
     */
    public int carsBought() {
        Set<String> cars = new HashSet<>();
        for (Entry entry : ledger.entries()) {
            if (entry.category() == Category.PURCHASE && entry.status() == Status.ACTUAL && entry.direction() == Direction.OUT) {
                entry.shares().forEach(share -> cars.add(share.car().equals(LedgerRow.PROJECT) ? "line " + entry.line()
                        : Spelling.name(share.car())));
            }
        }
        return cars.size();
    }

    /**
     * What is agreed and still to be paid, tools that stay left out.
     *
     * @return the sum of committed rows of money that goes out
     */
    public BigDecimal agreedToPay() {
        BigDecimal sum = none;
        for (Entry entry : ledger.entries()) {
            if (entry.status() == Status.COMMITTED && entry.direction() == Direction.OUT) {
                sum = sum.add(entry.amount()).subtract(entry.kept());
            }
        }
        return sum;
    }

    private BigDecimal kept(Predicate<Entry> which) {
        BigDecimal sum = none;
        for (Entry entry : ledger.entries()) {
            if (which.test(entry)) {
                sum = entry.direction() == Direction.OUT ? sum.add(entry.kept()) : sum.subtract(entry.kept());
            }
        }
        return sum;
    }

    /**
     * Own hours so far.
     *
     * @return the hours of rows that are done
     */
    public double hoursSoFar() {
        return hours(Status.ACTUAL);
    }

    /**
     * Own hours to come, by the likely figures.
     *
     * @return the hours of rows that are not done
     */
    public double hoursToCome() {
        return hours(Status.COMMITTED) + hours(Status.ESTIMATE);
    }

    private double hours(Status status) {
        double sum = 0;
        for (Entry entry : ledger.entries()) {
            sum += entry.status() == status ? entry.hours() : 0;
        }
        return sum;
    }

    /**
     * What was paid less what came in, month by month, of rows that are done.
     *
     * @return by month, in order
     */
    public Map<YearMonth, BigDecimal> cashByMonth() {
        TreeMap<YearMonth, BigDecimal> months = new TreeMap<>();
        for (Entry entry : ledger.entries()) {
            if (entry.status() == Status.ACTUAL) {
                months.merge(YearMonth.from(entry.date()), entry.cash(), BigDecimal::add);
            }
        }
        return months;
    }

    /**
     * All tables of the sums.
     *
     * @return by category, by car, plan against actual, by year where there are several, parts sold, the finished car sold and own hours,
     *     as far as there are rows of them
     */
    public List<Table> tables() {
        List<Table> tables = new ArrayList<>(List.of(byCategoryTable(""), byCarTable()));
        for (Table table : List.of(new PlanAgainstActual(ledger).table(), byYear(), sold(), carSold(), hours())) {
            if (!table.rows().isEmpty()) {
                tables.add(table);
            }
        }
        return tables;
    }

    private String unit() {
        return ledger.currency().getCurrencyCode();
    }

    private Table.Builder sums(String title, String first) {
        String unit = unit();
        return Table.titled(title + ", " + unit + ", as of " + ledger.on()).columns(Column.words(first), Column.number("rows", ""),
                Column.number("paid", unit), Column.number("came back", unit), Column.number("sold, net", unit).key("sold_net"),
                Column.number("net so far", unit), Column.number("committed", unit), Column.number("estimated", unit),
                Column.number("at completion", unit));
    }

    private static void row(Table.Builder table, Cell name, Sum sum) {
        table.row(name, Cell.whole(sum.rows()), Cell.amount(sum.paid()), Cell.amount(sum.refunded()), Cell.amount(sum.sold()),
                Cell.amount(sum.net()), Cell.amount(sum.committed()), Cell.amount(sum.estimated()), Cell.amount(sum.atCompletion()));
    }

    /**
     * The sums by category with their total.
     *
     * @param address what an address of the rows of a category begins with, such as {@code #ledger-}; empty for no links
     * @return one row a category
     */
    public Table byCategoryTable(String address) {
        Table.Builder table = sums("Money by category", "category");
        table.note(ledger.read().sentence() + ". At completion is by the likely amounts; own hours are in no amount.");
        notesOfWhatStandsApart(table);
        categories().forEach((category, sum) -> {
            Cell name = Cell.words(category.words());
            row(table, address.isEmpty() ? name : name.linked(address + idOf(category)), sum);
        });
        row(table, Cell.words("all"), total());
        return table.build();
    }

    private void notesOfWhatStandsApart(Table.Builder table) {
        ledger.notesOfWhatStandsApart().forEach(table::note);
    }

    /** The end of an address of the rows of a category. */
    static String idOf(Category category) {
        return category.words().replace(' ', '-');
    }

    /**
     * The sums by car with their total.
     *
     * @return one row a car
     */
    public Table byCarTable() {
        Table.Builder table = sums("Money by car", "car");
        table.note("A row for several cars is shared by its stated weights, to the smallest coin.");
        byCar().forEach(sum -> row(table, Cell.words(sum.name()), sum));
        Sum all = total();
        row(table, Cell.words("all"), all);
        return table.build();
    }

    /**
     * What was paid and came in in each calendar year, of rows that are done: the year of a tax may be another one, and what of it is taxed
     * is for local law to say.
     *
     * @return one row a year, with the total; no row where all is of one year
     */
    public Table byYear() {
        String unit = unit();
        Table.Builder table = Table.titled("Money by calendar year, " + unit + ", as of " + ledger.on()).columns(Column.words("year"),
                Column.number("rows", ""), Column.number("paid", unit), Column.number("came back", unit),
                Column.number("sold, gross", unit), Column.number("fees and postage of it", unit), Column.number("sold, net", unit),
                Column.number("finished car and invoices, net", unit));
        table.note("Only what is done, in the year of its day, refunds to buyers of parts taken off what was sold. Which of it is taxed,"
                + " and in which year, is for your local law to say.");
        TreeMap<Integer, YearSum> years = new TreeMap<>();
        YearSum all = new YearSum(none);
        ledger.all().filter(entry -> entry.status() == Status.ACTUAL).forEach(entry -> {
            years.computeIfAbsent(entry.date().getYear(), year -> new YearSum(none)).add(entry);
            all.add(entry);
        });
        if (years.size() > 1) {
            years.forEach((year, sum) -> sum.row(table, Integer.toString(year)));
            all.row(table, "all");
        }
        return table.build();
    }

    /** What is done in one year. */
    private static final class YearSum {
        private int rows;
        private BigDecimal paid;
        private BigDecimal back;
        private BigDecimal gross;
        private BigDecimal costs;
        private BigDecimal net;
        private BigDecimal apart;

        YearSum(BigDecimal none) {
            paid = none;
            back = none;
            gross = none;
            costs = none;
            net = none;
            apart = none;
        }

        void add(Entry entry) {
            rows++;
            boolean in = entry.direction() == Direction.IN;
            BigDecimal received = in ? entry.amount() : entry.amount().negate();
            if (entry.category().standsApart()) {
                apart = apart.add(received);
            } else if (entry.category() == Category.SOLD) {
                BigDecimal before = entry.sale().map(Entry.Sale::gross).orElse(entry.amount());
                gross = in ? gross.add(before) : gross.subtract(before);
                costs = costs.add(entry.sale().map(sale -> sale.fee().add(sale.postage())).orElse(BigDecimal.ZERO));
                net = net.add(received);
            } else if (in) {
                back = back.add(entry.amount());
            } else {
                paid = paid.add(entry.amount());
            }
        }

        void row(Table.Builder table, String year) {
            table.row(Cell.words(year), Cell.whole(rows), Cell.amount(paid), Cell.amount(back), Cell.amount(gross), Cell.amount(costs),
                    Cell.amount(net), Cell.amount(apart));
        }
    }

    /**
     * Parts sold, from the gross price to what was left.
     *
     * @return one row a sale whose gross price is stated, with the total
     */
    public Table sold() {
        return sales("Parts sold", Category.SOLD).build();
    }

    /**
     * The finished car sold, from the gross price to what was left.
     *
     * @return one row a row of its sale, with the total; they are in no other sum
     */
    public Table carSold() {
        Table.Builder table = sales("The finished car sold", Category.CAR_SOLD);
        notesOfWhatStandsApart(table);
        return table.build();
    }

    private Table.Builder sales(String title, Category category) {
        String unit = unit();
        Table.Builder table = Table.titled(title + ", " + unit + ", as of " + ledger.on()).columns(Column.number("line", ""),
                Column.words("date"), Column.words("status"), Column.words("what"), Column.number("gross", unit), Column.number("fee",
                        unit),
                Column.number("postage", unit), Column.number("net", unit));
        BigDecimal[] all = {none, none, none, none};
        int rows = 0;
        for (Entry entry : entriesOf(category)) {
            rows++;
            Entry.Sale sale = entry.sale().orElse(new Entry.Sale(entry.amount(), none, none));
            BigDecimal[] own = {sale.gross(), sale.fee(), sale.postage(), entry.amount()};
            if (entry.direction() == Direction.OUT) {
                // Money that goes back to a buyer.
                own = Arrays.stream(own).map(BigDecimal::negate).toArray(BigDecimal[]::new);
            }
            table.row(entry.line() == 0 ? Cell.BLANK : Cell.label(entry.line()), Cell.words(entry.due().toString()),
                    Cell.words(entry.status().words()), Cell.words(entry.note()), Cell.amount(own[0]), Cell.amount(own[1]),
                    Cell.amount(own[2]), Cell.amount(own[3]));
            for (int k = 0; k < all.length; k++) {
                all[k] = all[k].add(own[k]);
            }
        }
        if (rows > 0) {
            table.row(Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.words("all"), Cell.amount(all[0]), Cell.amount(all[1]),
                    Cell.amount(all[2]), Cell.amount(all[3]));
        }
        return table;
    }

    private List<Entry> entriesOf(Category category) {
        return ledger.all().filter(entry -> entry.category() == category).toList();
    }

    /**
     * Own hours by item.
     *
     * @return one row an item, with the total
     */
    public Table hours() {
        Table.Builder table = Table.titled("Own hours, as of " + ledger.on()).columns(Column.words("item"), Column.number("done", "h"),
                Column.number("to come", "h"));
        Map<String, double[]> items = new TreeMap<>();
        for (Entry entry : ledger.entries()) {
            if (entry.hours() > 0) {
                double[] both = items.computeIfAbsent(entry.item().isEmpty() ? "no item stated" : entry.item(), item -> new double[2]);
                both[entry.status() == Status.ACTUAL ? 0 : 1] += entry.hours();
            }
        }
        items.forEach((item, both) -> table.row(Cell.words(item), Cell.number(both[0], 1), Cell.number(both[1], 1)));
        if (!items.isEmpty()) {
            table.row(Cell.words("all"), Cell.number(hoursSoFar(), 1), Cell.number(hoursToCome(), 1));
        }
        return table.build();
    }

    /**
     * The rows behind a sum, each with its line in the file.
     *
     * @param category the category
     * @return one row a row of the ledger
     */
    public Table rowsOf(Category category) {
        String unit = unit();
        Table.Builder table = Table.titled("Rows of " + category.words() + ", " + unit).columns(Column.number("line", ""),
                Column.words("date"),
                Column.words("status"), Column.words("due"), Column.words("car"), Column.words("item"), Column.sentences("note"),
                Column.words("typed"), Column.number("out", unit), Column.number("in", unit), Column.number("hours", "h"),
                Column.words("receipt"));
        for (Entry entry : entriesOf(category)) {
            boolean out = entry.direction() == Direction.OUT;
            table.row(Cell.label(entry.line()), Cell.words(entry.date().toString()), Cell.words(entry.status().words()),
                    Cell.words(entry.status() == Status.ACTUAL ? "" : entry.due().toString()), Cell.words(cars(entry)),
                    Cell.words(entry.item()), Cell.words(entry.note()), Cell.words(entry.typed().toString()),
                    out ? Cell.amount(entry.amount()) : Cell.BLANK, out ? Cell.BLANK : Cell.amount(entry.amount()),
                    entry.hours() > 0 ? Cell.number(entry.hours(), 1) : Cell.BLANK, Cell.words(entry.receipt()));
        }
        return table.build();
    }

    private static String cars(Entry entry) {
        return String.join("; ", entry.cars());
    }
}
