package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.money.Money;
import swapworth.reading.CsvRow;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;

/** One row on its way to becoming a listing; what speaks against it is collected as it is found. */
final class Draft {

    final Origin origin;
    final CsvRow row;
    String name = "";
    String role = "";
    Optional<String> id = Optional.empty();
    Optional<LocalDate> seenOn = Optional.empty();
    CarFacts facts = CarFacts.of("").build();
    Optional<Money> money = Optional.empty();
    String priceText = "";
    PriceKind kind = PriceKind.ASKING;
    PriceIncludes includes = PriceIncludes.UNKNOWN;
    Outcome outcome = Outcome.OPEN;
    Optional<LocalDate> endedOn = Optional.empty();
    Saved saved = Saved.UNKNOWN;
    Optional<String> source = Optional.empty();
    Optional<String> note = Optional.empty();
    DistanceUnit unit = DistanceUnit.MI;
    boolean unitInCell;
    boolean currencyByDefault;
    final List<String> remarks = new ArrayList<>(0);
    final List<RowProblem> rejections = new ArrayList<>(0);
    final List<RowProblem> asides = new ArrayList<>(0);
    final List<RowProblem> oddities = new ArrayList<>(0);

    Draft(String file, CsvRow row) {
        this.origin = new Origin(file, row.line());
        this.row = row;
    }

    void reject(String column, String text, String message) {
        rejections.add(problem(column, text, RowProblem.Kind.REJECTED, message));
    }

    void setAside(String column, String text, String message) {
        asides.add(problem(column, text, RowProblem.Kind.SET_ASIDE, message));
    }

    void odd(String column, String text, String message) {
        oddities.add(problem(column, text, RowProblem.Kind.ODD, message));
        remarks.add(message);
    }

    private RowProblem problem(String column, String text, RowProblem.Kind kind, String message) {
        return new RowProblem(origin.file(), origin.line(), column, text, kind, message);
    }

    /** The one entry of a row that is not used: its first problem, with the others named behind it. */
    static RowProblem joined(List<RowProblem> problems) {
        RowProblem first = problems.get(0);
        if (problems.size() == 1) {
            return first;
        }
        StringBuilder message = new StringBuilder(first.message());
        for (RowProblem other : problems.subList(1, problems.size())) {
            message.append(". Also ").append(other.column()).append(" '").append(Spelling.shortened(other.rawText(), 30))
                    .append("': ").append(other.message());
        }
        return new RowProblem(first.file(), first.line(), first.column(), first.rawText(), first.kind(), message.toString());
    }
}
