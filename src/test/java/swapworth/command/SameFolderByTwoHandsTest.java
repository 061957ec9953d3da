package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One undertaking written down by two people: by one with semicolons, decimal commas, groups of digits, days first, kilometres, pounds
 * beside euros and words and headers of another language; by the other with points, ISO dates, miles, English words and euros alone.
 */
class SameFolderByTwoHandsTest {
    private static final double KM_A_MILE = 1.609344;
    private static final LocalDate LAST = LocalDate.of(2026, 11, 12);
    /** Coins of a cent and ten-thousandths of a mile are all that the two hands may differ by. */
    private static final double NEAR = 2e-6;

    @TempDir
    static Path folders;

    private static Path continental;
    private static Path plain;

    private record Km(double km) {
    }

    private record Euros(double amount) {
    }

    private record Pounds(double amount, LocalDate on) {
        double euros() {
            return amount * rate(on);
        }
    }

    /** A number with a decimal mark. */
    private record Decimal(double number) {
    }

    /** A word of a column. */
    private record Word(String column, String english) {
    }

    /** A header in each hand. */
    private record Header(String own, String ours) {
    }

    private static final Map<String, String> OTHER_LANGUAGE = new TreeMap<>(Map.ofEntries(Map.entry("private", "privat"),
            Map.entry("trade", "H\u00e4ndler"), Map.entry("auction", "Auktion"), Map.entry("asking", "Angebot"),
            Map.entry("sold", "verkauft"), Map.entry("drives", "fahrbereit"), Map.entry("not tried", "nicht probiert"),
            Map.entry("clean", "sauber"),
            Map.entry("salvage", "Unfall"), Map.entry("front", "vorne"), Map.entry("none", "keiner"), Map.entry("donor", "Spender"),
            Map.entry("recipient", "Empf\u00e4nger"), Map.entry("finished", "fertig"), Map.entry("factory equivalent", "ab Werk"),
            Map.entry("non-runner", "f\u00e4hrt nicht"), Map.entry("swap", "Umbau"), Map.entry("sell", "verkaufen"),
            Map.entry("engine", "Motor"),
            Map.entry("yes", "ja"), Map.entry("no", "nein"), Map.entry("purchase", "Kauf"), Map.entry("freight", "Fracht"),
            Map.entry("part sold", "Teil verkauft"), Map.entry("labour", "Fremdarbeit"), Map.entry("estimate", "gesch\u00e4tzt"),
            Map.entry("owner", "selbst"), Map.entry("project", "Projekt")));

    /** Pounds rise by half a per cent each month. */
    private static double rate(LocalDate day) {
        return 1.15 + 0.005 * (day.getMonthValue() - 1);
    }

    private enum Hand {
        CONTINENTAL, PLAIN;

        String cell(Object value, int row) {
            boolean own = this == CONTINENTAL;
            if (value instanceof LocalDate day) {
                return own ? day.getDayOfMonth() + "." + day.getMonthValue() + "." + day.getYear() : day.toString();
            } else if (value instanceof Km distance) {
                return own ? grouped(distance.km, row) + List.of("", " km", "").get(row % 3)
                        : String.format(Locale.ROOT, "%.4f", distance.km / KM_A_MILE);
            } else if (value instanceof Euros money) {
                return own ? List.of("%s", "%s \u20ac", "EUR %s", "%s EUR VB", "VB %s").get(row % 5).formatted(grouped(money.amount, row))
                        : String.format(Locale.ROOT, "%.2f", money.amount);
            } else if (value instanceof Pounds money) {
                return own ? "\u00a3" + grouped(money.amount, row) : String.format(Locale.ROOT, "%.4f", money.euros());
            } else if (value instanceof Decimal number) {
                String text = BigDecimal.valueOf(number.number).toPlainString();
                return own ? text.replace('.', ',') : text;
            } else if (value instanceof Word word) {
                return Arrays.stream(word.english.split("; ")).map(w -> own ? OTHER_LANGUAGE.getOrDefault(w, w) : w)
                        .collect(Collectors.joining("; "));
            } else if (value instanceof Header header) {
                return own ? header.own : header.ours;
            }
            return value.toString();
        }

