package swapworth.report;

import java.util.List;
import swapworth.chart.Chart;
import swapworth.table.Html;

/** Renders a page. */
final class PageHtml {
    private final StringBuilder out = new StringBuilder(1 << 18);

    String of(Page page) {
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
                + "img-src data:\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                + "<meta name=\"color-scheme\" content=\"light dark\">\n<title>");
        text(page.title());
        out.append("</title>\n<style>\n").append(PageStyle.CSS).append('\n').append(Chart.STYLE)
                .append(PageStyle.footOfSheets(page.title())).append("\n</style>\n</head>\n<body>\n<header>\n<h1>");
        text(page.title());
        out.append("</h1>\n");
        if (!page.lead().isEmpty()) {
            paragraphs("lead", page.lead());
        }
        int behindLead = out.length();
        out.append("</header>\n<main>\n");
        sections(page.sections().subList(0, page.opening()));
        List<Section> rest = page.sections().subList(page.opening(), page.sections().size());
        List<Section> headed = rest.stream().filter(s -> !s.heading().isEmpty()).toList();
        if (headed.size() > 1) {
            out.append("<nav aria-label=\"Contents\">\n<ol>\n");
            for (Section section : headed) {
                out.append("<li>");
                link(section);
                out.append("</li>\n");
            }
            out.append("</ol>\n</nav>\n");
        }
        sections(rest);
        if (out.indexOf("<details", behindLead) >= 0) {
            out.insert(behindLead,
                    "<p class=\"paper\">What is folded on the screen is left off the paper: unfold what you want printed.</p>\n");
        }
        return out.append("</main>\n</body>\n</html>\n").toString();
    }

    private void sections(List<Section> sections) {
        for (Section section : sections) {
            out.append("<section id=\"").append(section.id()).append(foldsAll(section) ? "\" class=\"folds\">\n" : "\">\n");
            if (!section.heading().isEmpty()) {
                out.append("<h2>");
                text(section.heading());
                out.append("</h2>\n");
            }
            parts(section.parts());
            out.append("</section>\n");
        }
    }

    /** Whether nothing of a section is left on paper, where what is folded is not printed, but the words that lead to it. */
    private static boolean foldsAll(Section section) {
        return section.parts().stream().anyMatch(Part.Folded.class::isInstance)
                && section.parts().stream().allMatch(part -> part instanceof Part.Folded || part instanceof Part.Prose);
    }

    String of(Part part) {
        parts(List.of(part));
        return out.toString();
    }

    private void parts(List<Part> parts) {
        for (Part part : parts) {
            if (part instanceof Part.Prose prose) {
                paragraphs("", prose.text());
            } else if (part instanceof Part.Marked marked) {
                out.append(Markdown.html(marked.text()));
            } else if (part instanceof Part.Bullets bullets) {
                list(bullets.items());
            } else if (part instanceof Part.Pointers pointers) {
                pointers(pointers.items());
            } else if (part instanceof Part.Rows rows) {
                out.append(rows.table().html());
            } else if (part instanceof Part.Picture picture) {
                chart(picture.chart());
            } else if (part instanceof Part.Verbatim verbatim) {
                out.append("<pre>");
                text(verbatim.text());
                out.append("</pre>\n");
            } else if (part instanceof Part.Cautions cautions) {
                out.append("<aside class=\"cautions\">\n<h3>");
                text(cautions.heading());
                out.append("</h3>\n");
                list(cautions.items());
                out.append("</aside>\n");
            } else if (part instanceof Part.Folded folded) {
                folded(folded);
            }
        }
    }

    private void folded(Part.Folded folded) {
        out.append("<details>\n<summary>");
        text(folded.summary());
        // A link to something inside unfolds it; a link to the fold itself would leave it shut.
        out.append("</summary>\n<div");
        if (!folded.id().isEmpty()) {
            out.append(" id=\"").append(folded.id()).append('"');
        }
        out.append(">\n");
        parts(folded.parts());
        out.append("</div>\n</details>\n");
    }

    private void chart(Chart chart) {
        boolean drawn = chart.trouble().isEmpty();
        out.append("<figure class=\"picture\">\n<figcaption>");
        text(chart.title());
        out.append("</figcaption>\n");
        if (drawn) {
            out.append(chart.svg());
        } else {
            paragraphs("note", chart.trouble().get());
            paragraphs("", chart.alt());
        }
        if (!chart.data().rows().isEmpty()) {
            out.append("\n<details class=\"numbers\"").append(drawn ? "" : " open").append(">\n<summary>the numbers</summary>\n")
                    .append(chart.data().html()).append("</details>");
        }
        out.append("\n</figure>\n");
    }

    private void list(List<String> items) {
        out.append("<ul>\n");
        for (String item : items) {
            out.append("<li>");
            text(item);
            out.append("</li>\n");
        }
        out.append("</ul>\n");
    }

    /** Sentences beside the sections that they lead to; neighbours that lead to the same one stand below each other. */
    private void pointers(List<Part.Pointer> items) {
        out.append("<dl class=\"answers\">\n");
        for (int i = 0; i < items.size(); i++) {
            Section to = items.get(i).to();
            if (i == 0 || !items.get(i - 1).to().id().equals(to.id())) {
                out.append(i == 0 ? "" : "</div>\n").append("<div><dt>");
                link(to);
                out.append("</dt>");
            }
            out.append("<dd>");
            text(items.get(i).sentence());
            out.append("</dd>");
        }
        out.append("</div>\n</dl>\n");
    }

    private void link(Section section) {
        out.append("<a href=\"#").append(section.id()).append("\">");
        text(section.heading());
        out.append("</a>");
    }

    private void paragraphs(String classes, String words) {
        int from = 0;
        while (from <= words.length()) {
            int gap = words.indexOf("\n\n", from);
            int to = gap < 0 ? words.length() : gap;
            if (to > from) {
                out.append(classes.isEmpty() ? "<p>" : "<p class=\"" + classes + "\">");
                text(words.substring(from, to));
                out.append("</p>\n");
            }
            from = to + 2;
        }
    }

    private void text(String words) {
        out.append(Html.unbroken(words));
    }
}
