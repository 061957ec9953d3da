package swapworth.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;

/**
 * Which entries of a symmetric p x p matrix of a grouped model are not zero, and where they are held. Columns that only rows of one group
 * have, such as a line's own level, slopes and trims, are a block; no row has columns of two blocks. The columns that are left, those that
 * rows of several groups have, border all blocks:
 *
 * <pre>
 *   D1       B1
 *      D2    B2
 *         D3 B3
 *   B1'B2'B3'C
 * </pre>
 *
 * <p>With many lines this is a small part of the matrix, and its factor and the places of its inverse that rows ask for are no larger:
 * with L blocks of m columns and s that border them, work on it takes about L m (m + s)^2 + s^3 steps and not p^3.
 *
 * <p>Held are, row after row, the lower triangle of C and for each column of a block what it has in the s bordering columns and in its
 * block up to the diagonal: the entry of a and b, b not behind a, at {@code base(a) + place(b)}, the bordering columns being the first.
 */
final class Border {
    /** Below this number of columns the whole matrix is as quick, and quicker before the compiler knows the work by blocks. */
    private static final int FEWEST_COLUMNS = 256;
    /** The root of as many numbers as an array has room for. */
    private static final int MOST_IN_FULL = 46_340;
    /** Levels that are fewer are not asked whether their groups part the columns. */
    private static final int FEWEST_GROUPS = 8;
    /** So many rows tell whose groups part them best. */
    private static final int ENOUGH_ROWS = 4000;
    /** So many columns that no row has may border the blocks, for contrasts of new rows may have them. */
    private static final int FEW_UNSEEN = 16;
    /** The owner of a column that no row has, and of one that rows of several groups have; and where a row reaches into several blocks. */
    private static final int UNSEEN = -1;
    private static final int SHARED = -2;
    private static final int SEVERAL = -3;
    /** A border is worth while that leaves less than this share of the steps that the whole matrix takes. */
    private static final double WORTH_WHILE = 0.5;

    private final int p;
    private final int[] shared;
    private final int[][] block;
    private final int[] blockOf;
    private final int[] base;
    private final int[] place;
    /** For each column its number among the bordering ones and then all others, block by block. */
    private final int[] slot;
    private final long size;

    /** Every entry may be other than zero: a matrix held row after row in full. */
    private Border(int p) {
        this.p = p;
        this.shared = IntStream.range(0, p).toArray();
        this.block = new int[0][];
        this.blockOf = new int[p];
        this.base = IntStream.range(0, p).map(i -> i * p).toArray();
        this.place = shared;
        this.slot = shared;
        this.size = (long) p * p;
        Arrays.fill(blockOf, SHARED);
    }

    private Border(int p, int[] shared, int[][] block) {
        this.p = p;
        this.shared = shared;
        this.block = block;
        this.blockOf = new int[p];
        this.base = new int[p];
        this.place = new int[p];
        this.slot = new int[p];
        int held = 0;
        for (int k = 0; k < shared.length; k++) {
            blockOf[shared[k]] = SHARED;
            place[shared[k]] = k;
            slot[shared[k]] = k;
            base[shared[k]] = held;
            held += k + 1;
        }
        int number = shared.length;
        for (int b = 0; b < block.length; b++) {
            for (int k = 0; k < block[b].length; k++) {
                int column = block[b][k];
                slot[column] = number++;
                blockOf[column] = b;
                place[column] = shared.length + k;
                base[column] = held;
                held = Math.addExact(held, shared.length + k + 1);
            }
        }
        this.size = held;
    }

    static Border none(int p) {
        return new Border(p);
    }

    /** What the rows of a design and the priors of its columns allow, by those groups that leave least to do. */
    static Border of(Design design, List<PriorBlock> priors) {
        int p = design.columns();
        if (p < FEWEST_COLUMNS) {
            return none(p);
        }
        int some = Math.min(design.rows(), ENOUGH_ROWS);
        double enough = WORTH_WHILE * Math.pow(p, 3);
        double least = enough;
        int[] groups = new int[0];
        for (PriorBlock levels : priors) {
            if (levels.count() >= FEWEST_GROUPS) {
                int[] candidate = groups(p, levels);
                double steps = steps(owners(design, priors, candidate, some, k -> (int) ((long) k * design.rows() / some)));
                if (steps < least) {
                    least = steps;
                    groups = candidate;
                }
            }
        }
        if (groups.length > 0) {
            int[] owner = owners(design, priors, groups, design.rows(), i -> i);
            if (steps(owner) < enough) {
                return of(owner);
            }
        }
        if (p > MOST_IN_FULL) {
            throw new IllegalArgumentException("a design of " + p + " columns that no group parts; at most " + MOST_IN_FULL
                    + " of such can be fitted");
        }
        return none(p);
    }

