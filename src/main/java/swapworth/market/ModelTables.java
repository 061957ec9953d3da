package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.reading.DistanceUnit;
import swapworth.statistics.RatioStudy;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What a model says of itself: its terms, its fit, its comparables, as tables. */
public final class ModelTables {

    private ModelTables() {
    }

    /**
     * The terms of a model with their ranges.
     *
     * @param model the model
     * @param unit the unit in which the user's distances are shown
     * @return one row a term
     */
    public static Table terms(PriceModel model, DistanceUnit unit) {
        PriceModel.MiddleCar middle = model.middleCar();
        int cars = model.cars().size();
        Table.Builder table = Table.titled("Terms of the price model, effect on price")
                .note(cars + (cars == 1 ? " car with " : " cars with ") + model.prices() + (model.prices() == 1 ? " price" : " prices")
                        + ". Slopes are those at the middle car: "
                        + Cell.format(middle.ageYears(), 1) + " years"
                        + (model.lastSeen().isPresent() ? "" : " (counted to the middle of the year after the newest model year, for no"
                        + " row has a date)") + ", " + Figures.rounded(unit.fromMiles(middle.miles())) + " "
                        + unit.symbol()
                        + "; further away they bend. Steps are against: private asking, fees and tax not in the price, clean title,"
                        + " drives, no damage, sound.")
                .note("The prior's share is posterior over prior variance: 0 % where the listings have settled the matter, 100 % where only"
                        + " the assumption speaks.")
                .columns(Column.words("term"), Column.words("unit"), Column.number("effect", ""), Column.number("80 % range", ""),
                        Column.number("95 % range", ""), Column.number("prior's share", ""), Column.number("prices that tell of it", ""));
        model.columnsTaken().forEach(taken -> table.note("Further column " + taken + "."));
        model.slopesInDoubt().ifPresent(words -> table.note("Caution: " + words + "."));
        model.confounded().forEach(c -> table.note("Caution: " + c.sentence() + "."));
        model.againstOrder().forEach(a -> table.note("Caution: " + a.sentence() + "."));
        Optional<TermEffect> step = model.stepAtRoundDistances(unit);
        step.ifPresent(s -> table.note("The last row is no term and in no value: whether buyers look at the first figures of a distance is"
                + " told by how far each price, its car left out, lies off its value (round_distance_step)."));
        for (TermEffect t : Stream.concat(model.terms().stream().map(effect -> effect.in(unit)), step.stream()).toList()) {
            table.row(Cell.words(t.label()), Cell.words(t.unit()), Cell.signed(t.percent(), 1), range(t.low80(), t.high80()),
                    range(t.low95(), t.high95()), Figures.share(t.priorShare()), Cell.whole(t.rows()));
        }
        return table.build();
    }

    private static Cell range(double low, double high) {
        return Cell.words(Cell.signed(low, 1).shown() + " to " + Cell.signed(high, 1).shown());
    }

