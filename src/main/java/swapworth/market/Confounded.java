package swapworth.market;

import java.util.List;

/**
 * Terms of a price model that its prices cannot tell apart: how an effect on price splits between them is assumption.
 *
 * @param terms what they are, two or more, as in the table of terms; lines as {@code line: NAME}
 * @param kind whether they are one fact under several names, or one is made up of the others
 */
public record Confounded(List<String> terms, Kind kind) {

    /** How terms hang together. */
    public enum Kind {
        /** Every price that tells of one tells of the others too, in the same measure. */
        ALWAYS_TOGETHER,
        /** One is a weighted sum of the others. */
        DEPENDENT,
        /** One is a weighted sum of the others but for next to nothing. */
        NEARLY_DEPENDENT
    }

    /** Copies the terms in. */
    public Confounded {
        terms = List.copyOf(terms);
    }

    /**
     * The warning in words.
     *
     * @return one sentence without its full stop
     */
    public String sentence() {
        int last = terms.size() - 1;
        String all = "'" + String.join("', '", terms.subList(0, last)) + "' and '" + terms.get(last) + "'";
        return all + switch (kind) {
            case ALWAYS_TOGETHER -> " always go together in these prices: how an effect splits between them is assumption";
            case DEPENDENT -> " cannot be told apart by these prices: how an effect splits between them is assumption";
            case NEARLY_DEPENDENT -> " can hardly be told apart by these prices: how an effect splits between them is nearly all "
                    + "assumption";
        };
    }
}