    /** For each column that is the level of a group itself, the number of that group; -1 for the others. */
    private static int[] groups(int p, PriorBlock levels) {
        int[] group = new int[p];
        Arrays.fill(group, -1);
        for (int j = 0; j < levels.count(); j++) {
            group[levels.from() + j] = levels.from() + j;
        }
        return group;
    }

    /** For each column the one group whose rows have it, of so many rows. */
    private static int[] owners(Design design, List<PriorBlock> priors, int[] groups, int count, IntUnaryOperator row) {
        List<int[]> parts = Ranges.make(count, (first, end) -> owners(design, groups, row, first, end));
        int[] owner = parts.get(0);
        for (int[] part : parts) {
            for (int j = 0; j < owner.length; j++) {
                owner[j] = part[j] == UNSEEN ? owner[j] : owner[j] == UNSEEN ? part[j] : owner[j] == part[j] ? owner[j] : SHARED;
            }
        }
        for (int f = 0; f < design.folding().size(); f++) {
            owner[design.folding().column(f)] = SHARED;
        }
        for (PriorBlock block : priors) {
            int from = block.from();
            // The steps of a walk hold its coefficients together.
            if (block.walks() && IntStream.range(from, from + block.count()).anyMatch(j -> owner[j] != owner[from])) {
                Arrays.fill(owner, from, from + block.count(), SHARED);
            }
        }
        if (Arrays.stream(owner).filter(o -> o == UNSEEN).count() > FEW_UNSEEN) {
            for (PriorBlock block : priors) {
                for (int j = block.from(); j < block.from() + block.count(); j++) {
                    // No row ties it to another column, only the steps of its walk do: a block of its own, named by a column.
                    owner[j] = owner[j] == UNSEEN ? block.walks() ? block.from() : j : owner[j];
                }
            }
        }
        return owner;
    }

    private static int[] owners(Design design, int[] groups, IntUnaryOperator row, int first, int end) {
        int[] owner = new int[groups.length];
        Arrays.fill(owner, UNSEEN);
        int[] column = new int[groups.length];
        double[] number = new double[groups.length];
        for (int r = first; r < end; r++) {
            int held = design.writeKept(row.applyAsInt(r), column, number);
            int group = UNSEEN;
            for (int e = 0; e < held; e++) {
                int own = groups[column[e]];
                group = own < 0 ? group : group == UNSEEN ? own : SHARED;
            }
            group = group == UNSEEN ? SHARED : group;
            for (int e = 0; e < held; e++) {
                int before = owner[column[e]];
                owner[column[e]] = before == UNSEEN || before == group ? group : SHARED;
            }
        }
        return owner;
    }

    /** About how many steps work on a matrix takes. */
    private static double steps(int[] owner) {
        int[] size = sizes(owner);
        int shared = owner.length - Arrays.stream(size).sum();
        return Math.pow(shared, 3) + Arrays.stream(size).mapToDouble(m -> m * Math.pow(m + shared, 2)).sum();
    }

    private static int[] sizes(int[] owner) {
        int[] size = new int[owner.length];
        for (int o : owner) {
            if (o >= 0) {
                size[o]++;
            }
        }
        return size;
    }

    private static Border of(int[] owner) {
        int p = owner.length;
        int[] shared = IntStream.range(0, p).filter(j -> owner[j] < 0).toArray();
        int[] size = sizes(owner);
        int[][] block = new int[p][];
        for (int g = 0; g < p; g++) {
            block[g] = new int[size[g]];
        }
        int[] at = new int[p];
        for (int j = 0; j < p; j++) {
            if (owner[j] >= 0) {
                block[owner[j]][at[owner[j]]++] = j;
            }
        }
        return new Border(p, shared, Arrays.stream(block).filter(b -> b.length > 0).toArray(int[][]::new));
    }

