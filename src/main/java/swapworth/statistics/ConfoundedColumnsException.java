package swapworth.statistics;

/** Nothing is assumed of some coefficients and the rows cannot tell them apart: there is no answer, and none is made up. */
public final class ConfoundedColumnsException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    ConfoundedColumnsException(String message) {
        super(message);
    }
}
