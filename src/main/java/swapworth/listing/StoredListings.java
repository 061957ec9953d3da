package swapworth.listing;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** Some or all rows of columns, as listings. */
final class StoredListings extends KeptList<Listing> {
    private final ListingColumns columns;
    private final int[] rows;
    private final int size;

    private StoredListings(ListingColumns columns, int[] rows, int size) {
        this.columns = columns;
        this.rows = rows;
        this.size = size;
    }

    /** The rows of some columns, but for those that are left out, in ascending order. */
    static StoredListings without(int[] leftOut, ListingColumns columns) {
        int[] rows = new int[leftOut.length == 0 ? 0 : columns.size() - leftOut.length];
        int out = 0;
        for (int row = 0, at = 0; at < rows.length; row++) {
            if (out < leftOut.length && leftOut[out] == row) {
                out++;
            } else {
                rows[at++] = row;
            }
        }
        return new StoredListings(columns, rows, columns.size() - leftOut.length);
    }

    /** The same listings as columns. */
    static StoredListings of(List<Listing> listings) {
        if (listings instanceof StoredListings stored) {
            return stored;
        }
        ListingColumns columns = new ListingColumns();
        listings.forEach(columns::add);
        return new StoredListings(columns, new int[0], columns.size());
    }

    ListingColumns columns() {
        return columns;
    }

    /** The row of the columns that holds a listing. */
    int row(int place) {
        return rows.length == 0 ? place : rows[place];
    }

    /** The rows, in order. */
    int[] rows() {
        int[] all = Arrays.copyOf(rows, size);
        if (rows.length == 0) {
            Arrays.setAll(all, i -> i);
        }
        return all;
    }

    @Override
    public Listing get(int place) {
        return columns.listing(row(Objects.checkIndex(place, size)));
    }

    Sighting sighting(int place) {
        return columns.sighting(row(Objects.checkIndex(place, size)));
    }

    @Override
    public int size() {
        return size;
    }
}
