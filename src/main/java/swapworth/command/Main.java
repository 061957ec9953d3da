package swapworth.command;

/** Placeholder. */
public final class Main {
    private Main() {
    }
}
