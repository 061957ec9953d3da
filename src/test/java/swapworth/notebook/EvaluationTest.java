package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import swapworth.report.Part;

/** What cells put out, and where and why they stop. */
class EvaluationTest {

    private static Evaluation.Outcome run(String... cells) {
        return Unwatched.run(notebook(cells));
    }

    private static NotebookFile notebook(String... cells) {
        return NotebookFile.of(Path.of("some.jsh"), "// %%\n" + String.join("\n// %%\n", cells) + "\n");
    }

    /** Adds a cell that must not be reached. */
    private static String failure(String... cells) {
        String[] andMore = Arrays.copyOf(cells, cells.length + 1);
        andMore[cells.length] = "System.out.println(\"never\");";
        Evaluation.Outcome outcome = run(andMore);
        assertTrue(outcome.failure().isPresent(), "it should have stopped");
        assertEquals(cells.length, outcome.outputs().size(), "nothing runs after a failure");
        return outcome.failure().get().report(notebook(cells));
    }

    @Test
    void printed_text_shown_things_and_the_last_value_come_out_in_order() {
        Evaluation.Outcome outcome = run("import static swapworth.notebook.Show.show;\nrecord Two(String name, double price) { }",
                "System.out.println(\"one\"); show(\"two\");\nSystem.err.println(\"three\");\nList.of(new Two(\"four\", 1234.5))",
                "int five = 5;\nfive;\nfive = 6;", "five");
        assertEquals(Optional.empty(), outcome.failure());
        assertEquals(List.of(), outcome.outputs().get(0));
        List<Output> second = outcome.outputs().get(1);
        assertEquals(List.of(Output.Manner.PRINTED, Output.Manner.SHOWN, Output.Manner.PRINTED, Output.Manner.LAST),
                second.stream().map(Output::manner).toList());
        assertEquals(List.of("one", "two", "three"), second.subList(0, 3).stream().map(o -> PartText.of(o.part()).strip()).toList());
        String table = PartText.of(second.get(3).part());
        assertTrue(table.contains("name") && table.contains("four") && table.contains("1,23"), table);
        assertEquals(List.of(), outcome.outputs().get(2), "an assignment shows nothing");
        assertEquals(List.of(new Output(Output.Manner.LAST, Part.prose("6"))), outcome.outputs().get(3));
    }

    @Test
    void a_mistake_in_the_code_names_line_cell_and_text() {
        String report = failure("int a = 1;", "int b = 2;\n\n// a word\nString s = nothing(\n    a);");
        assertTrue(report.startsWith("some.jsh:7: cell 2 of 2: cannot find symbol"), report);
        assertTrue(report.contains("nothing") && report.contains("\n    String s = nothing("), report);
    }

    @Test
    void an_exception_names_its_line_its_causes_and_where_it_was_reached_from() {
        String report = failure("int half(int a) {\n    if (a > 1) {\n        throw new IllegalStateException(\"odd\", new "
                + "RuntimeException(\"deep\"));\n"
                + "    }\n    return a;\n}", "int x = 1;\n\nint y =\n    half(7);");
        assertTrue(report.startsWith("some.jsh:4: cell 2 of 2: java.lang.IllegalStateException: odd"), report);
        assertTrue(report.contains("caused by java.lang.RuntimeException: deep"), report);
        assertTrue(report.contains("throw new IllegalStateException(\"odd\""), report);
        assertTrue(report.contains("from some.jsh:12"), report);
    }

    @Test
    void an_exception_of_the_library_names_the_line_of_the_notebook() {
        String report = failure("int a = 1;", "var read = swapworth.listing.Listings.read(\n    Path.of(\"nowhere.csv\"));");
        assertTrue(report.startsWith("some.jsh:4: cell 2 of 2: "), report);
        assertTrue(report.contains("nowhere.csv"), report);
    }

    @Test
    void what_is_declared_nowhere_is_named_even_inside_a_method() {
        String report = failure("int a() {\n    return b();\n}");
        assertTrue(report.startsWith("some.jsh:2: cell 1 of 1: this needs what is declared nowhere"), report);
        assertTrue(report.contains("b()"), report);
        assertEquals(Optional.empty(), run("int a() {\n    return b();\n}\nint b() {\n    return 2;\n}\na()").failure());
    }

    @Test
    void a_cell_that_ends_too_soon_is_said_to() {
        assertTrue(failure("int a = 1;\nint b = (a +").startsWith("some.jsh:3: cell 1 of 1: the cell ends before"));
    }

    @Test
    void endless_printing_is_cut() {
        Evaluation.Outcome outcome = run("for (int i = 0; i < 5_000; i++) {\n    System.out.println(\"again\".repeat(40));\n}");
        String text = PartText.of(outcome.outputs().get(0).get(0).part());
        assertTrue(text.length() < 500_000 && text.endsWith("the rest is left out)\n"), "cut");
    }

    @Test
    void nothing_at_all_may_be_shown_by_mistake() {
        assertTrue(failure("swapworth.notebook.Show.show(\"a\", null);").contains("must not be null"));
        assertFalse(run("String s = null;\ns").failure().isPresent());
    }
}
