package swapworth.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.Airbags;
import swapworth.listing.CarsFile;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.IndexTables;
import swapworth.market.Judged;
import swapworth.market.Judgement;
import swapworth.market.Position;
import swapworth.market.PriceModel;
import swapworth.market.Valued;
import swapworth.table.Table;

/** The page of the sample folder. */
class ListingsPageTest {

    private static ListingsRead read;
    private static Judged judged;
    private static String html;

    @BeforeAll
    static void makeThePage() {
        read = Listings.read(Path.of("sample-listings/listings.csv"));
        PriceModel model = PriceModel.fit(read.cars());
        judged = Judged.of(read, model, Optional.empty(), Optional.empty());
        Valued cars = Valued.of(CarsFile.read(Path.of("sample-listings/cars.csv"), read.baseCurrency()).cars(), model,
                read.baseCurrency(), Optional.empty(), Optional.empty());
        html = ListingsPage.of("sample", judged).withCarsInPlay(cars).withMissingFiles(List.of("further files")).page().html();
    }

    @Test
    void a_car_in_play_shows_its_facts_its_comparables_and_what_holds_its_value() {
        String why = html.substring(html.indexOf("id=\"play-2\""), html.indexOf("id=\"play-3\""));
        assertTrue(html.contains("<summary>Why: the comparables of dead roadster, Sivrette</summary>"), why);
        assertTrue(why.contains("The row says: Sivrette Fitted 2014; 98,000 mi, read; title clean; engine dead; damage none; rust worn; "),
                why);
        assertTrue(why.contains("Not stated: records, keys, airbags."), why);
        assertTrue(why.contains("(private asking on 2026-10-30), 80"), why);
        assertTrue(why.contains("of what is unsure about its level, the largest part &#39;"), why);
        assertTrue(why.contains("their geometric mean"), why);
        assertTrue(html.contains("href=\"#play-2\""), "the table leads to it");
        assertFalse(html.contains("id=\"play-6\""), "a finished swap has no value among listings");
    }

    @Test
    void what_cars_leave_open_is_counted_beside_the_terms() {
        String model = html.substring(html.indexOf("<section id=\"model\">"));
        assertTrue(model.contains("What cars do not state, and how they are taken for it"));
        assertTrue(model.contains("driven as far as is usual for its line at that age"), "the sample has cars without a mileage");
    }

    @Test
    void a_listing_s_comparables_say_what_they_are() {
        String why = html.substring(html.indexOf("id=\"car-1\""), html.indexOf("id=\"car-2\""));
        assertTrue(why.contains("Drisque Plain 2019; "), why);
        assertTrue(why.contains("what it is"), why);
        assertTrue(Pattern.compile("Drisque Plain 20\\d\\d, [0-9,]+ mi").matcher(why).results().count() >= 3, why);
    }

    @Test
    void a_picture_of_cars_not_yet_sold_needs_one_that_is(@TempDir Path folder) throws IOException {
        StringBuilder rows = new StringBuilder("id,seen_on,vehicle,model_year,mileage,price,outcome,ended_on\n");
        for (int k = 0; k < 24; k++) {
            rows.append("c").append(k).append(",2026-0").append(1 + k % 6).append("-05,Sivrette,").append(2011 + k % 5).append(',')
                    .append(60_000 + 1_000 * k).append(',').append(9_000 + 70 * (k % 7)).append(",,\n");
        }
        assertFalse(market(folder, rows.toString()).contains("Share not yet sold"));
        assertTrue(market(folder, rows.toString().replace("10570,,", "10570,sold,2026-06-20").replace("9070,,", "9070,sold,2026-06-20"))
                .contains("Share not yet sold"));
    }

    private static String market(Path folder, String listings) throws IOException {
        ListingsRead some = Listings.read(Files.writeString(folder.resolve("listings.csv"), listings));
        return Page.of("market", "", MarketSection.of(PriceModel.fit(some.cars()))).html();
    }

    @Test
    void of_very_many_cars_on_offer_the_lowest_against_their_value_are_in_sight(@TempDir Path folder) throws IOException {
        for (int cars : new int[] {59, 80}) {
            StringBuilder rows = new StringBuilder("id,seen_on,vehicle,model_year,mileage,price\n");
            for (int k = 0; k < cars; k++) {
                rows.append("c").append(k).append(",2026-06-05,Sivrette,").append(2011 + k % 5).append(',').append(60_000 + 700 * k)
                        .append(',').append(9_000 + 61 * (k * 37 % cars)).append('\n');
            }
            ListingsRead some = Listings.read(Files.writeString(folder.resolve("listings.csv"), rows));
            Judged judged = Judged.of(some, PriceModel.fit(some.cars()), Optional.empty(), Optional.empty());
            String page = ListingsPage.of("some", judged).page().html();
            String inSight = page.substring(page.indexOf("id=\"on-offer\""), page.indexOf("<details", page.indexOf("id=\"on-offer\"")));
            List<String> cheapest = judged.stillOffered().stream().map(Judgement::car).toList();
            assertEquals(cars, cheapest.size());
            assertTrue(inSight.contains(">" + cheapest.get(0) + "<"), "the lowest");
            assertEquals(cars == 59, inSight.contains(">" + cheapest.get(30) + "<"), "the thirty-first");
            assertEquals(cars == 80, page.contains("All 80 cars on offer"));
            assertEquals(cars == 80, inSight.contains("the 30 lowest against their value"));
        }
    }

