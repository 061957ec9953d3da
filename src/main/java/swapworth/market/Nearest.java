package swapworth.market;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Keeps the few rows of smallest distance among many, one row a car, without sorting them all. */
final class Nearest {
    private final int[] row;
    private final int[] car;
    private final double[] distance;
    private int size;

    Nearest(int most) {
        row = new int[most];
        car = new int[most];
        distance = new double[most];
        Arrays.fill(distance, Double.POSITIVE_INFINITY);
    }

    /** Takes a row if it is nearer than one kept; of equals the earlier stays. */
    void offer(int newRow, int newCar, double newDistance) {
        if (newDistance >= distance[distance.length - 1]) {
            return;
        }
        int at = 0;
        while (at < size && car[at] != newCar) {
            at++;
        }
        if (at < size && distance[at] <= newDistance) {
            return;
        }
        // The place of the same car, a free place, or the furthest, then moved forward to where it belongs.
        int place = at < size ? at : size < row.length ? size++ : size - 1;
        while (place > 0 && distance[place - 1] > newDistance) {
            row[place] = row[place - 1];
            car[place] = car[place - 1];
            distance[place] = distance[place - 1];
            place--;
        }
        row[place] = newRow;
        car[place] = newCar;
        distance[place] = newDistance;
    }

    /** The rows kept, the nearest first. */
    List<Integer> rows() {
        List<Integer> rows = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            rows.add(row[i]);
        }
        return rows;
    }
}
