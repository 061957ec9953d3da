package swapworth.listing;

/**
 * What became of the rows of the files: the first four add up to all of them.
 *
 * @param used rows that a model may use
 * @param setAside rows that were read, but lie outside what a model may use
 * @param rejected rows that could not be read
 * @param blank rows without any text
 * @param comments lines that begin with {@code #}, beside the rows
 */
public record Counts(int used, int setAside, int rejected, int blank, int comments) {

    /**
     * All rows of the files below their headers, without comment lines.
     *
     * @return the sum of the first four counts
     */
    public int rows() {
        return used + setAside + rejected + blank;
    }

    /**
     * The counts as a sentence.
     *
     * @return for instance {@code 612 rows: 598 used, 9 set aside, 3 rejected, 2 blank}
     */
    public String sentence() {
        return rows() + (rows() == 1 ? " row: " : " rows: ") + used + " used, " + setAside + " set aside, " + rejected + " rejected, "
                + blank + " blank"
                + (comments == 0 ? "" : "; beside them " + comments + (comments == 1 ? " comment line" : " comment lines"));
    }
}
