package swapworth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** That the house keeps to its plan, and that each rule would notice a breach. */
class HouseTest {
    private static final Path MAIN = Path.of("src", "main");
    private static final List<ParsedSource> SOURCES = new ArrayList<>();

    @BeforeAll
    static void read_the_sources() throws IOException {
        for (Path file : files(MAIN.resolve("java"))) {
            SOURCES.add(ParsedSource.of(file));
        }
        assertTrue(SOURCES.size() > 50, "sources found");
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(Files::isRegularFile).sorted().toList();
        }
    }

    private static void nowhere(Function<ParsedSource, Set<String>> rule) {
        Set<String> breaches = new TreeSet<>();
        SOURCES.forEach(source -> breaches.addAll(rule.apply(source)));
        assertEquals("", String.join("\n", breaches));
    }

    @Test
    void arrows_between_rooms_go_down() {
        nowhere(HouseRules::arrows);
    }

    @Test
    void each_library_stays_in_its_room() {
        nowhere(HouseRules::libraries);
    }

    @Test
    void whatever_is_public_is_described() {
        nowhere(HouseRules::undescribed);
    }

    @Test
    void nothing_depends_on_machine_language_clock_or_chance() throws IOException {
        nowhere(HouseRules::machine);
        Set<String> breaches = new TreeSet<>();
        for (Path file : files(MAIN)) {
            if (!file.toString().endsWith(".java")) {
                breaches.addAll(HouseRules.paths(file.toString(), Files.readString(file)));
            }
        }
        assertEquals(Set.of(), breaches);
    }

    @Test
    void no_record_prints_where_its_array_lies_in_memory() {
        nowhere(HouseRules::unprintable);
    }

    @Test
    void every_line_can_be_read_on_one_screen() throws IOException {
        List<String> wide = new ArrayList<>();
        for (Path file : files(Path.of("src"))) {
            if (file.toString().endsWith(".java")) {
                List<String> lines = Files.readAllLines(file);
                IntStream.range(0, lines.size()).filter(i -> lines.get(i).length() > 140).forEach(i -> wide.add(file + ":" + (i + 1)));
            }
        }
        assertEquals(List.of(), wide);
    }

    @Test
    void nothing_is_imported_that_nobody_asks_for() {
        nowhere(HouseRules::idleImports);
    }

    @Test
    void the_guide_for_contributors_speaks_of_no_type_that_is_gone() throws IOException {
        Set<String> types = new TreeSet<>();
        for (Path file : files(Path.of("src"))) {
            if (file.toString().endsWith(".java")) {
                types.addAll(HouseRules.types(ParsedSource.of(file)));
            }
        }
        assertEquals(Set.of(), HouseRules.gone(Files.readString(Path.of("DEVELOPERS.md")), types));
    }

    @Test
    void each_room_introduces_itself() {
        Set<String> introduced = new TreeSet<>();
        Set<String> rooms = new TreeSet<>();
        nowhere(source -> {
            rooms.add(source.packageName());
            if (!source.name.endsWith("package-info.java")) {
                return Set.of();
            }
            introduced.add(source.packageName());
            return HouseRules.introduction(source,
                    name -> Files.exists(MAIN.resolve("java").resolve(name.replace('.', '/') + ".java")));
        });
        assertEquals(rooms, introduced);
    }

    @Test
    void the_plan_of_the_house_begins_each_room_where_the_room_does() throws IOException {
        String plan = Files.readString(Path.of("DEVELOPERS.md"));
        nowhere(source -> source.name.endsWith("package-info.java") ? HouseRules.misplanned(source, plan) : Set.of());
    }

    @Test
    void reference_data_say_where_they_come_from() throws IOException {
        Set<String> breaches = new TreeSet<>();
        try (Stream<Path> folders = Files.list(Path.of("src", "test", "resources", "reference"))) {
            for (Path folder : folders.toList()) {
                Path note = folder.resolve("SOURCE.md");
                if (!Files.exists(note)) {
                    breaches.add(folder + " has no SOURCE.md");
                } else if (!HouseRules.unsaid(Files.readString(note)).isEmpty()) {
                    breaches.add(note + " does not speak of " + HouseRules.unsaid(Files.readString(note)));
                }
            }
        }
        assertEquals(Set.of(), breaches);
    }

    @Test
    void the_top_of_the_repository_holds_no_stranger() throws IOException {
        try (Stream<Path> top = Files.list(Path.of("."))) {
            List<String> names = top.map(path -> path.getFileName().toString()).toList();
            assertEquals(Set.of(), HouseRules.strangers(names, Files.readAllLines(Path.of(".gitignore"))));
        }
    }

    /** Each rule is shown a breach and something harmless. */
    @Nested
    class EachRuleCanFail {

        private static ParsedSource in(String room, String body) {
            return ParsedSource.of("src/main/java/swapworth/" + room + "/Some.java", "package swapworth." + room + ";\n" + body);
        }

        private static int arrows(String room, String body) {
            return HouseRules.arrows(in(room, body)).size();
        }

        @Test
        void an_arrow_up_is_noticed_in_an_import_and_in_a_name_written_in_full() {
            assertEquals(1, arrows("listing", "import swapworth.market.PriceModel;\nclass Some { }"));
            assertEquals(1, arrows("listing", "import static swapworth.market.PriceModel.fit;\nclass Some { }"));
            assertEquals(1, arrows("listing", "import swapworth.market.*;\nclass Some { }"));
            assertEquals(1, arrows("listing", "class Some {\n Object a() {\n return swapworth.market.PriceModel.fit(null); } }"));
            assertEquals(1, arrows("listing", "class Some {\n swapworth.market.PriceModel model; }"));
            assertEquals(1, arrows("listing", "class Some {\n java.util.List<swapworth.market.PriceModel> models; }"));
            assertEquals(0, arrows("market", "import swapworth.listing.Car;\nclass Some { }"));
            assertEquals(0, arrows("market", "import swapworth.market.PriceModel;\nclass Some { }"));
        }

        @Test
        void the_foot_of_the_house_uses_no_other_room() {
            assertEquals(1, arrows("money", "import swapworth.table.Cell;\nclass Some { }"));
            assertEquals(1, arrows("table", "import swapworth.statistics.Normal;\nclass Some { }"));
        }

        @Test
        void a_room_outside_the_plan_is_noticed() {
            assertEquals(1, arrows("cellar", "import swapworth.table.Cell;\nclass Some { }"));
            assertEquals(1, arrows("market", "import swapworth.cellar.Cell;\nclass Some { }"));
        }

        @Test
        void a_library_outside_its_room_is_noticed() {
            for (String library : List.of("org.apache.commons.math3.stat.StatUtils", "org.knowm.xchart.XYChart",
                    "java.awt.Color", "tech.tablesaw.api.Table", "jdk.jshell.JShell", "org.apache.commons.cli.CommandLine",
                    "de.siegmar.fastcsv.reader.CsvReader", "org.commonmark.parser.Parser")) {
                assertEquals(1, libraries("assumptions", "import " + library + ";\nclass Some { }"), library);
                assertEquals(1, libraries("assumptions", "class Some {\n " + library + " it; }"), library);
            }
            assertEquals(1, libraries("listing", "import tech.tablesaw.api.Table;\nclass Some { }"));
            assertEquals(0, libraries("statistics", "import org.apache.commons.math3.util.Precision;\nclass Some { }"));
        }

        private static int libraries(String room, String body) {
            return HouseRules.libraries(in(room, body)).size();
        }

        private static int undescribed(String body) {
            return HouseRules.undescribed(in("market", body)).size();
        }

        @Test
        void a_missing_comment_is_noticed() {
            assertEquals(1, undescribed("public class Some { }"));
            assertEquals(1, undescribed("/* no Javadoc */ public class Some { }"));
            assertEquals(1, undescribed("/** */ public class Some { }"));
            assertEquals(1, undescribed("/** A. */ public class Some {\n public void go() { } }"));
            assertEquals(1, undescribed("/** A. */ public class Some {\n protected int size; }"));
            assertEquals(1, undescribed("/** A. */ public class Some {\n public Some(int a) { } }"));
            assertEquals(1, undescribed("/** A. */ public record Some(int a) {\n public Some { } }"));
            assertEquals(1, undescribed("/** A. */ public interface Some {\n void go(); }"));
            assertEquals(2, undescribed("/** A. */ public interface Some {\n record Two(int a) {\n public void b() { } } }"));
            assertEquals(1, undescribed("public record Some(int a) { }"));
            assertEquals(1, undescribed("/** A. */ public enum Some {\n /** B. */ FIRST,\n SECOND }"));
        }

        @Test
        void what_needs_no_comment_is_left_alone() {
            assertEquals(0, undescribed("class Some {\n public void go() { } }"));
            assertEquals(0, undescribed("/** A. */ public class Some {\n private Some() { }\n int a;\n void go() { } }"));
            assertEquals(0, undescribed("/** A. */ public record Some(int a) {\n @Override public int a() { return a; } }"));
            assertEquals(0, undescribed("/** A. */ public enum Some {\n /** B. */ FIRST; }"));
        }

        private static int machine(String statement) {
            return HouseRules.machine(in("market", "class Some { void go(String s, Object o) { " + statement + " } }")).size();
        }

        @Test
        void what_depends_on_the_machine_is_noticed() {
            for (String statement : List.of("String.format(\"%f\", 1.0);", "System.out.printf(\"%d\", 1);",
                    "\"%d\".formatted(1);", "s.toLowerCase();", "s.toUpperCase();", "s.getBytes();", "java.time.LocalDate.now();",
                    "LocalDate.now();", "System.currentTimeMillis();", "new Random();", "new java.util.Random();",
                    "new DecimalFormat(\"0\");", "Locale.getDefault();", "Math.random();",
                    "o = \"/home/somebody/file\";", "o = \"C:\\\\data\";")) {
                assertEquals(1, machine(statement), statement);
            }
            for (String statement : List.of("String.format(Locale.ROOT, \"%f\", 1.0);", "s.toLowerCase(Locale.ROOT);",
                    "new Random(7);", "Character.toLowerCase('A');", "LocalDate.now(clock);", "o = \"a/home/b\";")) {
                assertEquals(0, machine(statement), statement);
            }
        }

        @Test
        void a_record_that_prints_where_its_array_lies_is_noticed() {
            assertEquals(1, unprintable("public record Some(double[] a) { }"));
            assertEquals(1, unprintable("public class Some {\n public record Within(int a, String[] b) { } }"));
            assertEquals(0, unprintable("public record Some(double[] a) {\n @Override public String toString() {\n return \"\"; } }"));
            assertEquals(0, unprintable("public record Some(int a) {\n private static final int[] ALL = {1}; }"));
            assertEquals(0, unprintable("public class Some {\n private int[] a; }"));
        }

        private static int unprintable(String body) {
            return HouseRules.unprintable(in("market", body)).size();
        }

        private static int introduction(String text) {
            ParsedSource source = ParsedSource.of("swapworth/market/package-info.java", text);
            return HouseRules.introduction(source, "swapworth.market.PriceModel"::equals).size();
        }

        @Test
        void a_room_that_does_not_introduce_itself_is_noticed() {
            String start = "/** Start with {@link swapworth.market.PriceModel}. */\n";
            assertEquals(0, introduction(start + "@NullMarked\npackage swapworth.market;"));
            assertEquals(1, introduction(start + "package swapworth.market;"));
            assertEquals(1, introduction("/** Prices. */\n@NullMarked\npackage swapworth.market;"));
            assertEquals(1, introduction(start.replace("PriceModel", "Gone") + "@NullMarked\npackage swapworth.market;"));
            assertEquals(2, introduction("package swapworth.market;"));
        }

        @Test
        void a_plan_that_begins_a_room_elsewhere_is_noticed() {
            String start = "/** Start with {@link swapworth.market.PriceModel}. */\n";
            String name = "src/main/java/swapworth/market/package-info.java";
            ParsedSource room = ParsedSource.of(name, start + "@NullMarked\npackage swapworth.market;");
            assertEquals(0, HouseRules.misplanned(room, "| `market` | prices | `PriceModel`, `Judged` |").size());
            assertEquals(1, HouseRules.misplanned(room, "| `market` | prices | `Judged`, `PriceModel` |").size());
            assertEquals(1, HouseRules.misplanned(room, "| `swap` | prices | `PriceModel` |").size());
        }

        @Test
        void an_idle_import_is_noticed() {
            assertEquals(1, idle("import java.util.List;\nclass Some { }"));
            assertEquals(1, idle("import static java.util.Objects.requireNonNull;\nclass Some { }"));
            assertEquals(1, idle("import java.util.List;\nimport java.util.List;\nclass Some { List<String> all; }"));
            assertEquals(0, idle("import java.util.List;\nclass Some { List<String> all; }"));
            assertEquals(0, idle("import java.util.List;\n/** As a {@link List}. */\nclass Some { }"));
        }

        private static int idle(String body) {
            return HouseRules.idleImports(in("market", body)).size();
        }

        @Test
        void a_type_that_is_gone_is_noticed() {
            Set<String> types = HouseRules.types(in("market", "class Some { record Within(int a) { } }"));
            assertEquals(Set.of("Gone"), HouseRules.gone("`Some`, `Within.a` and `Gone.all()`; `NAME_worn`, `some`, Other", types));
        }

        @Test
        void a_stranger_and_a_silent_source_note_are_noticed() {
            List<String> top = List.of("src", ".git", "pom.xml", "notes.txt", "target", "a.iml");
            assertEquals(Set.of("notes.txt"), HouseRules.strangers(top, List.of("target/", "*.iml")));
            assertEquals(List.of("licence", "made"), HouseRules.unsaid("# Source: a page"));
        }
    }
}
