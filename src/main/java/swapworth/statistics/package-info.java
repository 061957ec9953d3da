/**
 * Numbers only: the regression engine, its draws, and the plain statistics beside it.
 *
 * <p>Start with {@link swapworth.statistics.ShrunkenRegression}. Nothing here takes or returns null.
 *
 * <p>Some of it no other package of the library asks for: variances of which nothing is assumed
 * ({@link swapworth.statistics.PriorBlock#varianceComponent}), plain random walks ({@link swapworth.statistics.PriorBlock#statedWalk},
 * {@link swapworth.statistics.PriorBlock.Kind#WALK}), what the rows of a fit tell apart
 * ({@link swapworth.statistics.Posterior#identification}), the triangular law. They are for whoever fits a model or adds up estimates of
 * his own, and they are the cases to which published results exist: by them the engine itself is checked.
 */
@NullMarked
package swapworth.statistics;

import org.jspecify.annotations.NullMarked;
