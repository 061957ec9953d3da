package swapworth.report;

import java.util.List;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import swapworth.table.Html;

/** Turns marks of Markdown into HTML that a page can trust. */
final class Markdown {
    /** The first heading inside a section: the title of the page and those of sections stand above it. */
    private static final int FIRST_HEADING = 3;
    private static final List<Extension> TABLES = List.of(TablesExtension.create());
    private static final Parser PARSER = Parser.builder().extensions(TABLES).build();
    private static final HtmlRenderer RENDERER = HtmlRenderer.builder().extensions(TABLES).escapeHtml(true).sanitizeUrls(true)
            .attributeProviderFactory(context -> (node, tag, attributes) -> {
                if (tag.equals("th")) {
                    attributes.put("scope", "col");
                }
            }).build();

    private Markdown() {
    }

    static String html(String text) {
        Node document = PARSER.parse(Html.withoutControls(text));
        document.accept(new Tame());
        return RENDERER.render(document).replace("<table>", "<div class=\"wide\"><table>").replace("</table>", "</table></div>");
    }

    /** Puts the words of a picture in its place, since a page loads nothing, and headings below those of the page. */
    private static final class Tame extends AbstractVisitor {

        @Override
        public void visit(Image image) {
            visitChildren(image);
            while (image.getFirstChild() != null) {
                image.insertBefore(image.getFirstChild());
            }
            image.unlink();
        }

        @Override
        public void visit(Heading heading) {
            heading.setLevel(FIRST_HEADING);
            visitChildren(heading);
        }
    }
}