    /**
     * How well the model meets the prices, each car left out of the model that values it.
     *
     * @param model the model
     * @param study the study of its misses
     * @return one row a figure, with the band in which mass appraisal of property wants it
     */
    public static Table fit(PriceModel model, FitStudy study) {
        RatioStudy r = study.ratios();
        List<Map.Entry<String, Double>> byScatter = model.scatterOfLines().entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry.comparingByKey())).toList();
        return Table.titled("How well values meet prices, each with its own car left out")
                .note(r.n() + " prices of " + model.cars().size() + " cars. Ratio = value / price, each as it was seen."
                        + (study.leftOut() == 0 ? "" : " Prices off their value by more than a factor of 5, as typing errors are: "
                        + study.leftOut() + ", counted from the median miss on only."))
                .note("The reference bands are those of mass appraisal of property (IAAO, Standard on Ratio Studies, 2013). Asking prices "
                        + "of cars scatter more: read the bands as a sanity check, not as a mark to pass.")
                .columns(Column.words("figure"), Column.number("found", ""), Column.words("reference band"),
                Column.sentences("what it says"))
                .row(Cell.words("median ratio"), Cell.number(r.median(), 3), Cell.words("0.90 to 1.10"),
                        Cell.words("1 where values stand neither high nor low"))
                .row(Cell.words("coefficient of dispersion (COD), %"), Cell.number(r.cod(), 1), Cell.words("5 to 15, mixed kinds to 20"),
                        Cell.words("mean distance of a ratio from the median ratio"))
                .row(Cell.words("price-related differential (PRD)"), Cell.number(r.prd(), 3), Cell.words("0.98 to 1.03"),
                        Cell.words("above: dear cars valued too low against cheap ones"))
                .row(Cell.words("price-related bias (PRB)"), Cell.number(r.prb(), 3), Cell.words("-0.05 to +0.05"),
                        Cell.words("relative change of the ratio where the value doubles"))
                .row(Cell.words("error of one car about the fit, %"), Cell.number(model.errorPercent(), 1), Cell.words(""),
                        Cell.words("scale of the errors at the middle age"))
                .row(Cell.words("tails of prices, Student's t"), Cell.number(model.tail().degreesOfFreedom(), 0), Cell.words("4 assumed"),
                        Cell.words("degrees of freedom (3 heavy, 30 light), " + model.tail().residuals() + " cars"))
                .row(Cell.words("ranges stretched by the factor"), Cell.number(model.stretched().factor(), 2), Cell.words(""),
                        Cell.words("found by the prices of " + model.stretched().residuals() + " cars, each left out; 1 leaves ranges as "
                                + "they are; used for cars, levels of trade and days that the listings hold"))
                .row(Cell.words("prices of lines scatter by the factors"), Cell.words(factors(byScatter)), Cell.words(""),
                        Cell.words((byScatter.isEmpty() ? "" : "the least " + byScatter.get(0).getKey() + ", the most "
                                + byScatter.get(byScatter.size() - 1).getKey() + ": ") + "a line's own scatter over that of the middle car;"
                                + " its ranges are as much wider (spread_line_scatter)"))
                .row(Cell.words("crashed and dead cars scatter by the factor"), Cell.number(model.scatterOfTroubled(), 2),
                        Cell.words(""), Cell.words(study.troubled().prices() == 0
                                ? "assumed (scatter_of_troubled): no price of such a car has a value"
                                : "branded ones too, in the fit (scatter_of_troubled); what the fit has not learned of it stands below"))
                .row(Cell.words("their ranges stretched by the factor"), Cell.number(model.stretchedTroubled().factor(), 2), Cell.words(""),
                        Cell.words("beyond that, found by the prices of " + model.stretchedTroubled().residuals()
                                + (model.stretchedTroubled().residuals() == 1 ? " such car" : " such cars")))
                .row(Cell.words("median miss, % of value"), Cell.number(study.medianMissPercent(), 1), Cell.words(""),
                        Cell.words("half of the prices lie nearer to their value"))
                .row(Cell.words("prices inside their 80 % range, %"), Cell.number(study.all().percent80(), 0), Cell.words("80"),
                        Cell.words("what the ranges promise"))
                .row(Cell.words("prices inside their 95 % range, %"), Cell.number(study.all().percent95(), 0), Cell.words("95"),
                        Cell.words("what the ranges promise"))
                .row(Cell.words("crashed, branded and dead cars inside their 80 % range, %"),
                        inside(study.troubled(), study.troubled().percent80()),
                        Cell.words("80"), Cell.words("of " + study.troubled().prices()
                                + (study.troubled().prices() == 1 ? " price of such cars" : " prices of such cars")))
                .row(Cell.words("crashed, branded and dead cars inside their 95 % range, %"),
                        inside(study.troubled(), study.troubled().percent95()),
                        Cell.words("95"), Cell.words("the same prices; in so few cars some lie outside by chance"))
                .build();
    }

    private static String factors(List<Map.Entry<String, Double>> byScatter) {
        return byScatter.isEmpty() ? "one line" : Cell.format(byScatter.get(0).getValue(), 2) + " to "
                + Cell.format(byScatter.get(byScatter.size() - 1).getValue(), 2);
    }

    private static Cell inside(FitStudy.Inside some, double percent) {
        return some.prices() == 0 ? Cell.BLANK : Cell.number(percent, 0);
    }

    /**
     * The comparables of a value, adjusted toward it line by line, with the two lines that close the grid.
     *
     * @param grid the comparables
     * @param currency code of the base currency
     * @return one row a comparable, then the closing lines
     */
    public static Table comparables(Comparables grid, String currency) {
        Table.Builder table = Table.titled("Comparables adjusted toward the car, " + currency);
        List<Column> columns = new ArrayList<>(List.of(Column.words("car"), Column.sentences("what it is"), Column.words("seen"),
                Column.words("level of trade"), Column.number("price", "")));
        grid.groups().forEach(g -> columns.add(Column.number("x " + g, "").key("factor_" + g.replace(' ', '_'))));
        columns.addAll(List.of(Column.number("adjusted", ""), Column.number("net", "%"), Column.number("gross", "%")));
        table.columns(columns.toArray(Column[]::new));
        table.note("Price times the factors of its row is the adjusted price. Their geometric mean (product, then root "
                + grid.rows().size() + "), times the two closing factors, is the value.");
        if (!grid.bracketing().isEmpty()) {
            table.note("The car's " + String.join(", its ", grid.bracketing()) + ".");
        }
        for (Comparables.Comparable c : grid.rows()) {
            List<Cell> row = new ArrayList<>(List.of(Cell.words(c.car()), Cell.words(c.listing().facts().brief()),
                    Cell.words(c.listing().seenOn().map(java.time.LocalDate::toString).orElse("")),
                    Cell.words(c.listing().level().words()), Cell.number(c.listing().price().amount(), 0)));
            c.factors().forEach(f -> row.add(Cell.number(f, 4)));
            row.addAll(List.of(Cell.number(c.adjusted(), 0), Cell.signed(c.netPercent(), 1), Cell.number(c.grossPercent(), 1)));
            table.row(row);
        }
        closing(table, grid, "their geometric mean", Cell.number(grid.geometricMean(), 0));
        closing(table, grid, "x all other listings", Cell.number(grid.otherListings(), 4));
        closing(table, grid, "x assumptions", Cell.number(grid.assumptions(), 4));
        closing(table, grid, "fair value", Cell.number(grid.value(), 0));
        return table.build();
    }

    private static void closing(Table.Builder table, Comparables grid, String words, Cell figure) {
        List<Cell> row = new ArrayList<>(List.of(Cell.words(words), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK));
        grid.groups().forEach(g -> row.add(Cell.BLANK));
        row.addAll(List.of(figure, Cell.BLANK, Cell.BLANK));
        table.row(row);
    }
}
