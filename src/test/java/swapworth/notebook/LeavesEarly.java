package swapworth.notebook;

import java.io.IOException;

/** A program that starts another one, says its number, and ends before it. */
final class LeavesEarly {
    private LeavesEarly() {
    }

    public static void main(String[] arguments) throws IOException {
        System.out.println(QuickJava.started(new ProcessBuilder("sleep", "60")).pid());
        System.exit(0);
    }
}
