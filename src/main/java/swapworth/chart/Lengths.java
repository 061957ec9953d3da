package swapworth.chart;

import java.util.List;

/** Checks that what belongs together is equally long. */
final class Lengths {

    private Lengths() {
    }

    static void same(String what, double[] first, double[]... others) {
        for (double[] other : others) {
            if (other.length != first.length) {
                throw new IllegalArgumentException(what + ": " + first.length + " numbers beside " + other.length);
            }
        }
    }

    static void noneOrAll(String what, List<?> texts, double[] numbers) {
        if (!texts.isEmpty() && texts.size() != numbers.length) {
            throw new IllegalArgumentException(what + ": " + numbers.length + " numbers beside " + texts.size() + " texts");
        }
    }
}
