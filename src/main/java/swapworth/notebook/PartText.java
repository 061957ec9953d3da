package swapworth.notebook;

import java.util.List;
import java.util.stream.Collectors;
import swapworth.chart.Chart;
import swapworth.report.Part;

/** A block of a page as plain text. */
final class PartText {

    private PartText() {
    }

    static String of(Part part) {
        if (part instanceof Part.Rows rows) {
            return rows.table().text();
        }
        if (part instanceof Part.Picture picture) {
            return of(picture.chart());
        }
        if (part instanceof Part.Bullets bullets) {
            return list(bullets.items());
        }
        if (part instanceof Part.Pointers pointers) {
            return list(pointers.items().stream().map(p -> p.to().heading() + ": " + p.sentence()).toList());
        }
        if (part instanceof Part.Cautions cautions) {
            return cautions.heading() + "\n" + list(cautions.items());
        }
        if (part instanceof Part.Folded folded) {
            return folded.parts().stream().map(PartText::of).collect(Collectors.joining("\n"));
        }
        if (part instanceof Part.Verbatim verbatim) {
            return verbatim.text();
        }
        return part instanceof Part.Marked marked ? marked.text() : ((Part.Prose) part).text() + "\n";
    }

    private static String of(Chart chart) {
        return chart.title() + "\n" + chart.trouble().map(t -> t + "\n").orElse("") + chart.alt() + "\n";
    }

    private static String list(List<String> items) {
        return items.stream().map(i -> "- " + i + "\n").collect(Collectors.joining());
    }
}
