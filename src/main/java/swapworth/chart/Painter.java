package swapworth.chart;

import java.util.List;

/** Paints the layers of a plot, from the back to the front. */
interface Painter {

    /**
     * Paints.
     *
     * @param layers what to paint
     * @param x the horizontal axis
     * @param y the vertical axis
     * @param width width of the plot
     * @param height height of the plot
     * @return SVG elements inside a box from (0, 0) to (width, height)
     */
    String paint(List<Layer> layers, Axis x, Axis y, int width, int height);
}
