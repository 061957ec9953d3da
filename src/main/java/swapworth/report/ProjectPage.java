package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import swapworth.project.Category;
import swapworth.project.Entry;
import swapworth.project.Forecast;
import swapworth.project.Ledger;
import swapworth.project.LedgerSums;
import swapworth.table.Cell;
import swapworth.table.Table;

/** The page of the money of an undertaking; its sections stand on the page of a folder too. */
public final class ProjectPage {
    private static final String ROWS = "ledger-";

    private final Ledger ledger;
    private final Forecast forecast;

    private ProjectPage(Ledger ledger, Forecast forecast) {
        this.ledger = requireNonNull(ledger, "ledger");
        this.forecast = requireNonNull(forecast, "forecast");
    }

    /**
     * The page of a ledger and its forecast.
     *
     * @param name what the undertaking is called, for the title
     * @param ledger the ledger
     * @param forecast its forecast
     * @return the page
     */
    public static Page of(String name, Ledger ledger, Forecast forecast) {
        List<Section> sections = new ArrayList<>(sections(ledger, forecast));
        sections.add(Section.of("cautions", "Cautions", Part.cautions("Before you rely on any of this", Cautions.ofMoney())));
        return Page.of(name + ": the money", lead(ledger, forecast), sections.toArray(Section[]::new));
    }

    /**
     * The sections of a ledger and its forecast.
     *
     * @param ledger the ledger
     * @param forecast its forecast
     * @return sections without cautions
     */
    public static List<Section> sections(Ledger ledger, Forecast forecast) {
        ProjectPage page = new ProjectPage(ledger, forecast);
        return List.of(page.money(), page.toCome());
    }

    private static String lead(Ledger ledger, Forecast forecast) {
        String unit = ledger.currency().getCurrencyCode();
        LedgerSums.Sum total = ledger.sums().total();
        return "As of " + ledger.on() + " you have " + unit + " " + LedgerFigures.amount(total.net()) + " in it, net of refunds and of what was sold. "
                + LedgerFigures.withRange("At completion it will be", forecast.total(), unit) + " " + ledger.read().sentence() + ".";
    }

    private Section money() {
        LedgerSums sums = ledger.sums();
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose("Every figure is a sum of rows of the ledger, each rounded to the smallest coin, so that you can add it again."
                + " A category leads to its rows. Own hours stand apart: they are in no amount."));
        parts.add(Part.rows(sums.byCategoryTable("#" + ROWS)));
        List<Table> others = sums.tables();
        others.subList(1, others.size()).forEach(table -> parts.add(Part.rows(table)));
        Table problems = ledger.read().table();
        if (!problems.rows().isEmpty()) {
            parts.add(Part.rows(problems));
        }
        for (Category category : ledger.entries().stream().map(Entry::category).collect(Collectors.toCollection(java.util.TreeSet::new))) {
            Table rows = sums.rowsOf(category);
            parts.add(Part.folded(ROWS + category.words().replace(' ', '-'), category.words() + ": " + rows.rows().size()
                    + (rows.rows().size() == 1 ? " row" : " rows"), Part.rows(rows)));
        }
        return Section.of("ledger", "Where the money is", parts.toArray(Part[]::new));
    }

    private Section toCome() {
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose("What is paid and agreed stands as it is. Estimates are drawn " + Cell.format(forecast.count(), 0)
                + " times between their low and high ends, or around the likely amount with the spread of their category from the assumptions."
                + " One outcome in ten lies below the 80 % range and one in ten above it."));
        forecast.tables().forEach(table -> parts.add(Part.rows(table)));
        return Section.of("forecast", "What is still to come", parts.toArray(Part[]::new));
    }
}
