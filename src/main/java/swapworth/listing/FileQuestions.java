package swapworth.listing;

import java.util.ArrayList;
import java.util.List;
import swapworth.reading.Conventions;
import swapworth.reading.CsvSource;
import swapworth.reading.RowProblem;

/** What the used rows of one file leave open, and what an answer of the user would make worth more: each is asked once a file. */
final class FileQuestions {
    private int used;
    private int auctionsInDoubt;
    private int firstAuctionInDoubt;
    private boolean runningGearSeen;
    private boolean unitOfCellUnknown;
    private boolean currencyOfCellUnknown;

    /** Takes note of a row that is used. */
    void count(Draft draft) {
        used++;
        runningGearSeen |= draft.facts.runningGear.isPresent();
        unitOfCellUnknown |= draft.facts.mileage.isPresent() && !draft.unitInCell;
        currencyOfCellUnknown |= draft.asked.currencyByDefault();
        if (draft.facts.seller == Seller.AUCTION && draft.includes == PriceIncludes.UNKNOWN) {
            firstAuctionInDoubt = auctionsInDoubt == 0 ? draft.line : firstAuctionInDoubt;
            auctionsInDoubt++;
        }
    }

    /** The questions, once all rows of the file are counted. */
    List<RowProblem> of(CsvSource source, FileColumns columns, Conventions stated) {
        List<RowProblem> questions = new ArrayList<>();
        if (used == 0) {
            return questions;
        }
        if (auctionsInDoubt > 0) {
            questions.add(question(source, firstAuctionInDoubt, "price_includes", auctionsInDoubt
                    + (auctionsInDoubt == 1 ? " auction result does" : " auction results do") + " not say whether"
                    + " fees or tax are in the price; fees can add a third: which is it?"));
        }
        for (String header : columns.doubled()) {
            questions.add(question(source, 0, header, "another column of the file means the same and is used instead: does this one"
                    + " say more? Put both into one column; a cell may carry its own unit"));
        }
        if (!runningGearSeen) {
            questions.add(question(source, 0, "running_gear", "no row names a running gear: which line carries the donor's gear? Fill"
                    + " body and running_gear where lines share them, here or in lines.csv"));
        }
        if (unitOfCellUnknown) {
            columns.unitInQuestion(stated).ifPresent(questions::add);
        }
        if (columns.currency(ListingColumn.PRICE).isEmpty() && stated.currency().isEmpty() && !columns.has(ListingColumn.CURRENCY)
                && currencyOfCellUnknown) {
            questions.add(question(source, 0, columns.header(ListingColumn.PRICE), "nothing states the currency of the prices: they"
                    + " are taken for US dollars. State it in words.csv: *,currency,EUR"));
        }
        return questions;
    }

    private static RowProblem question(CsvSource source, int line, String column, String message) {
        return new RowProblem(source.file(), line, column, "", RowProblem.Kind.QUESTION, message);
    }
}
