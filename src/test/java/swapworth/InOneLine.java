package swapworth;

/** What a terminal shows in several lines, as one sentence. */
public final class InOneLine {

    private InOneLine() {
    }

    /** The words with one space between each two. */
    public static String of(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }
}
