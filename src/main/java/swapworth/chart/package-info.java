/**
 * Charts of results: pictures as compact SVG, each with its words and its numbers.
 *
 * <p>Start with the class of your question, which takes results: {@link swapworth.chart.MarketCharts},
 * {@link swapworth.chart.TimeCharts}, {@link swapworth.chart.DonorCharts}, {@link swapworth.chart.SwapCharts},
 * {@link swapworth.chart.ProjectCharts}. They draw by the kinds of {@link swapworth.chart.Charts} and
 * {@link swapworth.chart.AmountCharts}, which take plain numbers. All give a {@link swapworth.chart.Chart}. XChart paints the plot areas
 * into a surface of our own that writes SVG; axes, legends and notes are text of our own around them, so that no font of the
 * machine is needed and every word can be searched. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.chart;

import org.jspecify.annotations.NullMarked;
