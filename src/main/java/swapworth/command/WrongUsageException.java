package swapworth.command;

/** The words of the command line make no sense; the message says which and what would. */
final class WrongUsageException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    WrongUsageException(String message) {
        super(message);
    }
}
