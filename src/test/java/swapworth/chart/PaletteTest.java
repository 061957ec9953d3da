package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * The hues against their ground and against each other. Contrast after WCAG 2.1 (3 : 1 for graphics, success criterion 1.4.11).
 * Kinds of colour vision after G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, IEEE Transactions on Visualization and
 * Computer Graphics 15 (2009), matrices for severity 1.0 on linear RGB. Distance: CIE 1976 L*a*b*.
 */
class PaletteTest {
    private static final double[][][] VISION = {
        {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
        {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
        {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
        {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
    };

    private static double[] linear(String colour) {
        double[] rgb = new double[3];
        for (int i = 0; i < 3; i++) {
            double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            rgb[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
        }
        return rgb;
    }

    private static double luminance(double[] rgb) {
        return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    }

    private static double[] seen(double[][] vision, double[] rgb) {
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                out[i] += vision[i][k] * rgb[k];
            }
            out[i] = Math.max(0, Math.min(1, out[i]));
        }
        return out;
    }

    private static double[] lab(double[] rgb) {
        double x = curve((0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2]) / 0.9505);
        double y = curve(luminance(rgb));
        double z = curve((0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2]) / 1.089);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double curve(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }

    @Test
    void every_hue_stands_out_from_its_ground() {
        check(ChartStyle.LIGHT, "#ffffff");
        check(ChartStyle.DARK, "#16191d");
    }

    @Test
    void bars_have_an_edge_of_their_whole_hue_however_light_their_tint_is() {
        assertTrue(ChartStyle.CSS.contains(".chart .bar{fill:currentColor;stroke:currentColor;"), ChartStyle.CSS);
        for (String tint : java.util.List.of("bar", "full", "half")) {
            assertTrue(ChartStyle.CSS.contains(".chart ." + tint + "{fill-opacity:"), tint);
            assertTrue(!ChartStyle.CSS.contains(".chart ." + tint + "{opacity:"), tint);
        }
    }

    private static void check(String[] hues, String ground) {
        for (String hue : hues) {
            double a = luminance(linear(hue)) + 0.05;
            double b = luminance(linear(ground)) + 0.05;
            double contrast = Math.max(a, b) / Math.min(a, b);
            assertTrue(contrast >= 3, hue + " on " + ground + ": " + contrast);
        }
    }

    @Test
    void groups_can_be_told_apart_by_each_kind_of_colour_vision() {
        for (String[] hues : new String[][] {ChartStyle.LIGHT, ChartStyle.DARK}) {
            for (int v = 0; v < VISION.length; v++) {
                for (int i = 1; i < hues.length; i++) {
                    for (int k = i + 1; k < hues.length; k++) {
                        double[] a = lab(seen(VISION[v], linear(hues[i])));
                        double[] b = lab(seen(VISION[v], linear(hues[k])));
                        double distance = Math.hypot(Math.hypot(a[0] - b[0], a[1] - b[1]), a[2] - b[2]);
                        assertTrue(distance >= 25, hues[i] + " and " + hues[k] + " in vision " + v + ": " + distance);
                    }
                }
            }
        }
    }
}
