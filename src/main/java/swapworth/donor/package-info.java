/**
 * What a donor or a recipient costs once it stands in the yard, what its damage leaves, and what its left-over parts give back.
 *
 * <p>Start with {@link swapworth.donor.DonorStudy}, which holds all of it for a folder; for one car with
 * {@link swapworth.donor.LandedCost} and {@link swapworth.donor.PartOut}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.donor;

import org.jspecify.annotations.NullMarked;
