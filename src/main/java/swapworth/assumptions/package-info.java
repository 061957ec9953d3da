/**
 * Named numbers that stand in where the user's own rows do not speak: each with spread, unit and source, each open to the user's
 * override.
 *
 * <p>Start with {@link swapworth.assumptions.Assumptions}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.assumptions;

import org.jspecify.annotations.NullMarked;
