package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.reading.DistanceUnit;
import swapworth.reading.RowProblem;

/** One row on its way to becoming a listing; what speaks against it is collected as it is found. */
final class Draft {

    final String file;
    final int line;
    final CarFacts.Builder facts;
    String name = "";
    String role = "";
    Optional<String> id = Optional.empty();
    Optional<LocalDate> seenOn = Optional.empty();
    Asked asked = Asked.NOTHING;
    /** Whether that is the bid planned for a car, and not its price. */
    boolean planned;
    PriceKind kind = PriceKind.ASKING;
    PriceIncludes includes = PriceIncludes.UNKNOWN;
    Outcome outcome = Outcome.OPEN;
    Optional<LocalDate> endedOn = Optional.empty();
    Saved saved = Saved.UNKNOWN;
    Optional<String> source = Optional.empty();
    Optional<String> note = Optional.empty();
    DistanceUnit unit = DistanceUnit.MI;
    boolean unitInCell;
    List<String> remarks = List.of();
    List<RowProblem> rejections = List.of();
    List<RowProblem> asides = List.of();
    List<RowProblem> oddities = List.of();

    Draft(String file, int line, CarFacts.Builder facts) {
        this.file = file;
        this.line = line;
        this.facts = facts;
    }

    /** A listing as a draft again, but for its price. */
    static Draft of(Listing listing) {
        Draft draft = new Draft(listing.origin().file(), listing.origin().line(), listing.facts().toBuilder());
        draft.id = listing.id();
        draft.seenOn = listing.seenOn();
        draft.kind = listing.price().kind();
        draft.includes = listing.price().includes();
        draft.outcome = listing.outcome();
        draft.endedOn = listing.endedOn();
        draft.saved = listing.saved();
        draft.source = listing.source();
        draft.note = listing.note();
        draft.remarks = listing.remarks();
        return draft;
    }

    Origin origin() {
        return new Origin(file, line);
    }

    void reject(String column, String text, String message) {
        rejections = with(rejections, problem(column, text, RowProblem.Kind.REJECTED, message));
    }

    void setAside(String column, String text, String message) {
        asides = with(asides, problem(column, text, RowProblem.Kind.SET_ASIDE, message));
    }

    void odd(String column, String text, String message) {
        oddities = with(oddities, problem(column, text, RowProblem.Kind.ODD, message));
        remark(column + ": " + message);
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
        return new RowProblem(file, line, column, text, kind, message);
    }
}
