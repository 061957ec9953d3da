package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** That XChart puts things where the axes written around it say. */
class XChartPainterTest {
    private static final Axis X = Axis.between(100, 300, 4);
    private static final Axis Y = Axis.between(-5, 5, 4);
    private static final Ink INK = new Ink(1, Ink.Manner.LINE);

    private static String paint(Layer... layers) {
        return new XChartPainter().paint(List.of(layers), X, Y, 400, 200);
    }

    private static String data(String element) {
        return element.substring(element.indexOf(" d=\"") + 4, element.lastIndexOf('"'));
    }

    @Test
    void the_ends_of_the_axes_are_the_corners_of_the_plot() {
        String svg = paint(new Layer(Layer.Form.LINE, INK, new double[] {100, 300, 200}, new double[] {-5, 5, 0}));
        assertEquals(List.of("0.0,200.0", "400.0,0.0", "200.0,100.0"), SvgPath.places(data(svg)));
    }

    @Test
    void a_place_that_is_not_known_lifts_the_pen() {
        String svg = paint(new Layer(Layer.Form.LINE, INK, new double[] {100, 200, 200, 200, Double.NaN, 250, 300},
                new double[] {0, 0, Double.NaN, 5, 5, 0, 0}));
        assertEquals("<path class=\"h1 line\" d=\"m0 100h200m100 0h100\"/>", svg);
    }

    @Test
    void boxes_parted_by_lifted_pens_are_closed_one_by_one() {
        Places boxes = new Places();
        boxes.box(100, 150, 5);
        boxes.box(200, 250, 2.5);
        String svg = paint(new Layer(Layer.Form.POLYGON, new Ink(2, Ink.Manner.BAR), boxes.x(), boxes.y()));
        assertEquals(List.of("0.0,100.0", "0.0,0.0", "100.0,0.0", "100.0,100.0", "0.0,100.0", "z", "200.0,100.0", "200.0,50.0",
                "300.0,50.0", "300.0,100.0", "200.0,100.0", "z"), SvgPath.places(data(svg)));
    }

    @Test
    void each_shape_of_points_is_one_path() {
        double[] x = {150, 250};
        double[] y = {0, 0};
        assertEquals("<path class=\"h1 dot\" d=\"m100 100h0m200 0h0\"/>", paint(Layer.ofGroup(0, x, y)));
        assertEquals("<path class=\"h2 mark\" d=\"m97.4 97.4h5.2v5.2h-5.2zm200 0h5.2v5.2h-5.2z\"/>",
                paint(Layer.ofGroup(1, x, y)));
        assertEquals(List.of("96.5,102.4", "100.0,96.2", "103.5,102.4", "z"),
                SvgPath.places(data(paint(Layer.ofGroup(2, x, y)))).subList(0, 4));
        assertEquals(List.of("96.3,100.0", "100.0,96.3", "103.7,100.0", "100.0,103.7", "z"),
                SvgPath.places(data(paint(Layer.ofGroup(3, x, y)))).subList(0, 5));
    }

    @Test
    void sixteen_groups_differ_in_shape_or_hue() {
        double[] none = new double[0];
        assertEquals(16, java.util.stream.IntStream.range(0, 16).mapToObj(g -> Layer.ofGroup(g, none, none))
                .map(layer -> layer.form() + " " + layer.ink().hue()).distinct().count());
    }
}
