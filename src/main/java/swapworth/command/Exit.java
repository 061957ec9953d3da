package swapworth.command;

/** The exit codes of the program. */
final class Exit {
    static final int DONE = 0;
    static final int NOTHING_USABLE = 1;
    static final int WRONG_USAGE = 2;

    private Exit() {
    }
}