    int columns() {
        return p;
    }

    /** Whether the matrix is held in full. */
    boolean isNone() {
        return block.length == 0;
    }

    /** How many numbers are held. */
    long size() {
        return size;
    }

    /** As many zeros as numbers are held. */
    double[] zeros() {
        return new double[Math.toIntExact(size)];
    }

    /** The columns that border all blocks, in order. */
    int[] shared() {
        return shared;
    }

    int blocks() {
        return block.length;
    }

    /** The columns of a block, in order. */
    int[] block(int number) {
        return block[number];
    }

    /** The number of the block of a column; below 0 where it is shared. */
    int blockOf(int column) {
        return blockOf[column];
    }

    int base(int column) {
        return base[column];
    }

    int place(int column) {
        return place[column];
    }

    /** For each column its place; not to be changed. */
    int[] places() {
        return place;
    }

    /**
     * Where a row that is held in full, its entries behind the diagonal included, has each column that it may have: that of a block has the
     * bordering columns and then its block, a bordering one those and then all blocks. Not to be changed.
     */
    int[] slots(int column) {
        return place[column] < shared.length ? slot : place;
    }

    /** The columns of such a row in the order of their slots. */
    int[] inFull(int column) {
        int own = blockOf[column];
        int[] columns = Arrays.copyOf(shared, own < 0 ? p : shared.length + block[own].length);
        int at = shared.length;
        for (int b = own < 0 ? 0 : own; b < (own < 0 ? block.length : own + 1); b++) {
            System.arraycopy(block[b], 0, columns, at, block[b].length);
            at += block[b].length;
        }
        return columns;
    }

    /** For each column where its row begins; not to be changed. */
    int[] bases() {
        return base;
    }

    /** Where the entry of two columns is held, which are not of two blocks. */
    int at(int a, int b) {
        return place[b] <= place[a] ? base[a] + place[b] : base[b] + place[a];
    }

    /** The columns whose entries with one are held in its row: those of no later place. */
    IntStream row(int column) {
        int own = blockOf[column];
        int s = shared.length;
        return IntStream.rangeClosed(0, place[column]).map(k -> k < s ? shared[k] : block[own][k - s]);
    }

    /** Whether no two entries of two rows are of two blocks. */
    boolean holds(SparseRow x, SparseRow y) {
        if (isNone()) {
            return true;
        }
        int own = reached(x);
        int other = x == y ? own : reached(y);
        return own != SEVERAL && other != SEVERAL && (own == SHARED || other == SHARED || own == other);
    }

    /** The block that a row reaches into. */
    private int reached(SparseRow x) {
        int reached = SHARED;
        for (int e = 0; e < x.size(); e++) {
            int of = blockOf[x.index(e)];
            if (of != SHARED && of != reached) {
                if (reached != SHARED) {
                    return SEVERAL;
                }
                reached = of;
            }
        }
        return reached;
    }

    /** The entries that a design keeps of one row after another, in the order of their places: shared ones first. */
    final class Entries {
        final int[] column;
        final int[] place;
        final double[] number;
        int size;
        private final int[] own;
        private final double[] ownNumber;

        /** Room for rows of at most so many entries. */
        Entries(int most) {
            this.column = new int[most];
            this.place = isNone() ? column : new int[most];
            this.number = new double[most];
            this.own = new int[isNone() ? 0 : most];
            this.ownNumber = new double[own.length];
        }

        /** Those of a row. */
        void take(Design design, int row) {
            size = design.writeKept(row, column, number);
            if (!isNone()) {
                arrange(shared.length, places());
            }
        }

        private void arrange(int s, int[] places) {
            int first = 0;
            int behind = 0;
            for (int e = 0; e < size; e++) {
                int at = places[column[e]];
                if (at < s) {
                    place[first] = at;
                    column[first] = column[e];
                    number[first++] = number[e];
                } else {
                    own[behind] = column[e];
                    ownNumber[behind++] = number[e];
                }
            }
            for (int e = 0; e < behind; e++) {
                place[first] = places[own[e]];
                column[first] = own[e];
                number[first++] = ownNumber[e];
            }
        }
    }
}
