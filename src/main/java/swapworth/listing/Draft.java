package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.money.Money;
import swapworth.reading.CsvRow;
import swapworth.reading.RowProblem;

/** One row on its way to becoming a listing; what speaks against it is collected as it is found. */
final class Draft {

    private static final CarFacts NOTHING_KNOWN = CarFacts.of("").build();

    final Origin origin;
    final CsvRow row;
    String name = "";
    String role = "";
    Optional<String> id = Optional.empty();
    Optional<LocalDate> seenOn = Optional.empty();
    CarFacts facts = NOTHING_KNOWN;
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
    List<String> remarks = List.of();
    List<RowProblem> rejections = List.of();
    List<RowProblem> asides = List.of();
    List<RowProblem> oddities = List.of();

    Draft(String file, CsvRow row) {
        this.origin = new Origin(file, row.line());
        this.row = row;
    }

    void reject(String column, String text, String message) {
        rejections = with(rejections, problem(column, text, RowProblem.Kind.REJECTED, message));
    }

    void setAside(String column, String text, String message) {
        asides = with(asides, problem(column, text, RowProblem.Kind.SET_ASIDE, message));
    }

    void odd(String column, String text, String message) {
        oddities = with(oddities, problem(column, text, RowProblem.Kind.ODD, message));
        remark(message);
    }

    void remark(String remark) {
        remarks = with(remarks, remark);
    }

    void remarkAll(List<String> further) {
        if (!further.isEmpty()) {
            further.forEach(this::remark);
        }
    }

    /** Most rows have nothing to add to: the list is made with the first. */
    private static <T> List<T> with(List<T> before, T further) {
        List<T> more = before.isEmpty() ? new ArrayList<>(2) : before;
        more.add(further);
        return more;
    }

    private RowProblem problem(String column, String text, RowProblem.Kind kind, String message) {
        return new RowProblem(origin.file(), origin.line(), column, text, kind, message);
    }
}
