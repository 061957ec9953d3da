package swapworth.world;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import swapworth.listing.Airbags;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Damage;
import swapworth.listing.DrivenWheels;
import swapworth.listing.Keys;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.Outcome;
import swapworth.listing.PriceIncludes;
import swapworth.listing.PriceKind;
import swapworth.listing.Runs;
import swapworth.listing.Saved;
import swapworth.listing.Seller;
import swapworth.listing.Title;

/** The files that the collector keeps, and the slips that he made in them. */
public final class WorldFiles {

    private static final List<String> HEADER = List.of("id", "seen_on", "vehicle", "trim", "body", "running_gear", "power_kw",
            "cylinders", "weight_kg", "driven_wheels", "model_year", "mileage", "gear_mileage", "mileage_status", "price",
            "currency", "price_kind", "price_includes", "seller", "region", "distance_away", "runs", "rust", "paint",
            "interior", "mechanical", "records", "keys", "airbags", "title", "damage", "outcome", "ended_on", "saved",
            "options", "source", "note", "colour");

    private static final List<String> NOTES = List.of("", "", "", "", "", "second owner", "needs tyres", "smells of dog",
            "was a long way off", "roof leaks a little", "phoned, no answer");

    /** What the collector calls some things; {@code words.csv} says what he means. */
    private static final List<Spelling> SPELLINGS = List.of(
            new Spelling("runs", "engine dead", "blown"),
            new Spelling("runs", "engine fires", "starts"),
            new Spelling("damage", "front", "nose"),
            new Spelling("damage", "rear", "tail"),
            new Spelling("rust", "worn", "bubbles"),
            new Spelling("title", "parts only", "for parts"));

    private final Map<String, String> texts;
    private final List<Slip> slips;
    private final List<InPlay> carsInPlay;

    private WorldFiles(Map<String, String> texts, List<Slip> slips, List<InPlay> carsInPlay) {
        this.texts = Collections.unmodifiableMap(new LinkedHashMap<>(texts));
        this.slips = List.copyOf(slips);
        this.carsInPlay = List.copyOf(carsInPlay);
    }

    Map<String, String> texts() {
        return texts;
    }

    List<Slip> slips() {
        return slips;
    }

    List<InPlay> carsInPlay() {
        return carsInPlay;
    }

    /** What can happen to a row. */
    public enum SlipKind {
        /** A digit of the price is missing: it reads as a tenth. */
        DIGIT_MISSING("digit missing"),
        /** The price has one digit too many: it reads as ten times as much. */
        DIGIT_TOO_MANY("digit too many"),
        /** The row stands there twice. */
        DUPLICATE("duplicate"),
        /** The mileage is in kilometres and says so. */
        KILOMETRES("kilometres in the cell"),
        /** The mileage can be read in two ways. */
        AMBIGUOUS_MILEAGE("ambiguous mileage"),
        /** The price is 0. */
        PRICE_ZERO("price 0"),
        /** The note begins like a formula. */
        FORMULA("formula in the note"),
        /** The note is HTML. */
        HTML("HTML in the note"),
        /** What the auction's price holds is left blank. */
        BLANK_INCLUDES("blank price_includes"),
        /** A word that no list explains. */
        UNKNOWN_WORD("unknown word");

        private final String words;

        SlipKind(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /**
     * What was done to a row of {@code listings.csv}.
     *
     * @param kind what
     * @param line the line of the file, the header being 1
     * @param id the advertisement
     * @param truth what would be true in the place of the slip
     */
    public record Slip(SlipKind kind, int line, String id, String truth) {
    }

    /**
     * A car of {@code cars.csv}.
     *
     * @param name its name
     * @param role its role
     * @param facts what is true of it
     */
    public record InPlay(String name, String role, CarFacts facts) {
    }

    private record Spelling(String column, String meaning, String word) {
    }

    static WorldFiles write(Chance chance, WorldSettings settings, Truths truths, List<CarOfWorld> cars, List<Sighting> sightings,
            LocalDate lastEvening) {
        List<Row> rows = new ArrayList<>();
        for (Sighting sighting : sightings) {
            rows.add(row(sighting, cars.get(sighting.car()).facts()));
        }
        if (settings.dirt() == WorldSettings.Dirt.ON && !rows.isEmpty()) {
            new Dirtying(chance, settings, truths, cars, rows).run();
        }
        List<Slip> slips = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            for (Row.Done done : rows.get(i).slips) {
                slips.add(new Slip(done.kind(), i + 2, rows.get(i).get("id"), done.truth()));
            }
        }
        List<InPlay> inPlay = inPlay();
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put("listings.csv", csv(HEADER, rows.stream().map(row -> HEADER.stream().map(row::get).toList()).toList()));
        texts.put("lines.csv", lines(truths));
        texts.put("cars.csv", carsCsv(truths, inPlay, lastEvening));
        texts.put("words.csv", words());
        return new WorldFiles(texts, slips, inPlay);
    }

