package swapworth.notebook;

/**
 * One cell of a notebook.
 *
 * @param kind whether it holds prose or code
 * @param line the line of the file at which its text begins, counted from 1
 * @param text its text; prose without the marks of comments
 */
record NotebookCell(Kind kind, int line, String text) {

    /** What a cell holds. */
    enum Kind { PROSE, CODE }
}
