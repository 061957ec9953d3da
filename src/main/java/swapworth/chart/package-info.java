/**
 * Charts of result records.
 *
 * <p>Start with {@link swapworth.chart.Charts}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.chart;

import org.jspecify.annotations.NullMarked;
