package swapworth.notebook;

/** A notebook that cannot be run as it stands; the message names file and line and says what is needed. */
public final class NotebookException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotebookException(String message) {
        super(message);
    }
}
