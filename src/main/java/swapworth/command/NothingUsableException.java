package swapworth.command;

/** What was named holds nothing to work with; the message says what is needed. */
final class NothingUsableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NothingUsableException(String message) {
        super(message);
    }
}
