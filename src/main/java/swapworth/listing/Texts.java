package swapworth.listing;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One text a row, or none. Up to a number of distinct texts are kept once each; what comes beyond is kept row by row, in one array of
 * bytes for each block of rows, a byte a character where that is enough.
 */
final class Texts {
    private static final byte[] NOTHING = new byte[0];

    private final int mostShared;
    private final Map<String, Integer> numbers = new HashMap<>(4);
    private final List<Optional<String>> shared = new ArrayList<>(4);
    /** 0 for no text, up to {@link #mostShared} a shared one, above it where the row's own text begins in its block. */
    private final Numbers codes = new Numbers();
    private byte[][] own = new byte[0][];
    private int[] filled = new int[0];

    /** A column of texts, of which so many distinct ones are kept once for all rows. */
    Texts(int mostShared) {
        this.mostShared = mostShared;
        shared.add(Optional.empty());
    }

    Optional<String> get(int row) {
        int code = codes.code(row);
        return code <= mostShared ? shared.get(code) : Optional.of(own(row, code));
    }

    /** The text of the last of some rows that has one. */
    Optional<String> latest(int[] rows, int from, int to) {
        int at = to - 1;
        while (at > from && !has(rows[at])) {
            at--;
        }
        return get(rows[at]);
    }

    boolean has(int row) {
        return codes.code(row) != 0;
    }

    /** The number of a text that rows share; 0 for no text, -1 for a text of the row's own, which no shared one is equal to. */
    int code(int row) {
        int code = codes.code(row);
        return code <= mostShared ? code : -1;
    }

    /** How many shared texts there are, and no text; their numbers lie below. */
    int count() {
        return shared.size();
    }

    /** The text of a number that rows share. */
    String shared(int number) {
        return shared.get(number).orElse("");
    }

    /** Whether two rows have equal texts, or none has one. */
    boolean same(int row, int other) {
        int code = code(row);
        return code == code(other) && (code >= 0 || get(row).equals(get(other)));
    }

    /** Sets the text of a row that has none yet. */
    void set(int row, Optional<String> text) {
        if (text.isPresent()) {
            codes.set(row, number(row, text));
        }
    }

    private long number(int row, Optional<String> text) {
        Integer known = mostShared == 0 ? null : numbers.get(text.get());
        if (known != null) {
            return known;
        }
        if (shared.size() > mostShared) {
            return mostShared + 1L + add(row, text.get());
        }
        numbers.put(text.get(), shared.size());
        shared.add(text);
        return shared.size() - 1;
    }

    private String own(int row, int code) {
        byte[] block = own[row / Numbers.ROWS];
        int at = code - mostShared - 1;
        int size = 0;
        int shift = 0;
        while (block[at] < 0) {
            size |= (block[at++] & 0x7f) << shift;
            shift += 7;
        }
        size |= block[at++] << shift;
        int length = size >>> 1;
        if ((size & 1) == 0) {
            return new String(block, at, length, StandardCharsets.ISO_8859_1);
        }
        char[] wide = new char[length];
        for (int i = 0; i < length; i++) {
            wide[i] = (char) (block[at + 2 * i] << 8 | block[at + 2 * i + 1] & 0xff);
        }
        return new String(wide);
    }

    /** Adds a text to the block of a row and says where it begins. */
    private int add(int row, String text) {
        int number = row / Numbers.ROWS;
        if (number >= own.length) {
            int before = own.length;
            own = Arrays.copyOf(own, number + 1 + number / 4);
            Arrays.fill(own, before, own.length, NOTHING);
            filled = Arrays.copyOf(filled, own.length);
        }
        if (number > 0 && filled[number] == 0) {
            own[number - 1] = Arrays.copyOf(own[number - 1], filled[number - 1]);
        }
        int begin = filled[number];
        if (!put(number, text, 0)) {
            filled[number] = begin;
            put(number, text, 1);
        }
        return begin;
    }

    /** Puts a text behind what fills its block, a byte a character or two; whether none asks for more. */
    private boolean put(int number, String text, int wide) {
        int length = text.length();
        int at = filled[number];
        int most = at + 5 + (length << wide);
        byte[] block = own[number];
        if (most > block.length) {
            block = Arrays.copyOf(block, Math.max(most, block.length + block.length / 2 + 64));
            own[number] = block;
        }
        int size = length << 1 | wide;
        while (size > 0x7f) {
            block[at++] = (byte) (size | 0x80);
            size >>>= 7;
        }
        block[at++] = (byte) size;
        int all = 0;
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            all |= c;
            if (wide == 1) {
                block[at++] = (byte) (c >>> 8);
            }
            block[at++] = (byte) c;
        }
        filled[number] = at;
        return wide == 1 || all <= 0xff;
    }
}
