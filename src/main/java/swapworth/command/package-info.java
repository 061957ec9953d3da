/**
 * The command line: which files, which step, where the output goes; no arithmetic.
 *
 * <p>Start with {@link swapworth.command.Main}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.command;

import org.jspecify.annotations.NullMarked;
