package swapworth.statistics;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which coefficients the rows of a design can tell apart, whatever is assumed of them: the rank of the design on columns scaled to unit
 * length, and for each column that depends on others the direction in which coefficients may move without any fitted value moving.
 *
 * <p>Columns are taken one after another, always the one farthest from those taken before. One that lies nearer to them than
 * {@value #CONFOUNDED} is confounded with them, one nearer than {@value #NEARLY} nearly so. Designs of up to {@value #MOST_ENTRIES}
 * entries are orthogonalised column by column (Gram and Schmidt, twice); larger ones go by their cross-products, which lose half of
 * the digits: there a column nearer than 3e-7 counts as confounded.
 *
 * <p>Sources: G. Golub, Numer. Math. 7 (1965) 206-216 for choosing columns; L. Giraud, J. Langou, M. Rozloznik, Comput. Math. Appl. 50
 * (2005) 1069-1075 for doing it twice (both from memory).
 */
public final class Identification {
    /** Below this distance from other unit columns a unit column is confounded with them. */
    static final double CONFOUNDED = 1e-10;
    /** Below this distance it is nearly confounded. */
    static final double NEARLY = 1e-5;
    private static final int MOST_ENTRIES = 1_000_000;
    /** Of a cross-product matrix with ones on its diagonal, no smaller pivot can be told from 0. */
    private static final double ROUNDED_PIVOT = 1e-13;
    /** A column whose part in a direction is smaller takes no part in it. */
    private static final double NO_PART = 1e-6;

    private final int rank;
    private final List<Integer> unseen;
    private final List<Dependence> dependences;

    private Identification(int rank, List<Integer> unseen, List<Dependence> dependences) {
        this.rank = rank;
        this.unseen = List.copyOf(unseen);
        this.dependences = List.copyOf(dependences);
    }

    /** How far a column depends on others. */
    public enum Degree {
        /** Altogether: the rows say nothing of the direction. */
        CONFOUNDED,
        /** But for less than a hundred-thousandth of its length: the rows say next to nothing of the direction. */
        NEARLY_CONFOUNDED
    }

    /**
     * Columns of which one is a weighted sum of the others.
     *
     * @param degree altogether or nearly
     * @param direction the coefficients may move along it and no fitted value moves, or hardly; its entries are the columns that take part
     * @param distance how far the dependent column, scaled to unit length, lies from the others
     */
    public record Dependence(Degree degree, SparseRow direction, double distance) {
        /** Checks that nothing is missing. */
        public Dependence {
            requireNonNull(degree, "degree");
            requireNonNull(direction, "direction");
        }
    }

    /**
     * What the rows of a design can tell apart.
     *
     * @param design n x p
     * @return its rank and its dependences
     */
    public static Identification of(Design design) {
        int p = design.columns();
        double[] length = design.lengths();
        List<Integer> seen = new ArrayList<>();
        List<Integer> unseen = new ArrayList<>();
        for (int j = 0; j < p; j++) {
            (length[j] > 0 ? seen : unseen).add(j);
        }
        int[] columns = seen.stream().mapToInt(Integer::intValue).toArray();
        boolean small = (long) design.rows() * columns.length <= MOST_ENTRIES;
        Triangle triangle = small ? orthogonalised(design, columns, length) : ofCrossProducts(design, columns, length);
        List<Dependence> dependences = new ArrayList<>();
        for (int k = 0; k < columns.length; k++) {
            double distance = k < triangle.rank ? triangle.rows[k][triangle.order[k]] : 0;
            if (distance < NEARLY) {
                dependences.add(dependence(triangle, k, distance, columns, length));
            }
        }
        return new Identification(triangle.rank, unseen, dependences);
    }

    /** The triangle R of the chosen columns: row k holds the parts of all columns along the k-th direction. */
    private record Triangle(double[][] rows, int[] order, int rank) {
    }

    private static Triangle orthogonalised(Design design, int[] columns, double[] length) {
        int q = columns.length;
        double[][] a = design.transposed(columns, length);
        double[][] r = new double[q][q];
        int[] order = identity(q);
        for (int k = 0; k < q; k++) {
            int farthest = farthest(a, order, k);
            double[] unit = a[order[farthest]];
            double distance = Math.sqrt(dot(unit, unit));
            if (!(distance > CONFOUNDED)) {
                return new Triangle(r, order, k);
            }
            moveTo(order, farthest, k);
            r[k][order[k]] = distance;
            for (int i = 0; i < unit.length; i++) {
                unit[i] /= distance;
            }
            for (int c = k + 1; c < q; c++) {
                // Twice, for what rounding leaves of the first time.
                r[k][order[c]] += takenOff(unit, a[order[c]]);
                r[k][order[c]] += takenOff(unit, a[order[c]]);
            }
        }
        return new Triangle(r, order, q);
    }

    /** From place k on, the place of the longest column; of those as good as equal the first. */
    private static int farthest(double[][] a, int[] order, int k) {
        int best = k;
        double farthest = -1;
        for (int c = k; c < order.length; c++) {
            double norm = Math.sqrt(dot(a[order[c]], a[order[c]]));
            if (norm > farthest * (1 + 1e-9)) {
                farthest = norm;
                best = c;
            }
        }
        return best;
    }

    /** Takes the part along a unit column off another one; how long it was. */
    private static double takenOff(double[] unit, double[] other) {
        double part = dot(unit, other);
        for (int i = 0; i < other.length; i++) {
            other[i] -= part * unit[i];
        }
        return part;
    }

    private static Triangle ofCrossProducts(Design design, int[] columns, double[] length) {
        int q = columns.length;
        int p = design.columns();
        double[] ones = new double[design.rows()];
        Arrays.fill(ones, 1);
        double[] lower = new double[p * p];
        design.with(Border.none(p)).addCrossProducts(lower, ones);
        double[][] left = new double[q][q];
        for (int c = 0; c < q; c++) {
            for (int d = 0; d <= c; d++) {
                left[c][d] = lower[columns[c] * p + columns[d]] / (length[columns[c]] * length[columns[d]]);
                left[d][c] = left[c][d];
            }
        }
        double[][] r = new double[q][q];
        int[] order = identity(q);
        for (int k = 0; k < q; k++) {
            int best = k;
            for (int c = k + 1; c < q; c++) {
                best = left[order[c]][order[c]] > left[order[best]][order[best]] * (1 + 1e-9) ? c : best;
            }
            double pivot = left[order[best]][order[best]];
            if (!(pivot > ROUNDED_PIVOT)) {
                return new Triangle(r, order, k);
            }
            moveTo(order, best, k);
            double root = Math.sqrt(pivot);
            for (int c = k; c < q; c++) {
                r[k][order[c]] = left[order[k]][order[c]] / root;
            }
            // Most words of two facts, and any two of one, never meet.
            double[] part = r[k];
            int[] meets = Arrays.stream(order, k + 1, q).filter(c -> part[c] != 0).toArray();
            for (int c : meets) {
                for (int d : meets) {
                    left[c][d] -= part[c] * part[d];
                }
            }
        }
        return new Triangle(r, order, q);
    }

    /** The direction along which the k-th chosen column is traded for those chosen before it. */
    private static Dependence dependence(Triangle t, int k, double distance, int[] columns, double[] length) {
        int column = t.order[k];
        int before = Math.min(k, t.rank);
        double[] part = new double[before];
        for (int i = before - 1; i >= 0; i--) {
            double sum = t.rows[i][column];
            for (int j = i + 1; j < before; j++) {
                sum -= t.rows[i][t.order[j]] * part[j];
            }
            part[i] = sum / t.rows[i][t.order[i]];
        }
        double[] direction = new double[length.length];
        direction[columns[column]] = 1 / length[columns[column]];
        for (int i = 0; i < before; i++) {
            int other = columns[t.order[i]];
            direction[other] = Math.abs(part[i]) > NO_PART ? -part[i] / length[other] : 0;
        }
        return new Dependence(k >= t.rank ? Degree.CONFOUNDED : Degree.NEARLY_CONFOUNDED, SparseRow.dense(direction), distance);
    }

    private static int[] identity(int q) {
        int[] order = new int[q];
        for (int c = 0; c < q; c++) {
            order[c] = c;
        }
        return order;
    }

    /** Moves an entry forward, the others keeping their order. */
    private static void moveTo(int[] order, int from, int to) {
        int moved = order[from];
        System.arraycopy(order, to, order, to + 1, from - to);
        order[to] = moved;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /**
     * How many coefficients the rows can tell apart.
     *
     * @return at least 0, at most the number of columns and of rows
     */
    public int rank() {
        return rank;
    }

    /**
     * The columns in which no row has anything but 0.
     *
     * @return columns, from 0
     */
    public List<Integer> unseen() {
        return unseen;
    }

    /**
     * The columns that depend on others, each with them; columns in which no row has anything but 0 are not among them.
     *
     * @return the nearly confounded ones first; empty where the rows tell every coefficient apart
     */
    public List<Dependence> dependences() {
        return dependences;
    }
}
