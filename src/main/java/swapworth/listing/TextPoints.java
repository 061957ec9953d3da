package swapworth.listing;

/**
 * How many points it earns two rows that they have the same text: the fewer, the more other cars have it. What sellers write of many cars,
 * such as a full service book, says little; a whole advertisement of two hundred letters says that it is the same one.
 */
final class TextPoints {
    static final double SAME_LONG_TEXT = 10;
    static final double SAME_SHORT_TEXT = 2;
    static final int LONG_TEXT = 25;
    /** Among a handful of rows one other car with the text says little of how many have it: so many without it are taken to be there. */
    private static final double WITHOUT_IT = 20;

    /** By the number of a text that rows share. */
    private final double[] points;
    private final boolean[] ofOneCar;

    /**
     * The points of the texts of one column.
     *
     * @param all the advertisements of all lines, line by line
     * @param numbers the number of the text of each
     */
    TextPoints(Advertisements all, Texts texts, int[] numbers) {
        Cars cars = new Cars(texts.count());
        for (int i = 0; i < numbers.length; i++) {
            if (numbers[i] > 0) {
                cars.add(numbers[i], all.columns.vehicle.code(all.firstRow(i)), all.modelYear[i], all.yearRegistered[i]);
            }
        }
        points = new double[texts.count()];
        ofOneCar = new boolean[texts.count()];
        for (int number = 1; number < points.length; number++) {
            int others = cars.count(number) - 1;
            ofOneCar[number] = others < 1;
            double most = most(texts.shared(number));
            points[number] = others < 1 ? most : Rarities.rarity(others / (numbers.length + WITHOUT_IT), most);
        }
    }

    private static double most(String text) {
        return text.isEmpty() ? 0 : text.length() >= LONG_TEXT ? SAME_LONG_TEXT : SAME_SHORT_TEXT;
    }

    /** The points of two rows that have the text of a number. */
    double of(int number) {
        return points[number];
    }

    /** Whether all that have the text of a number may be one car. */
    boolean isOfOneCar(int number) {
        return ofOneCar[number];
    }

    /** The points of two rows whose texts are their own: none where they differ, or are empty. */
    static double ofOwn(Texts texts, int row, int other) {
        return texts.same(row, other) ? most(texts.get(row).orElse("")) : 0;
    }

    /**
     * How many cars have a text, for sure: rows of one line and model year are counted once, for they may all be one car. A year of
     * registration may be that of a car whose model year is told elsewhere.
     */
    private static final class Cars {
        private final int[] counts;
        private final int[] line;
        /** The years of the line that is gone through, each a bit; of a hundred years one bit stands for two at most. */
        private final long[] modelYears;
        private final long[] registered;

        Cars(int texts) {
            counts = new int[texts];
            line = new int[texts];
            modelYears = new long[texts];
            registered = new long[texts];
        }

        void add(int text, int itsLine, int modelYear, int yearRegistered) {
            if (line[text] != itsLine) {
                counts[text] = count(text);
                line[text] = itsLine;
                modelYears[text] = 0;
                registered[text] = 0;
            }
            modelYears[text] |= modelYear == 0 ? 0 : bit(modelYear);
            registered[text] |= modelYear != 0 || yearRegistered == 0 ? 0 : bit(yearRegistered);
        }

        private static long bit(int year) {
            return 1L << (year & Long.SIZE - 1);
        }

        int count(int text) {
            long near = modelYears[text] | Long.rotateLeft(modelYears[text], 1) | Long.rotateRight(modelYears[text], 1);
            int years = Long.bitCount(modelYears[text]) + Long.bitCount(registered[text] & ~near);
            return counts[text] + (line[text] == 0 ? 0 : Math.max(1, years));
        }
    }
}
