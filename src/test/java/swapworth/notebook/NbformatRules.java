package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What the JSON schema of nbformat 4.5 asks of a notebook, as far as ours use it. */
final class NbformatRules {

    private NbformatRules() {
    }

    // Source: nbformat, schema of notebook format 4.5 (required and further properties of each kind of cell and output).
    static void check(String ipynb) {
        Map<String, Object> top = Json.object(Json.read(ipynb));
        assertEquals(Set.of("metadata", "nbformat_minor", "nbformat", "cells"), top.keySet());
        assertEquals(4, top.get("nbformat"));
        assertEquals(5, top.get("nbformat_minor"));
        Map<String, Object> metadata = Json.object(top.get("metadata"));
        assertTrue(Json.object(metadata.get("kernelspec")).keySet().containsAll(Set.of("name", "display_name")));
        assertTrue(Json.object(metadata.get("language_info")).containsKey("name"));
        Set<Object> ids = new HashSet<>();
        for (Object item : Json.array(top.get("cells"))) {
            Map<String, Object> cell = Json.object(item);
            assertTrue(cell.get("id").toString().matches("[a-zA-Z0-9_-]{1,64}") && ids.add(cell.get("id")), "id " + cell.get("id"));
            multiline(cell.get("source"));
            if (cell.get("cell_type").equals("markdown")) {
                assertEquals(Set.of("id", "cell_type", "metadata", "source"), cell.keySet());
            } else {
                assertEquals("code", cell.get("cell_type"));
                assertEquals(Set.of("id", "cell_type", "metadata", "source", "outputs", "execution_count"), cell.keySet());
                assertTrue((Integer) cell.get("execution_count") > 0);
                Json.array(cell.get("outputs")).forEach(o -> output(Json.object(o)));
            }
        }
    }

    private static void output(Map<String, Object> output) {
        switch (output.get("output_type").toString()) {
            case "stream" -> {
                assertEquals(Set.of("output_type", "name", "text"), output.keySet());
                multiline(output.get("text"));
            }
            case "display_data" -> assertEquals(Set.of("output_type", "data", "metadata"), output.keySet());
            case "execute_result" -> assertEquals(Set.of("output_type", "data", "metadata", "execution_count"), output.keySet());
            case "error" -> {
                assertEquals(Set.of("output_type", "ename", "evalue", "traceback"), output.keySet());
                assertTrue(output.get("ename") instanceof String && output.get("evalue") instanceof String);
                assertTrue(Json.array(output.get("traceback")).stream().allMatch(String.class::isInstance));
            }
            default -> throw new AssertionError("no output of nbformat: " + output.get("output_type"));
        }
        if (output.containsKey("data")) {
            Map<String, Object> data = Json.object(output.get("data"));
            assertTrue(data.containsKey("text/plain") && data.size() == 2, "words for those who cannot see it: " + data.keySet());
            data.values().forEach(NbformatRules::multiline);
        }
    }

    private static void multiline(Object lines) {
        List<?> list = Json.array(lines);
        for (int i = 0; i < list.size(); i++) {
            String line = (String) list.get(i);
            assertEquals(i < list.size() - 1, line.endsWith("\n") && i < list.size() - 1, "each line but the last ends in a line feed");
            assertTrue(line.indexOf('\n') < 0 || line.indexOf('\n') == line.length() - 1);
        }
    }
}