    private static final class Row {
        private final Map<String, String> cells = new LinkedHashMap<>();
        private final List<Done> slips = new ArrayList<>();
        private final Optional<Sighting> sighting;

        private record Done(SlipKind kind, String truth) {
        }

        private Row(Optional<Sighting> sighting) {
            this.sighting = sighting;
            HEADER.forEach(column -> cells.put(column, ""));
        }

        private String get(String column) {
            return cells.get(column);
        }

        private void set(String column, String text) {
            cells.put(column, text);
        }

        private void slip(SlipKind kind, String truth) {
            slips.add(new Done(kind, truth));
        }

        private Row copy() {
            Row copy = new Row(Optional.empty());
            copy.cells.putAll(cells);
            return copy;
        }
    }

    private static Row row(Sighting sighting, CarFacts facts) {
        Row row = new Row(Optional.of(sighting));
        factCells(facts).forEach(row::set);
        row.set("id", sighting.id());
        row.set("seen_on", sighting.seenOn().toString());
        row.set("mileage", Integer.toString(sighting.miles()));
        row.set("price", Long.toString(sighting.price()));
        row.set("currency", "USD");
        row.set("price_kind", sighting.kind().words());
        row.set("price_includes", sighting.includes().words());
        row.set("outcome", sighting.outcome() == Outcome.OPEN ? "" : sighting.outcome().words());
        row.set("ended_on", sighting.endedOn().map(LocalDate::toString).orElse(""));
        row.set("saved", sighting.saved() == Saved.UNKNOWN ? "" : sighting.saved().words());
        row.set("source", sighting.source());
        return row;
    }

    private static Map<String, String> factCells(CarFacts facts) {
        Map<String, String> cells = new HashMap<>();
        cells.put("vehicle", facts.vehicle());
        cells.put("trim", facts.trim().orElse(""));
        cells.put("body", facts.body().orElse(""));
        cells.put("running_gear", facts.runningGear().orElse(""));
        cells.put("power_kw", whole(facts.powerKw()));
        cells.put("cylinders", whole(facts.cylinders()));
        cells.put("weight_kg", whole(facts.weightKg()));
        cells.put("driven_wheels", facts.drivenWheels() == DrivenWheels.UNKNOWN ? "" : facts.drivenWheels().words());
        cells.put("model_year", facts.modelYear().isPresent() ? Integer.toString(facts.modelYear().getAsInt()) : "");
        cells.put("mileage", facts.mileage().map(mileage -> Integer.toString((int) mileage.miles())).orElse(""));
        cells.put("gear_mileage", facts.gearMileage().map(mileage -> Integer.toString((int) mileage.miles())).orElse(""));
        cells.put("mileage_status", facts.mileage().map(Mileage::status).filter(status -> status != MileageStatus.UNKNOWN)
                .map(MileageStatus::words).orElse(""));
        cells.put("seller", facts.seller() == Seller.UNKNOWN ? "" : facts.seller().words());
        cells.put("region", facts.region().orElse(""));
        cells.put("distance_away", whole(facts.distanceAway()));
        cells.put("runs", facts.runs() == Runs.UNKNOWN ? "" : facts.runs().words());
        cells.put("rust", known(facts.rust()));
        cells.put("paint", known(facts.paint()));
        cells.put("interior", known(facts.interior()));
        cells.put("mechanical", known(facts.mechanical()));
        cells.put("records", known(facts.records()));
        cells.put("keys", facts.keys() == Keys.UNKNOWN ? "" : facts.keys().words());
        cells.put("airbags", facts.airbags() == Airbags.UNKNOWN ? "" : facts.airbags().words());
        cells.put("title", facts.title() == Title.UNKNOWN ? "" : facts.title().words());
        cells.put("damage", facts.damage().map(zones -> zones.isEmpty() ? "none"
                : zones.stream().sorted().map(Damage::words).collect(Collectors.joining("; "))).orElse(""));
        cells.put("options", facts.options().orElse(""));
        cells.put("colour", facts.further().getOrDefault("colour", ""));
        return cells;
    }

