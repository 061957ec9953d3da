/**
 * One HTML page from tables, charts and prose.
 *
 * <p>Start with {@link swapworth.report.Page}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.report;

import org.jspecify.annotations.NullMarked;
