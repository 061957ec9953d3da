package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import swapworth.listing.Listings;

class StockTest {
    private final EvidenceList.Found found = EvidenceList.in(Listings.read(Path.of("sample-listings", "listings.csv")).cars(),
            List.of("colour"));
    private final EvidenceList evidence = found.evidence();
    private final Stock stock = found.stock();

    @Test
    void going_through_the_evidence_later_finds_the_same() {
        Stock later = Stock.of(evidence, List.of("colour"));
        assertEquals(stock.kinds(), later.kinds());
        assertEquals(stock.examples(), later.examples());
        assertEquals(stock.lines(), later.lines());
        assertEquals(stock.levels(), later.levels());
        assertEquals(stock.texts("colour"), later.texts("colour"));
        assertEquals(stock.begin(), later.begin());
        assertEquals(stock.end(), later.end());
        for (int i = 0; i < evidence.size(); i++) {
            assertEquals(stock.age(i), later.age(i));
            assertEquals(stock.miles(i), later.miles(i));
            assertEquals(stock.line(i), later.line(i));
        }
    }

    @Test
    void every_row_is_of_one_kind() {
        assertEquals(evidence.size(), stock.kinds().stream().mapToInt(Stock.Kind::rows).sum());
        assertTrue(stock.kinds().size() < evidence.size());
    }

    @Test
    void every_car_with_a_price_is_of_one_kind_once() {
        assertEquals(evidence.stream().map(Evidence::car).distinct().count(), stock.kinds().stream().mapToInt(Stock.Kind::cars).sum());
        assertTrue(stock.kinds().stream().anyMatch(kind -> kind.cars() < kind.rows()));
    }

    @Test
    void examples_show_every_word_in_the_order_in_which_all_rows_do() {
        assertTrue(stock.examples().size() < evidence.size());
        sameWords(s -> Optional.of(s.facts().vehicle()));
        sameWords(s -> s.facts().trim().map(trim -> s.facts().vehicle() + trim));
        sameWords(s -> s.facts().body());
        sameWords(s -> s.facts().runningGear());
        sameWords(s -> s.facts().region());
        sameWords(s -> Optional.ofNullable(s.facts().further().get("colour")));
        sameWords(LevelWords::vintage);
    }

    private void sameWords(Function<Subject, Optional<String>> word) {
        assertEquals(evidence.stream().map(Evidence::subject).map(word).flatMap(Optional::stream).distinct().toList(),
                stock.examples().stream().map(word).flatMap(Optional::stream).distinct().toList());
    }

    @Test
    void ages_and_mileages_are_those_of_the_rows() {
        for (int i = 0; i < evidence.size(); i++) {
            Subject subject = evidence.get(i).subject();
            assertEquals(subject.facts().ageOn(subject.on().orElseThrow()).orElse(Double.NaN), stock.age(i));
            assertEquals(subject.facts().mileage().map(m -> m.miles()).orElse(Double.NaN), stock.miles(i));
            assertEquals(subject.facts().vehicle(), stock.lines().get(stock.line(i)));
        }
        double[] all = new double[evidence.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = stock.miles(i);
        }
        double[][] apart = stock.byLine(all);
        int known = 0;
        for (double[] line : apart) {
            known += line.length;
        }
        assertEquals(evidence.stream().filter(e -> e.subject().facts().mileage().isPresent()).count(), known);
    }

    @Test
    void rows_without_a_day_are_as_old_as_on_the_first_of_july_after_the_newest_model_year() {
        EvidenceList undated = evidence.undated();
        Stock without = Stock.of(undated, List.of());
        int newest = undated.stream().mapToInt(e -> Math.max(e.subject().facts().modelYear().orElse(0),
                e.subject().facts().firstRegistered().map(LocalDate::getYear).orElse(0))).max().orElseThrow();
        assertEquals(LocalDate.of(newest + 1, 7, 1), without.fallbackDay());
        assertEquals(Optional.empty(), without.end());
        for (int i = 0; i < undated.size(); i++) {
            OptionalDouble age = undated.get(i).subject().facts().ageOn(without.fallbackDay());
            assertEquals(age.orElse(Double.NaN), without.age(i));
        }
    }

    @Test
    void rows_seen_lately_are_those_of_the_last_days() {
        LocalDate end = stock.end().orElseThrow();
        for (int i = 0; i < evidence.size(); i++) {
            LocalDate first = evidence.seen(i).first().orElseThrow();
            LocalDate last = evidence.seen(i).last().orElseThrow();
            assertEquals(!last.isBefore(end.minusDays(14)), stock.seenLately(i, 14));
            assertEquals(ChronoUnit.DAYS.between(first, last), stock.stood(i));
        }
    }
}