    private static String known(Condition condition) {
        return condition == Condition.UNKNOWN ? "" : condition.words();
    }

    private static String whole(OptionalDouble number) {
        return number.isPresent() ? Long.toString(Math.round(number.getAsDouble())) : "";
    }

    /** All that goes wrong when a person copies advertisements by hand. */
    private static final class Dirtying {
        private final Chance chance;
        private final WorldSettings settings;
        private final Truths truths;
        private final List<CarOfWorld> cars;
        private final List<Row> rows;

        private Dirtying(Chance chance, WorldSettings settings, Truths truths, List<CarOfWorld> cars, List<Row> rows) {
            this.chance = chance;
            this.settings = settings;
            this.truths = truths;
            this.cars = cars;
            this.rows = rows;
        }

        private void run() {
            leaveGaps();
            for (Row row : rows) {
                ownWords(row);
                row.set("note", chance.oneOf(NOTES));
            }
            typingErrors();
            kilometres();
            notes();
            pick(row -> !row.get("paint").isEmpty()).ifPresent(row -> {
                row.slip(SlipKind.UNKNOWN_WORD, row.get("paint"));
                row.set("paint", "so-so");
            });
            for (Row row : rows) {
                priceAsTyped(row);
                mileageAsTyped(row);
            }
            extraRows();
        }

        /** Gaps are those of an advertisement, so they stand in all of its rows. */
        private void leaveGaps() {
            Map<String, Set<String>> blank = new HashMap<>();
            for (Row row : rows) {
                Set<String> gaps = blank.computeIfAbsent(row.get("id"), id -> gaps(row));
                if (gaps.contains("price_includes") && row.get("seller").equals("auction")) {
                    row.slip(SlipKind.BLANK_INCLUDES, row.get("price_includes"));
                }
                gaps.forEach(column -> row.set(column, ""));
            }
        }

        private Set<String> gaps(Row row) {
            Set<String> gaps = new HashSet<>();
            if (chance.happens(0.04)) {
                gaps.add("trim");
            }
            double which = chance.uniform();
            if (which < 0.03) {
                gaps.add("mileage");
            } else if (which < 0.05) {
                gaps.add("model_year");
            }
            if (chance.happens(0.05)) {
                gaps.add("region");
            }
            if (chance.happens(0.4)) {
                gaps.add("distance_away");
            }
            // The measured facts stand in lines.csv; the collector copied them from few advertisements.
            if (chance.happens(0.8)) {
                gaps.addAll(List.of("power_kw", "cylinders"));
            }
            if (chance.happens(0.9)) {
                gaps.addAll(List.of("weight_kg", "driven_wheels"));
            }
            if (chance.happens(switch (row.get("seller")) {
                case "auction" -> 0.10;
                case "private" -> 0.5;
                default -> 0.2;
            })) {
                gaps.add("price_includes");
            }
            return gaps;
        }

        private void ownWords(Row row) {
            for (Spelling spelling : SPELLINGS) {
                if (row.get(spelling.column()).equals(spelling.meaning()) && chance.happens(0.4)) {
                    row.set(spelling.column(), spelling.word());
                }
            }
        }

        private void typingErrors() {
            for (int i = 0; i < settings.typingErrors(); i++) {
                boolean missing = i % 2 == 0;
                pick(row -> row.get("price_kind").equals("asking") && row.get("price").matches("\\d{3,}0")).ifPresent(row -> {
                            String price = row.get("price");
                            row.slip(missing ? SlipKind.DIGIT_MISSING : SlipKind.DIGIT_TOO_MANY, price);
                            row.set("price", missing ? price.substring(0, price.length() - 1) : price + "0");
                        });
            }
        }

        private void kilometres() {
            pick(row -> !row.get("mileage").isEmpty()).ifPresent(row -> {
                String miles = row.get("mileage");
                row.slip(SlipKind.KILOMETRES, miles + " mi");
                row.set("mileage", Math.round(Integer.parseInt(miles) * 1.609344) + " km");
            });
        }

