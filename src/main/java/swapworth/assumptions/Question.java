package swapworth.assumptions;

import java.util.Locale;

/** Which question an assumption stands in for; each has a file of its own in the program. */
public enum Question {
    /** What do such cars sell for. */
    MARKET,
    /** What does a donor or a recipient cost at the door, and what does it give back. */
    DONOR,
    /** What is the finished swap worth. */
    SWAP,
    /** What does the undertaking cost, and what else could be done. */
    PROJECT;

    /** Where the program keeps the numbers of this question. */
    String resource() {
        return "/swapworth/assumptions/" + name().toLowerCase(Locale.ROOT) + ".csv";
    }
}
