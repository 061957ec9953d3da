/**
 * What cars of a kind sell for: the price model, fair values, judgements, comparables and the study of its errors; how the market moves
 * and how long such cars take to sell.
 *
 * <p>Start with {@link swapworth.market.PriceModel}; of time tell {@link swapworth.market.MarketIndex} and
 * {@link swapworth.market.TimeOnMarket}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.market;

import org.jspecify.annotations.NullMarked;
