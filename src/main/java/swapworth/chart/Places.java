package swapworth.chart;

import java.util.Arrays;

/** Growing lists of places, with the pen lifted between some. */
final class Places {

    /** Half the thickness of a bar, where rows are 1 apart. */
    static final double HALF_BAR = 0.32;

    private double[] x = new double[64];
    private double[] y = new double[64];
    private int size;

    int size() {
        return size;
    }

    double[] x() {
        return Arrays.copyOf(x, size);
    }

    double[] y() {
        return Arrays.copyOf(y, size);
    }

    void add(double placeX, double placeY) {
        if (size == x.length) {
            x = Arrays.copyOf(x, 2 * size);
            y = Arrays.copyOf(y, 2 * size);
        }
        x[size] = placeX;
        y[size++] = placeY;
    }

    /** Lifts the pen, if it is down. */
    void lift() {
        if (size > 0) {
            add(x[size - 1], Double.NaN);
        }
    }

    /** A stroke with the pen lifted after it; none if an end is not known. */
    void stroke(double fromX, double fromY, double toX, double toY) {
        if (!Double.isNaN(fromX + fromY + toX + toY)) {
            add(fromX, fromY);
            add(toX, toY);
            lift();
        }
    }

    /** A closed box that stands on zero. */
    void box(double from, double to, double height) {
        add(from, 0);
        add(from, height);
        add(to, height);
        add(to, 0);
        lift();
    }

    /** A closed bar that lies along its row, as thick as the bars of all charts of rows. */
    void bar(double from, double to, double row) {
        add(from, row - HALF_BAR);
        add(from, row + HALF_BAR);
        add(to, row + HALF_BAR);
        add(to, row - HALF_BAR);
        lift();
    }

    /** The places of another list, last first. */
    void addBackward(Places other) {
        for (int i = other.size - 1; i >= 0; i--) {
            add(other.x[i], other.y[i]);
        }
    }
}
