package swapworth.chart;

/**
 * One thing painted on a plot. Places are in units of the axes (logarithms on a logarithmic one); where either is not a
 * number, the pen is lifted.
 *
 * @param form what the places mean
 * @param ink how it is drawn
 * @param x places from left to right
 * @param y places from bottom to top
 */
record Layer(Form form, Ink ink, double[] x, double[] y) {

    /** What the places of a layer mean. */
    enum Form {
        /** Corners of closed polygons. */
        POLYGON,
        /** Corners of open lines. */
        LINE,
        /** Centres of round dots. */
        DOT,
        /** Centres of squares. */
        SQUARE(-2.6, -2.6, 2.6, -2.6, 2.6, 2.6, -2.6, 2.6),
        /** Centres of triangles that point up. */
        TRIANGLE(-3.5, 2.4, 0, -3.8, 3.5, 2.4),
        /** Centres of diamonds. */
        DIAMOND(-3.7, 0, 0, -3.7, 3.7, 0, 0, 3.7);

        /** The forms that groups take in turn. */
        private static final Form[] SHAPES = {DOT, SQUARE, TRIANGLE, DIAMOND};

        private final double[] corners;

        Form(double... corners) {
            this.corners = corners;
        }

        /** Corners of an angular shape around its centre: x and y in turn, y downward. */
        double[] corners() {
            return corners;
        }

        static Form ofGroup(int group) {
            return SHAPES[group % SHAPES.length];
        }
    }

    /** The layer of a group of points: neighbours differ in shape and in hue, and no pair of the two returns before the 17th. */
    static Layer ofGroup(int group, double[] x, double[] y) {
        Form form = Form.ofGroup(group);
        return new Layer(form, new Ink(hueOfGroup(group), form == Form.DOT ? Ink.Manner.DOT : Ink.Manner.MARK), x, y);
    }

    /** A closed band: along its upper edge, and back along its lower one, which on a logarithmic axis may lie below it. */
    static Layer band(Ink ink, Axis x, Axis y, double[] valuesX, double[] low, double[] high) {
        Places edge = new Places();
        Places lower = new Places();
        for (int i = 0; i < valuesX.length; i++) {
            double from = low[i] <= 0 ? y.belowAll(low[i]) : y.at(low[i]);
            double to = y.at(high[i]);
            if (!Double.isNaN(valuesX[i] + from + to)) {
                edge.add(x.at(valuesX[i]), to);
                lower.add(x.at(valuesX[i]), from);
            }
        }
        edge.addBackward(lower);
        return new Layer(Layer.Form.POLYGON, ink, edge.x(), edge.y());
    }

    /** The band of a curve. */
    static Layer band(Ink ink, Axis x, Axis y, Curve curve) {
        return band(ink, x, y, curve.x(), curve.low(), curve.high());
    }

    static int hueOfGroup(int group) {
        return 1 + (group + group / Ink.HUES) % Ink.HUES;
    }
}
