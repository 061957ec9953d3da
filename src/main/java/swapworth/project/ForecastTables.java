package swapworth.project;

import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** The tables of a forecast. */
final class ForecastTables {
    private final Forecast forecast;
    private final Ledger ledger;
    private final String unit;

    ForecastTables(Forecast forecast) {
        this.forecast = forecast;
        this.ledger = forecast.ledger();
        this.unit = ledger.currency().getCurrencyCode();
    }

    /** Total, still to pay, still to come in and peak, with ranges. */
    Table figures() {
        Table.Builder table = DrawFigures.ranged("Forecast at completion, " + unit + ", as of " + ledger.on(), unit);
        long guesses = ledger.entries().stream().filter(e -> e.status() == Entry.Status.ESTIMATE).count();
        table.note(ledger.entries().size() + (ledger.entries().size() == 1 ? " row, " : " rows, ") + guesses
                + (guesses == 1 ? " of them an estimate; " : " of them estimates; ") + Cell.format(forecast.count(), 0)
                + " draws. Paid and agreed amounts stand as they are; estimates are drawn, those of one category together.");
        if (ledger.hasNothingToCome()) {
            table.note(ledger.allDone() + ". What is still to be paid is not in these figures until it has rows of the status committed or"
                    + " estimate.");
        }
        ledger.notesOfWhatStandsApart().forEach(table::note);
        table.row(Cell.words("in it so far, net"), Cell.number(ledger.sums().total().net().doubleValue(), 2), Cell.BLANK, Cell.BLANK,
                Cell.BLANK, Cell.BLANK);
        DrawFigures.row(table, "still to pay", forecast.toPay());
        DrawFigures.row(table, "still to come in", forecast.toReceive());
        DrawFigures.row(table, "cash in it at completion", forecast.total());
        if (ledger.sums().keptAtCompletion().signum() != 0) {
            DrawFigures.row(table, "less tools kept: what the undertaking costs", forecast.charged());
        }
        Forecast.Peak peak = forecast.peak();
        DrawFigures.row(table, "most cash in it at the end of a month", peak.amounts());
        table.note("The most cash is in it most often at the end of " + peak.month() + " (" + Cell.chanceInWords(peak.chance())
                + " of the draws).");
        return table.build();
    }

    /** Cash in the undertaking, month by month. */
    Table byMonth() {
        Table.Builder table = Table.titled("Cash in the undertaking at the end of each month, " + unit).columns(Column.words("month"),
                Column.number("median", unit), Column.number("80 % from", unit), Column.number("80 % to", unit));
        ledger.notesOfWhatStandsApart().forEach(table::note);
        for (Forecast.MonthOfCash month : forecast.months()) {
            table.row(Cell.words(month.month().toString()), Cell.number(month.middle(), 0), Cell.number(month.low(), 0),
                    Cell.number(month.high(), 0));
        }
        return table.build();
    }

    /** What drives the spread, the largest part of the variance first. */
    Table spread() {
        Table.Builder table = Table.titled("What drives the spread of the forecast").columns(Column.number("line", ""),
                Column.words("estimate"), Column.number("median", unit), Column.number("80 % from", unit), Column.number("80 % to", unit),
                Column.number("part of the variance", "%"));
        if (forecast.drivers().isEmpty()) {
            return table.note("No row still to come is an estimate: nothing in the forecast is unsure.").build();
        }
        table.note("Money that comes in is below 0; parts of the variance are those at a market that stands still. A firm offer or a"
                + " narrower range for the first rows would narrow the forecast most.");
        for (Forecast.Driver driver : forecast.drivers()) {
            table.row(driver.line() == 0 ? Cell.BLANK : Cell.label(driver.line()), Cell.words(driver.name()),
                    Cell.number(driver.middle(), 0), Cell.number(driver.low(), 0), Cell.number(driver.high(), 0),
                    Cell.number(100 * driver.share(), 1));
        }
        return table.build();
    }
}
