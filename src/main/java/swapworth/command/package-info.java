/**
 * The command line: which files, which step, where the output goes; no arithmetic.
 *
 * <p>Start with {@link swapworth.command.Main}: it reads the words, {@code Steps} does the {@code Step}, {@code Inputs}
 * says which files it is about and {@code Terminal} tells what became of them. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.command;

import org.jspecify.annotations.NullMarked;
