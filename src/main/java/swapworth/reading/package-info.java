/**
 * Any CSV file that a user keeps: header synonyms, units, conventions, and an account of every row. Start with
 * {@link swapworth.reading.CsvSource}. Nothing here takes or returns null.
 *
 * <h2>How a row is read</h2>
 *
 * <p>Every rule below has a test of its own.
 *
 * <h3>The file</h3>
 * <ul>
 * <li>Text is UTF-8; a byte order mark is fine. Other bytes make the file unusable: the error names the line.
 * <li>The separator is the one that the header line uses most: comma, semicolon or tab. A first line {@code sep=;} states it.
 * <li>The header is the first line that is neither blank, separators alone, nor a comment; a title above it must go, or begin with
 * {@code #}. Two columns of one name make the file unusable.
 * So does a header that {@code words.csv} takes for a column of another unit or currency than the header itself states.
 * <li>A line that begins with {@code #} is a comment. It is counted; one with as many cells as a row is asked about, and one that begins
 * with an error of a spreadsheet, such as {@code #REF!}, is a row and rejected. The header that stands again among the rows, as where one
 * file was put behind another, is rejected with that reason; of the smaller files a row below it that stands above it too is set aside.
 * <li>A smaller file that holds neither a header nor a row says nothing, and that is told; {@code listings.csv} must hold some.
 * <li>A line without text, or with nothing but separators, is blank. Below the header it is counted.
 * <li>A cell may stand in quotes; a quote inside it is written twice; it may run over several lines. The line of a row is the
 * physical line on which it begins, from 1.
 * <li>Text behind a closing quote, or a quote that is never closed, rejects the physical line on which the row begins; reading
 * goes on at the next physical line. A quoted cell that swallows a line with as many separators as a row has (three at least) is
 * taken for a quote that was never meant: its first line is rejected, the others are read on their own. More than 1,000 such rows
 * make the file unusable.
 * <li>A row with more cells than the header is rejected, unless the cells too many are blank. A row with fewer is filled with
 * blanks. Either is rejected where a text, a separator, a space and a text look like one cell without its quotes, unless the header, or
 * every cell of the row, has such spaces.
 * <li>Limits: 1,048,576 characters a cell, 2,000 columns, 4 GiB a file, of which only a piece is in memory at a time.
 * </ul>
 *
 * <h3>Cells</h3>
 * <ul>
 * <li>Spaces around a text do not count, the no-break ones included. Blank are also {@code -}, {@code ?}, {@code n/a},
 * {@code unknown}, {@code not known}, {@code not stated}, {@code tbc}, {@code tbd}, {@code null}, {@code #N/A} and dashes. Another error
 * of a spreadsheet, or a formula, is refused.
 * <li>Words and names are compared without regard to case, spaces, hyphens and underscores, and never by likeness:
 * {@code Corvane 7} is {@code Corvane7}. Only between two digits a space counts: {@code Corvane 7 2} is not {@code Corvane 72}. In a
 * header it parts words: {@code modelyear} is not {@code model_year}.
 * </ul>
 *
 * <h3>Numbers</h3>
 * <ul>
 * <li>Digits, in groups of three if grouped: {@code 85 000}, {@code 85'000}, {@code 1,234,567}, {@code 1.234.567}; a {@code k}
 * behind them makes thousands: {@code 85k}, {@code 1.2k}.
 * <li>Of two kinds of mark the last is the decimal mark: {@code 12.500,50}, {@code 12,500.50}. One mark that cannot part groups
 * of three is the decimal mark: {@code 12,5}, {@code 0.125}, {@code 1600.0}.
 * <li>{@code 12.500} is refused with a question unless the decimal mark is stated. {@code 12,500} is twelve thousand five hundred
 * in a file of commas or tabs, and refused with a question in a file of semicolons.
 * <li>Where a decimal mark is stated, a number that contradicts it is refused.
 * <li>{@code 340t}, {@code NaN}, {@code 1E5}, {@code 0x1F}, {@code .5} and two numbers in one cell are refused.
 * </ul>
 *
 * <h3>Distances, money, dates</h3>
 * <ul>
 * <li>A distance may carry {@code mi}, {@code miles}, {@code km} and their like, or {@code tkm} for thousands of km; a power {@code kW},
 * {@code PS}, {@code hp}, a weight {@code kg}, {@code lb}. The unit of the cell counts before that of the
 * header, that before the stated one; a contradiction leaves a remark. {@code 84.500} under a stated decimal point is refused with a
 * question: no distance of a car is told to three decimals. An amount likewise, unless coins of its currency have three.
 * <li>An amount may carry a sign ({@code $ £ €}), an ISO 4217 code, and a few words ({@code OBO}, {@code ONO}, {@code firm},
 * {@code VB}, ...) before it or behind it, which are kept as a remark. The currency of the cell counts before that of the column, that
 * before the stated one. A bare {@code $} is the stated kind of dollar, else the US dollar. {@code 8.500,-} has no cents. Other words
 * are refused.
 * <li>A date is {@code 2024-04-03} (a time behind a date is dropped), {@code 2024/04/03}, {@code 3 Apr 2024} or {@code Apr 3, 2024}.
 * {@code 03/04/2024} is refused with a question unless the order is stated; {@code 25/04/2024} has only one reading. Years of two
 * digits are refused.
 * <li>A first registration may also be a month ({@code 2015-03}, {@code 03/2015}: its 15th) or a year (1 July), with a remark.
 * </ul>
 */
@NullMarked
package swapworth.reading;

import org.jspecify.annotations.NullMarked;
