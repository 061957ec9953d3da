package swapworth.notebook;

import static java.util.Objects.requireNonNull;

import swapworth.report.Part;

/**
 * One thing that a cell of code put out.
 *
 * @param manner how it came out
 * @param part what is to be seen
 */
record Output(Manner manner, Part part) {

    /** How something came out of a cell. */
    enum Manner {
        /** Printed as text. */
        PRINTED,
        /** Handed to {@link Show}. */
        SHOWN,
        /** The value of the last expression. */
        LAST,
        /** Why the cell failed. */
        STOPPED
    }

    Output {
        requireNonNull(manner, "manner");
        requireNonNull(part, "part");
    }
}
