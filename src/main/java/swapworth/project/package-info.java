/**
 * The whole undertaking: what is spent and still to come, what is in it against what it is worth, whether to go on, and against what.
 *
 * <p>Start with {@link swapworth.project.Undertaking}, which holds all of it for a folder; for the payments alone with
 * {@link swapworth.project.Ledger}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.project;

import org.jspecify.annotations.NullMarked;
