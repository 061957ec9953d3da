/**
 * Notebooks: plain JShell files that mix prose, code, tables and charts, run from the first cell to the last and written as one page
 * each. Only here is {@code jdk.jshell} used.
 *
 * <p>Start with {@link swapworth.notebook.Notebooks}; a notebook itself calls {@link swapworth.notebook.Show}. Nothing here takes or
 * returns null.
 */
@NullMarked
package swapworth.notebook;

import org.jspecify.annotations.NullMarked;
