/**
 * Listings collected by hand, and the cars that they show.
 *
 * <p>Start with {@link swapworth.listing.Listings}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.listing;

import org.jspecify.annotations.NullMarked;
