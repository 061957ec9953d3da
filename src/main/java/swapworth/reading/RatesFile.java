package swapworth.reading;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.money.Rates;

/**
 * Dated exchange rates from a file {@code rates.csv} with the columns {@code date, from, to, rate}: one unit of {@code from} is
 * worth {@code rate} units of {@code to}.
 *
 * @param rates the rates of all usable rows
 * @param problems the rows that could not be used
 */
record RatesFile(Rates rates, List<RowProblem> problems) {

    /** Copies the problems in. */
    RatesFile {
        problems = List.copyOf(problems);
    }

    /**
     * Reads a file.
     *
     * @param file with the columns {@code date, from, to, rate}
     * @param conventions how the user writes numbers and dates
     * @param words what the user's headers mean
     * @return the rates
     * @throws UnusableFileException if the file cannot be used as a whole
     */
    static RatesFile read(Path file, Conventions conventions, Words words) {
        CsvSource source = CsvSource.readBeside(file, words);
        if (source.isOfNothing()) {
            return new RatesFile(Rates.none(), source.oddities());
        }
        int[] places = source.neededColumns("date", "from", "to", "rate");
        int date = places[0];
        int from = places[1];
        int to = places[2];
        int rate = places[3];
        CellReader cells = new CellReader(conventions, source.separator());
        List<RowProblem> problems = new ArrayList<>(source.rejected());
        problems.addAll(source.oddities());
        List<Rates.Rate> rates = new ArrayList<>();
        Map<String, BigDecimal> ofDay = new HashMap<>();
        for (CsvRow row : source.rows()) {
            Optional<Currency> first = Currencies.of(row.cell(from));
            Optional<Currency> second = Currencies.of(row.cell(to));
            if (cells.date(row.cell(date)) instanceof Parsed.Understood<LocalDate> day
                    && cells.number(row.cell(rate)) instanceof Parsed.Understood<BigDecimal> number
                    && first.isPresent() && second.isPresent() && number.value().signum() > 0) {
                rates.add(new Rates.Rate(day.value(), first.get(), second.get(), number.value()));
                BigDecimal before = ofDay.putIfAbsent(day.value() + " " + first.get() + " " + second.get(), number.value());
                if (before != null && before.compareTo(number.value()) != 0) {
                    problems.add(new RowProblem(source.file(), row.line(), "rate", row.cell(rate), RowProblem.Kind.QUESTION,
                            "a row above states " + before.toPlainString()
                            + " for the same day; the last one is counted: which is right?"));
                }
            } else {
                Optional<String> no = refusal("date", cells.date(row.cell(date)))
                        .or(() -> refusal("rate", cells.number(row.cell(rate))));
                problems.add(new RowProblem(source.file(), row.line(), "", String.join(",", row.cells()), RowProblem.Kind.REJECTED,
                        "a rate needs a date such as 2024-04-03, two currencies by their ISO 4217 codes and a number above 0"
                        + no.orElse("")));
            }
        }
        return new RatesFile(Rates.of(rates), problems);
    }

    private static Optional<String> refusal(String column, Parsed<?> parsed) {
        return parsed instanceof Parsed.Refused<?> no ? Optional.of("; " + column + ": " + no.message()) : Optional.empty();
    }
}
