/**
 * One HTML page from tables, charts and prose.
 *
 * <p>Start with {@link swapworth.report.FolderPage}, which puts all that a folder says on one page; {@link swapworth.report.ListingsPage}
 * and {@link swapworth.report.ProjectPage} do so for listings and for the money. Each makes a {@link swapworth.report.Page}: a page has
 * sections, a section has parts. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.report;

import org.jspecify.annotations.NullMarked;
