/**
 * What a donor or a recipient costs once it stands in the yard, what its damage leaves, and what its left-over parts give back.
 *
 * <p>Start with {@link swapworth.donor.LandedCost}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.donor;

import org.jspecify.annotations.NullMarked;