        private void notes() {
            pick(row -> true).ifPresent(row -> {
                row.slip(SlipKind.FORMULA, "");
                row.set("note", "=SUM(1;1)*2 owners, so he says");
            });
            pick(row -> true).ifPresent(row -> {
                row.slip(SlipKind.HTML, "");
                row.set("note", "<b>must go</b><script>alert('copied with the page')</script>");
            });
        }

        private void priceAsTyped(Row row) {
            String price = row.get("price");
            double style = chance.uniform();
            if (style < 0.30) {
                row.set("price", "$" + grouped(price));
                row.set("currency", "");
            } else if (style < 0.36 && row.get("price_kind").equals("asking")) {
                row.set("price", "$" + grouped(price) + " OBO");
                row.set("currency", "");
            } else if (style < 0.42) {
                row.set("price", "USD " + price);
                row.set("currency", "");
            } else if (style < 0.50) {
                row.set("currency", "");
            }
        }

        private void mileageAsTyped(Row row) {
            String miles = row.get("mileage");
            if (miles.endsWith("000") && chance.happens(0.12)) {
                row.set("mileage", miles.substring(0, miles.length() - 3) + "k");
            }
        }

        private static String grouped(String digits) {
            return digits.length() <= 3 ? digits
                    : digits.substring(0, digits.length() - 3) + "," + digits.substring(digits.length() - 3);
        }

        private void extraRows() {
            pick(row -> row.slips.isEmpty()).ifPresent(row -> {
                Row twin = row.copy();
                twin.slip(SlipKind.DUPLICATE, "");
                rows.add(rows.indexOf(row) + 1, twin);
            });
            // Two more advertisements, of cars that are not among the world's: one that cannot be read, one that has no price.
            Map<Line, Long> parts = cars.stream().collect(Collectors.groupingBy(CarOfWorld::line,
                    Collectors.summingLong(car -> car.ids().size())));
            pick(row -> plainAsk(row) && !row.get("mileage").isEmpty() && !row.get("model_year").isEmpty()).ifPresent(row -> {
                CarOfWorld like = cars.get(row.sighting.orElseThrow().car());
                Row extra = row.copy();
                extra.set("id", SampleWorld.id(like.line(), (int) (parts.get(like.line()) + 1)));
                CarFacts young = like.facts().toBuilder().mileage(new Mileage(12_500 / 1.609344, MileageStatus.READ)).build();
                LevelOfTrade level = like.facts().seller() == Seller.TRADE ? LevelOfTrade.TRADE_ASKING
                        : LevelOfTrade.PRIVATE_ASKING;
                long price = Math.round(truths.typicalValue(young, level, row.sighting.orElseThrow().seenOn()) / 100) * 100;
                extra.set("mileage", "12.500 km");
                extra.set("price", Long.toString(price));
                extra.set("currency", "USD");
                extra.set("outcome", "");
                extra.set("ended_on", "");
                extra.slip(SlipKind.AMBIGUOUS_MILEAGE, "7767 mi");
                rows.add(rows.indexOf(row) + 1, extra);
                parts.merge(like.line(), 1L, Long::sum);
            });
            pick(Dirtying::plainAsk).ifPresent(row -> {
                Line line = cars.get(row.sighting.orElseThrow().car()).line();
                Row extra = row.copy();
                extra.set("id", SampleWorld.id(line, (int) (parts.get(line) + 1)));
                extra.set("mileage", Integer.toString(chance.whole(40_000, 120_000)));
                extra.set("price", "0");
                extra.set("note", "make me an offer");
                extra.set("outcome", "");
                extra.set("ended_on", "");
                extra.slip(SlipKind.PRICE_ZERO, "");
                rows.add(rows.indexOf(row) + 1, extra);
            });
        }

        private static boolean plainAsk(Row row) {
            return row.slips.isEmpty() && row.sighting.isPresent() && row.get("price_kind").equals("asking");
        }

        /** A row without a slip that is fit for one. */
        private Optional<Row> pick(Predicate<Row> fit) {
            List<Row> found = rows.stream().filter(row -> row.slips.isEmpty() && fit.test(row)).toList();
            return found.isEmpty() ? Optional.empty() : Optional.of(chance.oneOf(found));
        }
    }

