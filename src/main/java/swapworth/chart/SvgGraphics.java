package swapworth.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.AlphaComposite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Polygon;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import swapworth.table.Html;

/**
 * A drawing surface that writes compact SVG: what is drawn one after the other in one style becomes one path. A colour made as
 * {@link Classes} is written as a class attribute and leaves width and opacity to the style sheet; any other colour is written
 * out. The clip is remembered but not written: the box around the elements clips. Images are refused.
 */
final class SvgGraphics extends Graphics2D {

    /** What is filled or drawn in this colour leaves no trace. */
    static final Color NOTHING = new Color(0, 0, 0, 0);

    /** A colour that stands for classes of the style sheet. */
    static final class Classes extends Color {
        private static final long serialVersionUID = 1L;
        private final String classes;

        Classes(String classes) {
            super(0x4d5560);
            this.classes = classes;
        }
    }

    private static final String NO_IMAGES = "this surface holds paths and text, no images";

    private final StringBuilder out = new StringBuilder(4096);
    private final RenderingHints hints = new RenderingHints(Map.of());
    private PathData path = new PathData();
    private String style = "";
    private AffineTransform transform = new AffineTransform();
    private Color color = Color.BLACK;
    private Stroke stroke = new BasicStroke();
    private Composite composite = AlphaComposite.SrcOver;
    private Color background = NOTHING;
    private @Nullable Shape clip;
    private @Nullable Font font;

    /** The elements drawn so far. */
    String elements() {
        finishPath();
        return out.toString();
    }

    private void finishPath() {
        if (!path.isEmpty()) {
            out.append("<path ").append(style).append(" d=\"").append(path).append("\"/>");
            path = new PathData();
        }
    }

    /** Goes on with the open path if it has this style, else begins one. */
    private PathData pathIn(String wanted) {
        if (!wanted.equals(style)) {
            finishPath();
            style = wanted;
        }
        return path;
    }

    private String filled() {
        return color instanceof Classes c ? "class=\"" + c.classes + '"'
                : "style=\"stroke:none;fill:" + css(color) + '"';
    }

    private String stroked() {
        if (color instanceof Classes c) {
            return "class=\"" + c.classes + '"';
        }
        float width = stroke instanceof BasicStroke basic ? basic.getLineWidth() : 1;
        return "style=\"fill:none;stroke:" + css(color) + ";stroke-width:" + width + '"';
    }

    private static String css(Color color) {
        String digits = Integer.toHexString(color.getRGB() & 0xffffff | 0x1000000).substring(1);
        return '#' + digits + (color.getAlpha() < 255 ? Integer.toHexString(color.getAlpha() | 0x100).substring(1) : "");
    }

    @Override
    public void draw(Shape shape) {
        if (color.getAlpha() == 0) {
            return;
        }
        PathData data = pathIn(stroked());
        if (shape instanceof Line2D line && transform.isIdentity()) {
            if (!data.restsAt(line.getX1(), line.getY1())) {
                data.move(line.getX1(), line.getY1());
            }
            data.line(line.getX2(), line.getY2());
        } else {
            trace(shape, data);
        }
    }

    @Override
    public void fill(Shape shape) {
        if (color.getAlpha() == 0) {
            return;
        }
        if (color instanceof Classes && shape instanceof Ellipse2D dot && transform.isIdentity()) {
            // A stroke of no length with round ends is a dot, in a tenth of the characters of four curves.
            PathData data = pathIn(filled());
            data.move(dot.getCenterX(), dot.getCenterY());
            data.line(dot.getCenterX(), dot.getCenterY());
        } else {
            trace(shape, pathIn(filled()));
        }
    }

    private void trace(Shape shape, PathData data) {
        double[] c = new double[6];
        for (PathIterator i = shape.getPathIterator(transform); !i.isDone(); i.next()) {
            switch (i.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> data.move(c[0], c[1]);
                case PathIterator.SEG_LINETO -> data.line(c[0], c[1]);
                case PathIterator.SEG_QUADTO -> data.quadratic(c[0], c[1], c[2], c[3]);
                case PathIterator.SEG_CUBICTO -> data.cubic(c[0], c[1], c[2], c[3], c[4], c[5]);
                default -> data.close();
            }
        }
    }

    @Override
    public void drawString(String text, float x, float y) {
        finishPath();
        double[] m = new double[6];
        transform.getMatrix(m);
        out.append("<text x=\"").append(x).append("\" y=\"").append(y).append('"');
        if (!transform.isIdentity()) {
            out.append(" transform=\"matrix(").append(m[0]);
            for (int i = 1; i < m.length; i++) {
                out.append(' ').append(m[i]);
            }
            out.append(")\"");
        }
        out.append('>').append(Html.escape(text)).append("</text>");
    }

    @Override
    public void drawString(String text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        StringBuilder plain = new StringBuilder();
        for (char c = text.first(); c != AttributedCharacterIterator.DONE; c = text.next()) {
            plain.append(c);
        }
        drawString(plain.toString(), x, y);
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        fill(glyphs.getOutline(x, y));
    }

    @Override
    public void drawLine(int x1, int y1, int x2, int y2) {
        draw(new Line2D.Double(x1, y1, x2, y2));
    }

    @Override
    public void fillRect(int x, int y, int width, int height) {
        fill(new Rectangle(x, y, width, height));
    }

    @Override
    public void clearRect(int x, int y, int width, int height) {
        Color kept = color;
        color = background;
        fillRect(x, y, width, height);
        color = kept;
    }

