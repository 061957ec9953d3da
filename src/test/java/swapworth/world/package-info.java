/**
 * An invented market whose truth is known, for tests and for the sample folder.
 *
 * <p>Start with {@link swapworth.world.SampleWorld}.
 */
@NullMarked
package swapworth.world;

import org.jspecify.annotations.NullMarked;
