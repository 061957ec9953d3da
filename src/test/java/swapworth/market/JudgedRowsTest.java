package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;

/** That rows written and let go are the rows of the table that is kept. */
class JudgedRowsTest {

    @Test
    void rows_written_one_by_one_are_those_of_the_table() throws IOException {
        ListingsRead read = Listings.read(Path.of("sample-listings", "listings.csv"));
        PriceModel model = PriceModel.fit(read.cars());
        for (Optional<LevelOfTrade> level : java.util.List.of(Optional.<LevelOfTrade>empty(), Optional.of(LevelOfTrade.AUCTION))) {
            Judged judged = Judged.of(read, model, Optional.empty(), level);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Optional<FitStudy> study = new JudgedRows(read, model, Optional.empty(), level).write(out);
            assertEquals(judged.table().csv(), out.toString(StandardCharsets.UTF_8));
            assertEquals(judged.study().map(FitStudy::in80), study.map(FitStudy::in80));
            assertEquals(judged.study().map(FitStudy::leftOut), study.map(FitStudy::leftOut));
        }
    }
}
