package swapworth.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import swapworth.chart.Chart;
import swapworth.chart.SampleCharts;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** A page of invented results as large as the main job makes them; run as a program, it writes the page, to be looked at. */
final class SamplePage {

    private SamplePage() {
    }

    static Page of(int cars, int grids, List<Chart> charts) {
        List<Section> sections = new ArrayList<>();
        sections.add(Section.of("read", "What was read",
                Part.prose("612 rows of listings.csv: 590 used, 14 set aside, 8 rejected."),
                Part.bullets(List.of("line 17, price: '12.500' can be twelve and a half or twelve thousand five hundred",
                        "line 93, mileage: -4 is below zero"))));
        sections.add(Section.of("judged", "Judged listings", Part.rows(judged(cars))));
        Part[] pictures = charts.stream().map(Part::picture).toArray(Part[]::new);
        sections.add(Section.of("pictures", "The market in pictures", pictures));
        List<Part> folds = new ArrayList<>();
        Random random = new Random(7);
        for (int i = 0; i < grids; i++) {
            folds.add(Part.folded("car-" + i, "Veldra Sprenn no. " + i + ": inside its range, 11,300 USD asked, 10,950 USD fair",
                    Part.rows(grid(random))));
        }
        sections.add(new Section("why", "Why: the comparables of each car", folds));
        sections.add(Section.of("cautions", "Cautions", Part.cautions("Before money changes hands", List.of(
                "An estimate from listings that you chose and collected, not an appraisal.",
                "Airbags and belt tensioners hold charges: leave them to those licensed to handle them."))));
        return new Page("Judged listings, Veldra lines, 2026-11-25",
                "Of 590 cars judged, 41 are asked below, 498 inside and 51 above their 80 % range.", sections, 0);
    }

    private static Table judged(int cars) {
        Random random = new Random(3);
        Table.Builder table = Table.titled("Listings in file order").note("80 % and 95 % ranges of the price of one such car.")
                .columns(Column.number("line", ""), Column.words("id"), Column.words("vehicle"), Column.number("price", "USD"),
                        Column.number("fair value", "USD"), Column.number("80 % from", "USD"), Column.number("80 % to", "USD"),
                        Column.number("95 % from", "USD"), Column.number("95 % to", "USD"), Column.number("gap", "USD"),
                        Column.number("gap", "%").key("gap_percent"), Column.words("position"), Column.words("remarks"));
        for (int i = 0; i < cars; i++) {
            double value = 3_000 + 20_000 * random.nextDouble();
            double price = value * Math.exp(0.2 * random.nextGaussian());
            table.row(Cell.label(i + 2), Cell.words("v" + i).linked("#car-" + i), Cell.words("Veldra Sprenn S"),
                    Cell.number(price, 0), Cell.number(value, 0), Cell.number(value * 0.78, 0), Cell.number(value * 1.28, 0),
                    Cell.number(value * 0.66, 0), Cell.number(value * 1.5, 0), Cell.signed(price - value, 0),
                    Cell.signed(100 * (price / value - 1), 0),
                    Cell.words(price > value * 1.28 ? "above" : price < value * 0.78 ? "below" : "inside"),
                    Cell.words(i % 9 == 0 ? "seen three times since May, the price cut twice" : ""));
        }
        return table.build();
    }

    private static Table grid(Random random) {
        Table.Builder table = Table.titled("Comparables, each adjusted toward the car")
                .columns(Column.words("comparable"), Column.number("price", "USD"), Column.number("mileage", "x"),
                        Column.number("age", "x"), Column.number("condition", "x"), Column.number("time", "x"),
                        Column.number("adjusted", "USD"), Column.number("weight", ""));
        for (int i = 0; i < 8; i++) {
            table.row(Cell.words("Veldra Sprenn, line " + (i + 12)), Cell.number(9_000 + 4_000 * random.nextDouble(), 0),
                    Cell.number(0.9 + 0.2 * random.nextDouble(), 3), Cell.number(0.9 + 0.2 * random.nextDouble(), 3),
                    Cell.number(0.9 + 0.2 * random.nextDouble(), 3), Cell.number(0.9 + 0.2 * random.nextDouble(), 3),
                    Cell.number(9_000 + 4_000 * random.nextDouble(), 0), Cell.number(0.2 * random.nextDouble(), 3));
        }
        return table.build();
    }

    public static void main(String[] args) throws IOException {
        long start = System.nanoTime();
        List<Chart> charts = SampleCharts.six(500, 42);
        long drawn = System.nanoTime();
        int cars = args.length > 1 ? Integer.parseInt(args[1]) : 600;
        Page page = of(cars, cars / 2, charts);
        long built = System.nanoTime();
        String html = page.html();
        long rendered = System.nanoTime();
        page.write(Path.of(args[0]));
        int svg = charts.stream().mapToInt(chart -> chart.svg().length()).sum();
        System.out.println("charts " + (drawn - start) / 1_000_000 + " ms, " + svg + " characters of SVG; tables "
                + (built - drawn) / 1_000_000 + " ms; page " + (rendered - built) / 1_000_000 + " ms, " + html.length()
                + " characters");
        for (Chart chart : charts) {
            System.out.println(chart.svg().length() + " " + chart.title() + " " + chart.trouble().orElse(""));
        }
    }
}