    @Test
    void all_that_stand_below_their_range_are_in_sight(@TempDir Path folder) throws IOException {
        StringBuilder rows = new StringBuilder("id,seen_on,vehicle,model_year,mileage,price\n");
        for (int k = 0; k < 300; k++) {
            double off = k % 7 == 0 ? 0.55 + 0.001 * k : 1 + 0.02 * Math.sin(k);
            rows.append("c").append(k).append(",2026-06-05,Sivrette,").append(2011 + k % 5).append(',').append(60_000 + 70 * k).append(',')
                    .append(Math.round(9_000 * off)).append('\n');
        }
        ListingsRead some = Listings.read(Files.writeString(folder.resolve("listings.csv"), rows));
        Judged judged = Judged.of(some, PriceModel.fit(some.cars()), Optional.empty(), Optional.empty());
        long below = judged.stillOffered().stream().filter(j -> j.position() == Position.BELOW).count();
        assertTrue(below > 30 && below <= 100, below + " below");
        String page = ListingsPage.of("some", judged).page().html();
        assertTrue(page.contains("the " + below + " lowest against their value"), below + " below");
    }

    @Test
    void of_many_lines_those_with_most_cars_are_shown(@TempDir Path folder) throws IOException {
        StringBuilder rows = new StringBuilder("id,seen_on,vehicle,model_year,mileage,price\n");
        for (int k = 0; k < 360; k++) {
            int line = k < 240 ? k % 120 : k % 100;
            rows.append("c").append(k).append(",2026-0").append(1 + k % 7).append("-05,Line ").append((char) ('a' + line % 20))
                    .append(line).append(',').append(2011 + k % 5).append(',').append(60_000 + 900 * (k % 37)).append(',')
                    .append(9_000 + 60 * (k % 11)).append('\n');
        }
        ListingsRead some = Listings.read(Files.writeString(folder.resolve("listings.csv"), rows));
        PriceModel model = PriceModel.fit(some.cars());
        Table drifts = IndexTables.lines(model, model.index().orElseThrow());
        assertEquals(100, drifts.rows().size());
        assertTrue(drifts.notes().toString().contains("Shown are the 100 lines with most cars, of 120"), drifts.notes().toString());
        String page = ListingsPage.of("some", Judged.of(some, model, Optional.empty(), Optional.empty())).page().html();
        assertTrue(page.contains(" and 84 more."), "of 120 lines 6 have a chart and 30 are named");
    }

    @Test
    void three_counts_stand_at_its_top() {
        assertTrue(html.indexOf("787 rows: 784 used, 2 set aside, 1 rejected") < html.indexOf("<nav"), "before the contents");
    }

    @Test
    void every_link_within_it_leads_somewhere_and_no_id_stands_twice() {
        java.util.Set<String> ids = new java.util.HashSet<>();
        Matcher id = Pattern.compile(" id=\"([^\"]+)\"").matcher(html);
        while (id.find()) {
            assertTrue(ids.add(id.group(1)), id.group(1) + " stands twice");
        }
        Matcher link = Pattern.compile("href=\"#([^\"]+)\"").matcher(html);
        int links = 0;
        while (link.find()) {
            links++;
            assertTrue(ids.contains(link.group(1)), "nothing at #" + link.group(1));
        }
        assertTrue(links > 1000, "each row of the tables leads to its comparables");
    }

    @Test
    void it_needs_neither_script_nor_network() {
        assertFalse(html.contains("<script"));
        assertFalse(Pattern.compile("(src|href)=\"(https?:)?//").matcher(html).find());
        assertTrue(html.contains("default-src 'none'"));
    }

    @Test
    void axes_count_in_plain_numbers_and_pictures_have_words() {
        assertFalse(Pattern.compile(">[0-9.]+E[0-9]+<").matcher(html).find(), "no 1.2E5");
        assertTrue(html.contains(">100,000</text>"));
        Matcher picture = Pattern.compile("<svg class=\"chart\"[^>]*>").matcher(html);
        int pictures = 0;
        while (picture.find()) {
            pictures++;
            assertTrue(picture.group().contains("role=\"img\"") && picture.group().contains("aria-label=\""), picture.group());
        }
        assertEquals(8, pictures, "one a line, asked against value, terms");
    }

    @Test
    void cautions_stand_on_it_with_their_sources() {
        assertTrue(html.contains("no appraisal"));
        assertTrue(html.contains("49 CFR 173.166"), "airbags of crashed cars");
        assertTrue(html.contains("49 CFR 580.5"), "two mileages");
    }

    @Test
    void a_page_of_sound_cars_is_spared_the_cautions_of_crashed_ones() {
        var sound = read.cars().stream().filter(c -> !c.facts().isTroubled()
                && c.facts().airbags() != Airbags.FIRED && c.facts().airbags() != Airbags.GONE).toList();
        ListingsRead part = new ListingsRead(read.counts(), sound.stream().flatMap(c -> c.sightings().stream()).toList(), sound, List.of(),
                List.of(), List.of(), List.of(), List.of(), read.columns(), read.baseCurrency(), read.distanceUnit(), List.of());
        String page = ListingsPage.of("sound", Judged.of(part, PriceModel.fit(sound), Optional.empty(), Optional.empty())).page().html();
        assertFalse(page.contains("49 CFR 173.166"));
        assertTrue(page.contains("49 CFR 580.5"));
    }

    @Test
    void it_is_the_same_in_every_language_of_the_machine() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            PriceModel model = PriceModel.fit(read.cars());
            Judged again = Judged.of(read, model, Optional.empty(), Optional.empty());
            assertEquals(judged.inFileOrder("").text(), again.inFileOrder("").text());
            assertEquals(ListingsPage.of("sample", judged).page().html(), ListingsPage.of("sample", again).page().html());
        } finally {
            Locale.setDefault(before);
        }
    }
}
