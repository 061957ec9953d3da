/**
 * Charts of results: pictures as compact SVG, each with its words and its numbers.
 *
 * <p>Start with {@link swapworth.chart.Charts}; what it gives is a {@link swapworth.chart.Chart}. XChart paints the plot areas
 * into a surface of our own that writes SVG; axes, legends and notes are text of our own around them, so that no font of the
 * machine is needed and every word can be searched. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.chart;

import org.jspecify.annotations.NullMarked;
