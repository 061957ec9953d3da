package swapworth.listing;

import java.util.Arrays;

/**
 * Whole numbers, one a row, 0 in each row where none was set. Rows stand in blocks, and each block has as many bytes a row as its largest
 * number asks: none while all are 0. The first bytes of all rows of a block stand together, then the second ones, and so on.
 */
final class Numbers {
    private static final int SHIFT = 12;
    /** The rows of a block. */
    static final int ROWS = 1 << SHIFT;
    private static final byte[] ZEROS = new byte[0];

    private byte[][] blocks = new byte[0][];

    long get(int row) {
        int number = row >>> SHIFT;
        if (number >= blocks.length) {
            return 0;
        }
        byte[] block = blocks[number];
        long found = 0;
        int shift = 0;
        for (int at = row & ROWS - 1; at < block.length; at += ROWS) {
            found |= (block[at] & 0xffL) << shift;
            shift += 8;
        }
        return found;
    }

    /** The same for a column of numbers that are known to be small, such as places in a list. */
    int code(int row) {
        int number = row >>> SHIFT;
        if (number >= blocks.length) {
            return 0;
        }
        byte[] block = blocks[number];
        int at = row & ROWS - 1;
        if (block.length == 0) {
            return 0;
        }
        return block.length == ROWS ? block[at] & 0xff : (int) get(row);
    }

    void set(int row, long value) {
        int number = row >>> SHIFT;
        if (number >= blocks.length) {
            if (value == 0) {
                return;
            }
            int before = blocks.length;
            blocks = Arrays.copyOf(blocks, number + 1 + number / 4);
            Arrays.fill(blocks, before, blocks.length, ZEROS);
        }
        byte[] block = blocks[number];
        int bits = block.length / ROWS * Byte.SIZE;
        if (bits < Long.SIZE && value >>> bits != 0) {
            block = Arrays.copyOf(block, (71 - Long.numberOfLeadingZeros(value) >>> 3) * ROWS);
            blocks[number] = block;
        }
        long rest = value;
        for (int at = row & ROWS - 1; at < block.length; at += ROWS) {
            block[at] = (byte) rest;
            rest >>>= 8;
        }
    }

    /** The last of some rows in which a number is set; the first one if it is in none. */
    int latest(int[] rows, int from, int to) {
        int at = to - 1;
        while (at > from && get(rows[at]) == 0) {
            at--;
        }
        return rows[at];
    }

    /** A number that may be below 0 as one that is small where the number is near 0. */
    static long unsigned(long number) {
        return number << 1 ^ number >> 63;
    }

    /** What {@link #unsigned} was made of. */
    static long signed(long unsigned) {
        return unsigned >>> 1 ^ -(unsigned & 1);
    }

    /** A double as a number other than 0; round ones are small, for their last bytes are 0 and are put first. */
    static long ofDouble(double value) {
        return Long.reverseBytes(Double.doubleToLongBits(value)) + 1;
    }

    /** What {@link #ofDouble} was made of. */
    static double toDouble(long number) {
        return Double.longBitsToDouble(Long.reverseBytes(number - 1));
    }
}