    @Override
    public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        draw(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        fill(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void drawOval(int x, int y, int width, int height) {
        draw(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void fillOval(int x, int y, int width, int height) {
        fill(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void drawArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
        draw(new Arc2D.Double(x, y, width, height, startAngle, arcAngle, Arc2D.OPEN));
    }

    @Override
    public void fillArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
        fill(new Arc2D.Double(x, y, width, height, startAngle, arcAngle, Arc2D.PIE));
    }

    @Override
    public void drawPolyline(int[] x, int[] y, int n) {
        for (int i = 1; i < n; i++) {
            drawLine(x[i - 1], y[i - 1], x[i], y[i]);
        }
    }

    @Override
    public void drawPolygon(int[] x, int[] y, int n) {
        draw(new Polygon(x, y, n));
    }

    @Override
    public void fillPolygon(int[] x, int[] y, int n) {
        fill(new Polygon(x, y, n));
    }

    @Override
    public void setColor(Color next) {
        color = next;
    }

    @Override
    public Color getColor() {
        return color;
    }

    @Override
    public void setPaint(Paint paint) {
        if (!(paint instanceof Color plain)) {
            throw new UnsupportedOperationException("this surface paints in plain colours");
        }
        color = plain;
    }

    @Override
    public Paint getPaint() {
        return color;
    }

    @Override
    public void setBackground(Color next) {
        background = next;
    }

    @Override
    public Color getBackground() {
        return background;
    }

    @Override
    public void setStroke(Stroke next) {
        stroke = next;
    }

    @Override
    public Stroke getStroke() {
        return stroke;
    }

    @Override
    public void setComposite(Composite next) {
        composite = next;
    }

    @Override
    public Composite getComposite() {
        return composite;
    }

    @Override
    public void setPaintMode() {
        composite = AlphaComposite.SrcOver;
    }

    @Override
    public void setXORMode(Color with) {
        throw new UnsupportedOperationException("this surface paints in plain colours");
    }

    @Override
    public void setFont(@Nullable Font next) {
        font = next;
    }

    @Override
    public @Nullable Font getFont() {
        return font;
    }

    @Override
    public FontMetrics getFontMetrics(Font of) {
        throw new UnsupportedOperationException("this surface measures no text");
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return new FontRenderContext(null, true, true);
    }

    @Override
    public void transform(AffineTransform next) {
        transform.concatenate(next);
    }

    @Override
    public void setTransform(AffineTransform next) {
        transform = new AffineTransform(next);
    }

    @Override
    public AffineTransform getTransform() {
        return new AffineTransform(transform);
    }

    @Override
    public void translate(double dx, double dy) {
        transform.translate(dx, dy);
    }

    @Override
    public void translate(int dx, int dy) {
        transform.translate(dx, dy);
    }

    @Override
    public void rotate(double angle) {
        transform.rotate(angle);
    }

    @Override
    public void rotate(double angle, double x, double y) {
        transform.rotate(angle, x, y);
    }

    @Override
    public void scale(double byX, double byY) {
        transform.scale(byX, byY);
    }

    @Override
    public void shear(double byX, double byY) {
        transform.shear(byX, byY);
    }

    @Override
    public void setClip(@Nullable Shape next) {
        clip = next;
    }

    @Override
    public void setClip(int x, int y, int width, int height) {
        clip = new Rectangle(x, y, width, height);
    }

    @Override
    public @Nullable Shape getClip() {
        return clip;
    }

    @Override
    public @Nullable Rectangle getClipBounds() {
        return clip == null ? null : clip.getBounds();
    }

    @Override
    public void clip(Shape more) {
        if (clip == null) {
            clip = more;
        } else {
            Area both = new Area(clip);
            both.intersect(new Area(more));
            clip = both;
        }
    }

    @Override
    public void clipRect(int x, int y, int width, int height) {
        clip(new Rectangle2D.Double(x, y, width, height));
    }

    @Override
    public boolean hit(Rectangle rect, Shape shape, boolean onStroke) {
        return shape.intersects(rect);
    }

    @Override
    public void setRenderingHint(RenderingHints.Key key, @Nullable Object value) {
        if (value == null) {
            hints.remove(key);
        } else {
            hints.put(key, value);
        }
    }

    @Override
    public @Nullable Object getRenderingHint(RenderingHints.Key key) {
        return hints.get(key);
    }

    @Override
    public void setRenderingHints(Map<?, ?> next) {
        hints.clear();
        hints.putAll(next);
    }

    @Override
    public void addRenderingHints(Map<?, ?> more) {
        hints.putAll(more);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return (RenderingHints) hints.clone();
    }

    @Override
    public Graphics create() {
        throw new UnsupportedOperationException("this surface has no second pen");
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        throw new UnsupportedOperationException("this surface has no pixels");
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        throw new UnsupportedOperationException("this surface has no device");
    }

    @Override
    public void dispose() {
        finishPath();
    }

    @Override
    public boolean drawImage(Image image, AffineTransform by, ImageObserver observer) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public void drawImage(BufferedImage image, BufferedImageOp operation, int x, int y) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform by) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform by) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, Color ground, ImageObserver observer) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, Color ground, ImageObserver observer) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public boolean drawImage(Image image, int toX1, int toY1, int toX2, int toY2, int fromX1, int fromY1, int fromX2, int fromY2,
            ImageObserver observer) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }

    @Override
    public boolean drawImage(Image image, int toX1, int toY1, int toX2, int toY2, int fromX1, int fromY1, int fromX2, int fromY2,
            Color ground, ImageObserver observer) {
        throw new UnsupportedOperationException(NO_IMAGES);
    }
}
