/**
 * Exact amounts of money, their currencies and dated exchange rates.
 *
 * <p>Start with {@link swapworth.money.Money}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.money;

import org.jspecify.annotations.NullMarked;