    private static String lines(Truths truths) {
        List<List<String>> rows = new ArrayList<>();
        LocalDate peak = truths.month(truths.peakMonth()).atDay(15);
        for (Line line : Line.values()) {
            // In the inflated market a car of six or seven years asks about three quarters of its price when new.
            int year = peak.getYear() - 7;
            CarFacts sixYears = CarFacts.of(line.vehicle()).trim(line.trims().get(0)).modelYear(year)
                    .mileage(new Mileage(6.5 * line.milesPerYear(), MileageStatus.READ)).title(Title.CLEAN).runs(Runs.DRIVES)
                    .damage(Set.of()).rust(Condition.SOUND).paint(Condition.SOUND).interior(Condition.SOUND)
                    .mechanical(Condition.SOUND).records(Condition.SOUND).build();
            double priceNew = truths.typicalValue(sixYears, LevelOfTrade.PRIVATE_ASKING, peak) / 0.75;
            rows.add(List.of(line.vehicle(), line.body(), line.gear(), Integer.toString(line.powerKw()),
                    Integer.toString(line.cylinders()), Integer.toString(line.weightKg()), line.drivenWheels().words(),
                    Names.MAKER, Math.round(priceNew / 100) * 100 + " when new"));
        }
        return csv(List.of("vehicle", "body", "running_gear", "power_kw", "cylinders", "weight_kg", "driven_wheels", "maker",
                "note"), rows);
    }

    private static CarFacts.Builder begin(Line line, String trim, int year, int miles, String region, int away) {
        return CarFacts.of(line.vehicle()).trim(trim).body(line.body()).runningGear(line.gear()).modelYear(year)
                .mileage(new Mileage(miles, MileageStatus.READ)).region(region).distanceAway(away);
    }

    /**
     * Two roadsters to choose from, two crashed saloons, the factory car, and the swap that the first roadster would become.
     */
    private static List<InPlay> inPlay() {
        CarFacts tidy = begin(Line.ROADSTER, Names.PLAIN, 2016, 71_000, Names.REGIONS.get(0), 38)
                .seller(Seller.PRIVATE).runs(Runs.DRIVES).title(Title.CLEAN).damage(Set.of())
                .rust(Condition.SOUND).paint(Condition.WORN).interior(Condition.SOUND).mechanical(Condition.WORN)
                .records(Condition.WORN).keys(Keys.YES).build();
        CarFacts dead = begin(Line.ROADSTER, Names.FITTED, 2014, 98_000, Names.REGIONS.get(1), 112)
                .seller(Seller.PRIVATE).runs(Runs.ENGINE_DEAD).title(Title.CLEAN).damage(Set.of())
                .rust(Condition.WORN).paint(Condition.SOUND).interior(Condition.WORN).mechanical(Condition.BAD).build();
        CarFacts front = begin(Line.SALOON, Names.FITTED, 2019, 44_000, Names.REGIONS.get(2), 164)
                .seller(Seller.AUCTION).runs(Runs.NOT_TRIED).title(Title.SALVAGE).damage(Set.of(Damage.FRONT))
                .keys(Keys.YES).airbags(Airbags.FIRED).build();
        CarFacts rear = begin(Line.SALOON, Names.PLAIN, 2017, 68_500, Names.REGIONS.get(0), 71)
                .seller(Seller.AUCTION).runs(Runs.ENGINE_FIRES).title(Title.SALVAGE).damage(Set.of(Damage.REAR, Damage.LEFT))
                .keys(Keys.YES).airbags(Airbags.IN_PLACE).build();
        CarFacts factory = begin(Line.OPEN_SIX, Names.FITTED, 2018, 39_000, Names.REGIONS.get(1), 95)
                .seller(Seller.TRADE).runs(Runs.DRIVES).title(Title.CLEAN).damage(Set.of())
                .rust(Condition.SOUND).paint(Condition.SOUND).interior(Condition.SOUND).mechanical(Condition.SOUND)
                .records(Condition.SOUND).keys(Keys.YES).airbags(Airbags.IN_PLACE).build();
        CarFacts finished = tidy.toBuilder().runningGear(Line.SALOON.gear()).powerKw(Line.SALOON.powerKw())
                .cylinders(Line.SALOON.cylinders()).weightKg(1_175).drivenWheels(DrivenWheels.REAR)
                .gearMileage(new Mileage(44_000, MileageStatus.RECORDED)).mechanical(Condition.SOUND).distanceAway(0).build();
        return List.of(new InPlay("tidy roadster", "candidate", tidy), new InPlay("dead roadster", "candidate", dead),
                new InPlay("front hit", "donor", front), new InPlay("tail hit", "donor", rear),
                new InPlay("factory six", "factory equivalent", factory), new InPlay("the swap", "finished", finished));
    }

