package swapworth.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Writes a large file of invented listings, to measure speed with: as many lines as wished, three trims each, some of the cars seen
 * a second time at another price, one row in a hundred dirty (no price, junk for a number), notes with commas in quotes.
 */
public final class WriteManyListings {
    private static final String[] HEAD = {"Bra", "Cor", "Dul", "Fen", "Gal", "Hes", "Jor", "Kel", "Lor", "Mur"};
    private static final String[] TAIL = {"vane", "quist", "ombe", "ridge", "astel", "under", "ey", "ossic"};
    private static final String[] TRIMS = {"Plain", "Fitted", "Full"};
    private static final String[] REGIONS = {"Eastmarl", "Ossreach", "Norrowfen", "Saltwick Vale", "Upper Dell", "Highcomb",
        "Tarn Side", "Wold End"};
    private static final String[] NOTES = {"", "", "\"one owner, new tyres\"", "\"dent, left door; phoned, no answer\"",
            "quick sale wanted",
        "\"says \"\"as new\"\", was not\""};
    private static final LocalDate FIRST_DAY = LocalDate.of(2024, 1, 3);

    private final SplittableRandom random;
    private final List<String> lines = new ArrayList<>();
    private final double[] level;
    private final double[] ageSlope;

    private WriteManyListings(int lineCount, long seed) {
        random = new SplittableRandom(seed);
        level = new double[lineCount];
        ageSlope = new double[lineCount];
        for (int i = 0; i < lineCount; i++) {
            int maker = i % HEAD.length;
            int model = i / HEAD.length;
            lines.add(HEAD[maker] + TAIL[model % TAIL.length] + (model < TAIL.length ? "" : " " + (1 + model / TAIL.length)));
            level[i] = Math.log(28_000) + 0.35 * gaussian();
            ageSlope[i] = -0.085 + 0.015 * gaussian();
        }
    }

    /**
     * Writes the file.
     *
     * @param arguments rows, lines, seed, file
     * @throws IOException if it cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        int rows = Integer.parseInt(arguments[0]);
        WriteManyListings writing = new WriteManyListings(Integer.parseInt(arguments[1]), Long.parseLong(arguments[2]));
        try (BufferedWriter out = Files.newBufferedWriter(Path.of(arguments[3]))) {
            writing.write(rows, out);
        }
    }

    private void write(int rows, BufferedWriter out) throws IOException {
        out.write("id,seen_on,vehicle,trim,model_year,mileage_mi,price_usd,price_kind,seller,region,title,rust,interior,note\n");
        int written = 0;
        for (int car = 1; written < rows; car++) {
            int line = random.nextInt(lines.size());
            int trim = random.nextInt(TRIMS.length);
            int day = random.nextInt(700);
            int year = 2008 + random.nextInt(16);
            double age = Math.max(0, FIRST_DAY.plusDays(day).toEpochDay() - LocalDate.of(year, 7, 1).toEpochDay()) / 365.25;
            long miles = Math.round((age + 0.5) * 11_000 * Math.exp(0.35 * gaussian()));
            boolean trade = random.nextInt(3) == 0;
            boolean sold = random.nextInt(6) == 0;
            int title = random.nextInt(25);
            int rust = random.nextInt(4);
            int interior = random.nextInt(4);
            double log = level[line] + 0.08 * trim + ageSlope[line] * age - 0.004 * (miles - 80_000) / 1000 - 0.005 * day / 30
                    + (trade ? 0.07 : 0) - (sold ? 0.06 : 0) - (title == 0 ? 0.4 : title == 1 ? 0.2 : 0) - 0.03 * (rust % 3)
                    - 0.02 * (interior % 3) + 0.12 * gaussian() / Math.sqrt(0.4 + 0.6 * random.nextDouble());
            String facts = "," + (trade ? "trade" : "private") + "," + REGIONS[random.nextInt(REGIONS.length)] + ","
                    + (title == 0 ? "salvage" : title == 1 ? "rebuilt" : title < 6 ? "" : "clean") + "," + condition(rust) + ","
                    + condition(interior) + "," + NOTES[random.nextInt(NOTES.length)] + "\n";
            String start = lines.get(line) + "," + TRIMS[trim] + "," + year + ",";
            long price = Math.round(Math.exp(log) / 50) * 50;
            int sightings = random.nextInt(8) == 0 && written + 1 < rows ? 2 : 1;
            for (int s = 0; s < sightings; s++) {
                out.write("c" + car + "," + FIRST_DAY.plusDays(day + 14L * s) + "," + start + dirty(miles, 400) + ","
                        + (random.nextInt(200) == 0 ? random.nextBoolean() ? "" : "call" : Long.toString(price - 250L * s)) + ","
                        + (sold ? "sold" : "asking") + facts);
                written++;
            }
        }
    }

    private String dirty(long number, int oneIn) {
        if (random.nextInt(oneIn) > 0) {
            return Long.toString(number);
        }
        return switch (random.nextInt(3)) {
            case 0 -> "";
            case 1 -> "lots";
            default -> "\"" + String.format(Locale.ROOT, "%,d", number) + "\"";
        };
    }

    private static String condition(int number) {
        return switch (number) {
            case 0 -> "sound";
            case 1 -> "worn";
            case 2 -> "bad";
            default -> "";
        };
    }

    private double gaussian() {
        double sum = -6;
        for (int i = 0; i < 12; i++) {
            sum += random.nextDouble();
        }
        return sum;
    }
}
