/**
 * One HTML page from tables, charts and prose.
 *
 * <p>Start with {@link swapworth.report.Page}: a page has sections, a section has parts. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.report;

import org.jspecify.annotations.NullMarked;
