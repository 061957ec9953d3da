/**
 * What cars of a kind sell for: the price model, fair values, judgements, comparables and the study of its errors.
 *
 * <p>Start with {@link swapworth.market.PriceModel}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.market;

import org.jspecify.annotations.NullMarked;
