package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;

/**
 * How one column of a file was understood.
 *
 * @param file the name of the file
 * @param header its header as it stands
 * @param meaning the column that it was taken for; empty for a further column, which is kept by its own name
 * @param how the unit or currency that was understood, or why the column is kept as a further one; may be empty
 * @param filled in how many rows it is not blank
 * @param rows of how many rows
 */
public record ColumnUnderstood(String file, String header, String meaning, String how, int filled, int rows) {

    /** Checks that nothing is missing. */
    public ColumnUnderstood {
        requireNonNull(file, "file");
        requireNonNull(header, "header");
        requireNonNull(meaning, "meaning");
        requireNonNull(how, "how");
    }

    /**
     * Columns of a file of few rows that nothing reads.
     *
     * @param columns the columns of the file
     * @param own names of further columns that it may have
     * @param further names of further columns that the listings have or the model takes
     * @return one problem a column, with the name that was probably meant
     */
    public static List<RowProblem> unused(List<ColumnUnderstood> columns, Collection<String> own, Collection<String> further) {
        Set<String> known = Stream.concat(own.stream(), further.stream()).map(Spelling::key).collect(Collectors.toSet());
        return unread(columns, known, Stream.concat(own.stream(), Stream.of(ListingColumn.values()).map(ListingColumn::header)).toList());
    }

    /** The same by the keys of further columns that the file may have, and by all names of which one may have been meant. */
    static List<RowProblem> unread(List<ColumnUnderstood> columns, Set<String> known, List<String> names) {
        Set<String> here = columns.stream().flatMap(c -> Stream.of(c.header, c.meaning)).map(Spelling::key).collect(Collectors.toSet());
        return columns.stream().filter(c -> c.meaning.isEmpty() && c.how.isEmpty() && !c.header.isBlank()
                && !known.contains(Spelling.key(c.header))).map(c -> RowProblem.unusedColumn(c.file, c.header, c.header, names,
                        name -> here.contains(Spelling.key(name)))).toList();
    }
}
