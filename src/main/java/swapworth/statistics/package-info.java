/**
 * Numbers only: the regression engine, its draws, and the plain statistics beside it.
 *
 * <p>Start with {@link swapworth.statistics.ShrunkenRegression}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.statistics;

import org.jspecify.annotations.NullMarked;
