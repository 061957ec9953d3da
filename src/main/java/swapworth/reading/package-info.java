/**
 * Any CSV file that a user keeps: header synonyms, units, conventions, and an account of every row.
 *
 * <p>Start with {@link swapworth.reading.CsvSource}. Nothing here takes or returns null.
 */
@NullMarked
package swapworth.reading;

import org.jspecify.annotations.NullMarked;
