/**
 * Rows that print themselves as text, HTML and CSV.
 *
 * <p>Start with {@link swapworth.table.Table}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.table;

import org.jspecify.annotations.NullMarked;
