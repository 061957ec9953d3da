package swapworth.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;

/**
 * One draw: so many cars of a line to learn from, and up to 200 others of it to predict. The same seed, line, size and number
 * give the same draw whatever else is drawn.
 *
 * @param line the line
 * @param size cars to learn from
 * @param training those cars
 * @param leftOut the cars to predict
 * @param random what further chance of this draw comes from
 */
record TrainingSet(String line, int size, List<BenchCar> training, List<BenchCar> leftOut, Random random) {
    private static final int MOST_LEFT_OUT = 200;

    static TrainingSet draw(List<BenchCar> ofLine, int size, int number, long seed) {
        String line = ofLine.get(0).car().facts().vehicle();
        Random random = new Random(Objects.hash(seed, line, size, number));
        List<BenchCar> mixed = new ArrayList<>(ofLine);
        Collections.shuffle(mixed, random);
        return new TrainingSet(line, size, List.copyOf(mixed.subList(0, size)),
                List.copyOf(mixed.subList(size, Math.min(mixed.size(), size + MOST_LEFT_OUT))), random);
    }

    /**
     * The same draw with gross errors in a share of its training rows, at least one: in turn kilometres taken for miles, a digit
     * of the price missing, and the row standing there twice under another id and an earlier day. The left-out cars stay clean.
     */
    TrainingSet withGrossErrors(double share) {
        List<BenchCar> dirty = new ArrayList<>(training);
        int errors = (int) Math.max(1, Math.round(share * size));
        int turn = random.nextInt(3);
        for (int i = 0; i < errors; i++) {
            BenchCar car = training.get(i);
            switch ((i + turn) % 3) {
                case 0 -> dirty.set(i, car.withKilometresForMiles());
                case 1 -> dirty.set(i, car.withADigitMissing());
                default -> dirty.add(car.again(3 + random.nextInt(60)));
            }
        }
        return new TrainingSet(line, size, List.copyOf(dirty), leftOut, random);
    }
}
