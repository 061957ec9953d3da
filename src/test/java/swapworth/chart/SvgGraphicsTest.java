package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Test;

class SvgGraphicsTest {
    private final SvgGraphics graphics = new SvgGraphics();

    @Test
    void lines_that_follow_each_other_in_one_style_become_one_path() {
        graphics.setColor(new SvgGraphics.Classes("h1 line"));
        graphics.draw(new Line2D.Double(0, 0, 1, 2));
        graphics.draw(new Line2D.Double(1, 2, 3, 3));
        graphics.draw(new Line2D.Double(9, 9, 10, 11));
        assertEquals("<path class=\"h1 line\" d=\"m0 0 1 2 2 1m6 6 1 2\"/>", graphics.elements());
    }

    @Test
    void another_style_begins_another_path() {
        graphics.setColor(new SvgGraphics.Classes("a"));
        graphics.draw(new Line2D.Double(0, 0, 1, 2));
        graphics.setColor(new SvgGraphics.Classes("b"));
        graphics.draw(new Line2D.Double(1, 2, 3, 3));
        assertEquals("<path class=\"a\" d=\"m0 0 1 2\"/><path class=\"b\" d=\"m1 2 2 1\"/>", graphics.elements());
    }

    @Test
    void a_dot_is_a_stroke_of_no_length() {
        graphics.setColor(new SvgGraphics.Classes("dot"));
        graphics.fill(new Ellipse2D.Double(1, 2, 6, 6));
        graphics.fill(new Ellipse2D.Double(11, 2, 6, 6));
        assertEquals("<path class=\"dot\" d=\"m4 5h0m10 0h0\"/>", graphics.elements());
    }

    @Test
    void a_plain_colour_is_written_out() {
        graphics.setColor(new Color(1, 2, 255));
        graphics.setStroke(new BasicStroke(2.5f));
        graphics.drawLine(0, 0, 5, 0);
        graphics.setColor(new Color(255, 0, 0, 128));
        graphics.fillRect(0, 0, 2, 1);
        assertEquals("<path style=\"fill:none;stroke:#0102ff;stroke-width:2.5\" d=\"m0 0h5\"/>"
                + "<path style=\"stroke:none;fill:#ff000080\" d=\"m0 0h2v1h-2v-1z\"/>", graphics.elements());
    }

    @Test
    void what_cannot_be_seen_leaves_no_trace() {
        graphics.setColor(SvgGraphics.NOTHING);
        graphics.fillRect(0, 0, 100, 100);
        graphics.drawLine(0, 0, 100, 100);
        assertEquals("", graphics.elements());
    }

    @Test
    void text_stays_text_and_is_escaped() {
        graphics.drawString("<b> & \"c\"", 1, 2);
        assertEquals("<text x=\"1.0\" y=\"2.0\">&lt;b&gt; &amp; &quot;c&quot;</text>", graphics.elements());
    }

    @Test
    void a_moved_and_scaled_surface_moves_and_scales_what_is_drawn() {
        AffineTransform before = graphics.getTransform();
        graphics.setColor(new SvgGraphics.Classes("a"));
        graphics.translate(10, 20);
        graphics.scale(2, 3);
        graphics.drawLine(1, 1, 2, 2);
        graphics.setTransform(before);
        graphics.drawLine(1, 1, 2, 2);
        assertEquals("<path class=\"a\" d=\"m12 23 2 3m-13-25 1 1\"/>", graphics.elements());
    }

    @Test
    void images_are_refused() {
        BufferedImage image = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
        assertThrows(UnsupportedOperationException.class, () -> graphics.drawRenderedImage(image, new AffineTransform()));
    }
}
