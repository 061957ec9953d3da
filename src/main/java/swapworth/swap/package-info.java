/**
 * What a finished swap is worth: a car with the body of one line and the running gear of another, of which there are no sales.
 *
 * <p>Start with {@link swapworth.swap.SwapValue}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.swap;

import org.jspecify.annotations.NullMarked;