        /** A number as several people of one office write it. */
        private static String grouped(double amount, int row) {
            String mark = List.of(".", "", "\u202f", " ", "'").get(row % 5);
            BigDecimal cents = BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_UP);
            String whole = cents.toBigInteger().toString().replaceAll("(?<=\\d)(?=(\\d{3})+$)", mark);
            String rest = cents.remainder(BigDecimal.ONE).movePointRight(2).abs().toBigInteger().toString();
            return rest.equals("0") ? whole : cents.toBigInteger() + "," + (rest.length() < 2 ? "0" : "") + rest;
        }

        void write(Path folder, String file, List<Object[]> rows) throws IOException {
            boolean own = this == CONTINENTAL;
            StringBuilder text = new StringBuilder(own ? "\ufeff" : "");
            for (int i = 0; i < rows.size(); i++) {
                int row = i;
                text.append(Arrays.stream(rows.get(i)).map(value -> quoted(cell(value, row))).collect(Collectors.joining(own ? ";" : ",")))
                        .append(own ? ";;\r\n" : "\n");
            }
            Files.writeString(folder.resolve(file), text + (own ? ";;;\r\n" : ""));
        }

        private static String quoted(String cell) {
            return cell.matches("(?s).*[;,\"\n].*") ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell;
        }
    }

    private static Object[] row(Object... cells) {
        return cells;
    }

    private static Word word(String column, String english) {
        return new Word(column, english);
    }

    private static Header header(String own, String ours) {
        return new Header(own, ours);
    }

    @BeforeAll
    static void twoFolders() throws IOException {
        continental = Files.createDirectory(folders.resolve("continental"));
        plain = Files.createDirectory(folders.resolve("plain"));
        for (Map.Entry<String, List<Object[]>> file : files().entrySet()) {
            Hand.CONTINENTAL.write(continental, file.getKey(), file.getValue());
            Hand.PLAIN.write(plain, file.getKey(), file.getValue());
        }
        List<String> words = new ArrayList<>(List.of("column;word;means", "*;decimal mark;comma", "*;date order;day first",
                "*;mileage unit;km", "*;currency;EUR"));
        files().values().forEach(rows -> Arrays.stream(rows.get(0)).filter(Header.class::isInstance).map(Header.class::cast)
                .filter(h -> !h.own.equals(h.ours)).forEach(h -> words.add("header;" + h.own + ";" + h.ours)));
        files().values().forEach(rows -> rows.forEach(cells -> Arrays.stream(cells).filter(Word.class::isInstance).map(Word.class::cast)
                .forEach(w -> Arrays.stream(w.english.split("; ")).filter(OTHER_LANGUAGE::containsKey)
                        .forEach(one -> words.add(w.column + ";" + OTHER_LANGUAGE.get(one) + ";" + one)))));
        Files.write(continental.resolve("words.csv"), words.stream().distinct().toList());
        Files.write(plain.resolve("words.csv"), List.of("column,word,means", "*,decimal mark,point", "*,mileage unit,mi",
                "*,currency,EUR"));
    }

    private static Map<String, List<Object[]>> files() {
        Map<String, List<Object[]>> files = new TreeMap<>();
        files.put("listings.csv", listings());
        files.put("lines.csv", List.of(row(header("Modell", "vehicle"), "body", "running_gear", "power_kw", "weight_kg"),
                row("Halvenne", "open", "four", 92, 1080), row("Torvik", "saloon", "six", 172, 1480),
                row("Halvenne Sechs", "open", "six", 172, 1240)));
        List<Object[]> rates = new ArrayList<>();
        rates.add(row("date", "from", "to", "rate"));
        for (int month = 1; month <= 11; month++) {
            LocalDate day = LocalDate.of(2026, month, 1);
            rates.add(row(day, "GBP", "EUR", new Decimal(Math.round(1000 * rate(day)) / 1000.0)));
        }
        rates.add(row(LocalDate.of(2026, 1, 1), "USD", "EUR", new Decimal(0.91)));
        files.put("rates.csv", rates);
        files.put("cars.csv", List.of(row("name", header("Rolle", "role"), header("Modell", "vehicle"), header("Baujahr", "model_year"),
                header("Laufleistung", "mileage"), "gear_mileage", header("Anbieter", "seller"), "distance_away", header("Zustand", "runs"),
                header("Schaden", "damage"), header("Titel", "title"), header("Preis", "price"), "planned_bid", "built_by", "gear_line",
                "recipient", "donor", "inspected", "work_value", "faults"),
                row("open car", word("role", "recipient"), "Halvenne", 2014, new Km(118_300), "", word("seller", "private"), new Km(41),
                        word("runs", "drives"), word("damage", "none"), word("title", "clean"), new Euros(6_850), "", "", "", "", "",
                        "", "",
                        ""),
                row("crashed", word("role", "donor"), "Torvik", 2016, new Km(96_400), "", word("seller", "auction"), new Km(187),
                        word("runs", "not tried"), word("damage", "front"), word("title", "salvage"), "", new Pounds(2_400, LAST), "",
                        "", "",
                        "", "", "", ""),
                row("whole six", word("role", "factory equivalent"), "Halvenne Sechs", 2016, new Km(88_000), "", word("seller",
                        "trade"), "",
                        word("runs", "drives"), word("damage", "none"), word("title", "clean"), new Euros(14_900), "", "", "", "", "",
                        "", "",
                        ""),
                row("swap", word("role", "finished"), "Halvenne", 2014, new Km(118_300), new Km(96_400), word("seller", "private"), "",
                        word("runs", "drives"), word("damage", "none"), word("title", "clean"), "", "", word("built_by", "owner"), "Torvik",
                        "open car", "crashed", word("inspected", "no"), new Euros(3_800), "dent")));
        files.put("fees.csv", List.of(row("table", "kind", "from", "to", "flat", "percent", "minimum", "per_day", "free_days", "days",
                "per_km", "applies_to", header("Anbieter", "seller"), "when"),
                row("premium", "fee", new Euros(1), new Euros(2_000), new Euros(259), "", "", "", "", "", "", "", word("seller", "auction"),
                        ""),
                row("premium", "fee", new Euros(2_000), "", "", new Decimal(9.5), new Euros(310), "", "", "", "", "bid",
                        word("seller", "auction"), ""),
                row("tax", "tax", "", "", "", 19, "", "", "", "", "", "bid; premium", word("seller", "auction; trade"), ""),
                row("yard", "storage", "", "", "", "", "", new Decimal(12.5), 2, 4, "", "", word("seller", "auction"), ""),
                row("freight", "freight", "", "", new Euros(90), "", "", "", "", "", new Decimal(1.1), "", "", ""),
                row("winch", "freight", "", "", new Euros(85), "", "", "", "", "", "", "", "", word("when", "non-runner"))));
        files.put("partout.csv", List.of(row("car", "part", "goes_to", "chance_good", "sells", header("Preis", "price"), "local_rule"),
                row("open car", word("part", "engine"), word("goes_to", "sell"), "", new Decimal(0.85), new Euros(950), ""),
                row("open car", "gearbox", word("goes_to", "sell"), "", "", "", ""),
                row("crashed", word("part", "engine"), word("goes_to", "swap"), "", "", "", ""),
                row("crashed", "gearbox", word("goes_to", "swap"), "", "", "", ""),
                row("crashed", "catalyst", word("goes_to", "sell"), "", "", new Euros(185.5), word("local_rule", "yes")),
                row("crashed", "wheels", word("goes_to", "sell"), "", "", "", "")));
        files.put("parts.csv", parts());
        files.put("swaps.csv", List.of(row("id", header("gesehen", "seen_on"), header("Modell", "vehicle"), header("Baujahr", "model_year"),
                header("Laufleistung", "mileage"), "gear_mileage", "running_gear", header("Preis", "price"), header("Preisart",
                "price_kind"),
                "built_by", "factory_line"),
                row("u1", LocalDate.of(2026, 3, 14), "Halvenne", 2013, new Km(141_000), new Km(99_000), "six", new Euros(8_900),
                        word("price_kind", "asking"), word("built_by", "owner"), "Halvenne Sechs"),
                row("u2", LocalDate.of(2026, 8, 11), "Halvenne", 2012, new Km(155_000), new Km(120_000), "six",
                        new Pounds(5_800, LocalDate.of(2026, 8, 11)), word("price_kind", "sold"), word("built_by", "owner"),
                        "Halvenne Sechs")));
        files.put("ledger.csv", List.of(row("date", header("Betrag", "amount"), "note", "car", "category", "status", "due", "low", "likely",
                "high", "gross", "fee", "hours"),
                row(LocalDate.of(2026, 2, 3), new Euros(6_500), "open car", word("car", "recipient"), word("category", "purchase"), "",
                        "", "",
                        "", "", "", "", ""),
                row(LocalDate.of(2026, 2, 20), new Pounds(2_400, LocalDate.of(2026, 2, 20)), "crashed car", word("car", "donor"),
                        word("category", "purchase"), "", "", "", "", "", "", "", ""),
                row(LocalDate.of(2026, 2, 25), new Euros(278.95), "both home", "recipient: 60; donor: 40", word("category", "freight"), "",
                        "", "", "", "", "", "", ""),
                row(LocalDate.of(2026, 3, 30), "", "seats", word("car", "donor"), word("category", "part sold"), "", "", "", "", "",
                        new Euros(420), new Euros(50.4), new Decimal(1.5)),
                row(LocalDate.of(2026, 11, 1), "", "wiring", word("car", "project"), word("category", "labour"), word("status", "estimate"),
                        LocalDate.of(2026, 12, 18), new Euros(900), new Euros(1_250.5), new Euros(2_100), "", "", "")));
        return files;
    }

    private static List<Object[]> listings() {
        List<Object[]> rows = new ArrayList<>();
        rows.add(row(header("Kennung", "id"), header("gesehen", "seen_on"), header("Modell", "vehicle"), header("Baujahr", "model_year"),
                header("Laufleistung", "mileage"), header("Preis", "price"), header("Preisart", "price_kind"), header("Anbieter", "seller"),
                header("Zustand", "runs"), header("Titel", "title"), header("Schaden", "damage"), "note"));
        Random random = new Random(11);
        List<String> lines = List.of("Halvenne", "Torvik", "Halvenne Sechs");
        double[] whenNew = {27_000, 34_000, 41_000};
        for (int i = 0; i < 70; i++) {
            int line = random.nextInt(3);
            int year = 2009 + random.nextInt(11);
            double km = (2026.5 - year) * 12_000 + random.nextInt(40_000);
            boolean crashed = line == 1 && random.nextInt(5) == 0;
            LocalDate day = LocalDate.of(2026, 1, 10).plusDays(random.nextInt(300));
            double price = whenNew[line] * Math.exp(-0.1 * (2026.5 - year) - 3e-6 * km + 0.1 * random.nextGaussian() - (crashed ? 0.8 : 0));
            boolean abroad = random.nextInt(6) == 0;
            rows.add(row("c" + i, day, lines.get(line), year, new Km(Math.round(km)),
                    abroad ? new Pounds(Math.round(price / rate(day)), day)
                    : new Euros(Math.round(price)), word("price_kind", random.nextInt(8) == 0 ? "sold" : "asking"),
                    word("seller", random.nextInt(3) == 0 ? "trade" : "private"), word("runs", crashed ? "not tried" : "drives"),
                    word("title", crashed ? "salvage" : "clean"), word("damage", crashed ? "front" : "none"),
                    i % 7 == 0 ? "one hand; \"as new\"\nnew tyres" : ""));
        }
        return rows;
    }

    private static List<Object[]> parts() {
        List<Object[]> rows = new ArrayList<>();
        rows.add(row("part", header("Modell", "vehicle"), header("Laufleistung", "mileage"), header("Preis", "price"),
                header("gesehen", "seen_on")));
        Random random = new Random(5);
        for (int i = 0; i < 24; i++) {
            String part = List.of("engine", "gearbox", "wheels").get(i % 3);
            double price = List.of(1_900, 850, 420).get(i % 3) * Math.exp(0.15 * random.nextGaussian());
            LocalDate day = LocalDate.of(2026, 2, 1).plusDays(random.nextInt(250));
            rows.add(row(word("part", part), i % 2 == 0 ? "Halvenne" : "Torvik", new Km(40_000 + 1_000 * random.nextInt(150)),
                    i % 5 == 0 ? new Pounds(Math.round(price), day) : new Euros(Math.round(price)), day));
        }
        return rows;
    }

    private static List<List<String>> rows(Path folder, String... step) throws IOException {
        Path out = folder.resolve("out.csv");
        Files.deleteIfExists(out);
        List<String> arguments = new ArrayList<>(Arrays.stream(step).map(word -> word.replace("FOLDER", folder.toString())).toList());
        arguments.addAll(List.of("--out", out.toString()));
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        PrintStream terminal = new PrintStream(told, true, StandardCharsets.UTF_8);
        assertEquals(0, Main.run(terminal, terminal, arguments.toArray(String[]::new)), () -> told.toString(StandardCharsets.UTF_8));
        String all = told.toString(StandardCharsets.UTF_8);
        assertTrue(!all.contains("rejected:") && !all.contains("not understood") && !all.contains("not used"), all);
        return Files.readAllLines(out).stream().map(line -> List.of(line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1))).toList();
    }

    /** Each figure of one folder stands in the other, distances in the unit that the header of the rows names. */
    private static void same(String... step) throws IOException {
        List<List<String>> own = rows(continental, step);
        List<List<String>> theirs = rows(plain, step);
        assertEquals(own.size(), theirs.size(), step[0]);
        assertEquals(own.get(0).stream().map(h -> h.replaceAll("_km$", "_mi")).toList(), theirs.get(0));
        for (int r = 1; r < own.size(); r++) {
            for (int c = 0; c < own.get(r).size(); c++) {
                String name = own.get(0).get(c);
                String one = own.get(r).get(c);
                String other = theirs.get(r).get(c);
                if (List.of("line", "remarks", "how").contains(name)) {
                    // These speak of how it was written.
                    continue;
                }
                String where = step[0] + " " + r + " " + name;
                if (one.matches("-?[0-9.]+") && other.matches("-?[0-9.]+")) {
                    double factor = name.endsWith("_km") ? KM_A_MILE : 1;
                    double expected = Double.parseDouble(one);
                    assertEquals(expected, factor * Double.parseDouble(other), 0.006 + NEAR * Math.abs(expected), where);
                } else {
                    assertEquals(one, other, where);
                }
            }
        }
    }

    @Test
    void every_listing_is_judged_the_same() throws IOException {
        same("judge", "FOLDER/listings.csv");
        same("value", "--market", "FOLDER/listings.csv", "--subject", "FOLDER/cars.csv");
    }

    @Test
    void the_market_moves_the_same() throws IOException {
        same("index", "FOLDER/listings.csv");
    }

    @Test
    void cars_cost_the_same_at_the_door_and_give_back_the_same() throws IOException {
        same("landed", "FOLDER");
        same("partout", "FOLDER");
    }

    @Test
    void the_finished_swap_is_worth_the_same_and_the_money_is_the_same() throws IOException {
        same("swap", "FOLDER");
        same("project", "FOLDER");
    }
}