    private static String carsCsv(Truths truths, List<InPlay> inPlay, LocalDate on) {
        List<String> ofListings = List.of("vehicle", "trim", "body", "running_gear", "power_kw", "cylinders", "weight_kg",
                "driven_wheels", "model_year", "mileage", "gear_mileage", "mileage_status", "seller", "region",
                "distance_away", "runs", "rust", "paint", "interior", "mechanical", "records", "keys", "airbags", "title",
                "damage");
        List<String> header = new ArrayList<>(List.of("name", "role"));
        header.addAll(ofListings);
        header.addAll(List.of("price", "price_kind", "price_includes", "planned_bid", "currency", "note"));
        Map<String, String> ofSwap = new java.util.LinkedHashMap<>();
        ofSwap.put("gear_mileage_status", "recorded");
        ofSwap.put("built_by", "owner");
        ofSwap.put("gear_line", Line.SALOON.vehicle());
        ofSwap.put("gear_year", "2019");
        ofSwap.put("recipient", "tidy roadster");
        ofSwap.put("donor", "front hit");
        ofSwap.put("documented", "yes");
        ofSwap.put("inspected", "");
        ofSwap.put("emissions", "");
        ofSwap.put("approved", "");
        ofSwap.put("return_to_stock", "yes");
        ofSwap.put("options_lost", "air conditioning; cruise control");
        ofSwap.put("work_value", "5200");
        ofSwap.put("obsolescence", "air conditioning lost: 400; cluster speaks in part to the engine: 2 %");
        ofSwap.put("cluster", "the donor's, it shows 44,000 mi; the car's own showed 71,000 mi when it came out");
        header.addAll(ofSwap.keySet());
        List<List<String>> rows = new ArrayList<>();
        for (InPlay car : inPlay) {
            Map<String, String> cells = factCells(car.facts());
            List<String> row = new ArrayList<>(List.of(car.name(), car.role()));
            ofListings.forEach(column -> row.add(cells.get(column)));
            row.addAll(switch (car.role()) {
                case "candidate" -> asked(truths, car, LevelOfTrade.PRIVATE_ASKING,
                        car.name().startsWith("tidy") ? 1.05 : 1.20, on);
                case "factory equivalent" -> asked(truths, car, LevelOfTrade.TRADE_ASKING, 1.02, on);
                case "donor" -> List.of("", "", "",
                        Long.toString(hundred(0.95 * truths.typicalValue(car.facts(), LevelOfTrade.AUCTION, on))),
                        "USD", "bid without fees");
                default -> List.of("", "", "", "", "", "the tidy roadster with the gear of the front hit");
            });
            row.addAll(car.role().equals("finished") ? ofSwap.values() : java.util.Collections.nCopies(ofSwap.size(), ""));
            rows.add(row);
        }
        return csv(header, rows);
    }

    private static List<String> asked(Truths truths, InPlay car, LevelOfTrade level, double share, LocalDate on) {
        return List.of(Long.toString(hundred(share * truths.typicalValue(car.facts(), level, on))), PriceKind.ASKING.words(),
                PriceIncludes.NEITHER.words(), "", "USD", "");
    }

    private static long hundred(double amount) {
        return Math.round(amount / 100) * 100;
    }

    private static String words() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("*", "mileage unit", "mi"));
        rows.add(List.of("*", "currency", "USD"));
        SPELLINGS.forEach(spelling -> rows.add(List.of(spelling.column(), spelling.word(), spelling.meaning())));
        rows.add(List.of("part", "lump", "engine"));
        rows.add(List.of("part", "box", "gearbox"));
        rows.add(List.of("part", "brain", "engine control unit"));
        return csv(List.of("column", "word", "means"), rows);
    }

    static String csv(List<String> header, List<List<String>> rows) {
        StringBuilder text = new StringBuilder();
        append(text, header);
        rows.forEach(row -> append(text, row));
        return text.toString();
    }

    private static void append(StringBuilder text, List<String> cells) {
        text.append(cells.stream().map(WorldFiles::quoted).collect(Collectors.joining(","))).append('\n');
    }

    private static String quoted(String cell) {
        return cell.indexOf(',') < 0 && cell.indexOf('"') < 0 && cell.indexOf('\n') < 0 ? cell
                : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
