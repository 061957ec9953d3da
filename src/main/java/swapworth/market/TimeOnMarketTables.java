package swapworth.market;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import swapworth.listing.Seller;
import swapworth.market.TimeOnMarket.Asked;
import swapworth.market.TimeOnMarket.Clock;
import swapworth.market.TimeOnMarket.Vanished;
import swapworth.statistics.Survival;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** The time on market as tables. */
final class TimeOnMarketTables {
    /** With more days between two looks, and ends of unknown days, ranges of the median miss where cars of one age are sold together. */
    private static final int SELDOM = 14;

    private TimeOnMarketTables() {
    }

    static List<Table> of(TimeOnMarket time) {
        return List.of(untilSale(time), cuts(time), paid(time));
    }

    private static Table untilSale(TimeOnMarket time) {
        Table.Builder table = Table.titled("Days on offer until a sale")
                .note(counted(time))
                .note("Cars still open, and those withdrawn, count as not sold until their last day; one whose end no row dates, ended"
                        + " between its last sighting and the next look. A car that vanished may be sold or not: but"
                        + " for chance, such cars lie between the two curves.")
                .columns(Column.words("cars"), Column.words("vanished ones"), Column.number("cars on offer", ""), Column.number("sold", ""),
                        Column.number("median days", ""), Column.number("95 % from", ""), Column.number("95 % to", ""),
                        Column.number("unsold after 30 days", ""), Column.number("unsold after 60 days", ""));
        boolean open = false;
        for (Vanished vanished : Vanished.values()) {
            Survival survival = time.untilSale(vanished);
            row(table, "all", vanished, survival);
            open |= isOpen(survival);
        }
        for (Asked asked : Asked.values()) {
            Survival survival = time.untilSale(asked, Vanished.NOT_SOLD);
            if (survival.size() > 0) {
                row(table, asked.words(), Vanished.NOT_SOLD, survival);
                open |= isOpen(survival);
            }
        }
        if (time.untilSale(Vanished.SOLD).endings() == 0) {
            table.note("No car seen on offer is known to be sold since, and none vanished: how long a sale takes is not told. When an"
                    + " advertisement ends, write so into the columns outcome and ended_on.");
        } else if (open) {
            table.note("Not reached: while you watched, too few of these cars were sold to name a day by which half of them are. Under"
                    + " '95 % from' and '95 % to' it means that the rows set the days no such limit.");
        }
        return table.build();
    }

    private static String counted(TimeOnMarket time) {
        int all = time.offers().size();
        if (time.clock() == Clock.SINCE_FIRST_SEEN) {
            return all + " cars, each counted from its first sighting, reposts included: fewer than " + TimeOnMarket.ENOUGH_CARS
                    + " came up between two looks (days on which any car was seen) at most " + TimeOnMarket.LONGEST_GAP + " days apart, or"
                    + " fewer than " + TimeOnMarket.ENOUGH_ENDS + " of them ended. What lies before is missing: half the time between two"
                    + " looks, and all the past of cars that stood there at the first. But a first look finds cars that stand long more"
                    + " often than others. How long such cars take to sell may lie above or below what is shown, and beyond its range.";
        }
        int cameUp = time.untilSale(Vanished.SOLD).size();
        boolean seldom = time.offers().stream().anyMatch(o -> o.gapBefore() > 0 && o.gapAfter() > SELDOM);
        return cameUp + " of " + all + " cars, each counted from the beginning of its offer, reposts included: they came up between two"
                + " looks (days on which any car was seen), on one of the days between." + (all == cameUp ? "" : " Left out are "
                + (all - cameUp) + " that stood there at the first look at their line, or after more than " + TimeOnMarket.LONGEST_GAP
                + " days without one: since when, nobody knows.") + (seldom ? " Where looks lie weeks apart and no row dates the ends, the"
                + " median may come out by a quarter too short, and its range with it: fill ended_on, or look more often." : "");
    }

    private static boolean isOpen(Survival s) {
        return s.endings() > 0 && (s.median().isEmpty() || s.medianHigh95().isEmpty());
    }

    private static void row(Table.Builder table, String cars, Vanished vanished, Survival s) {
        table.row(Cell.words(cars), Cell.words(vanished.words()), Cell.whole(s.size()), Cell.whole(s.endings()), days(s, s.median()),
                days(s, s.medianLow95()), days(s, s.medianHigh95()), unsold(s.at(30)), unsold(s.at(60)));
    }

    private static Cell unsold(OptionalDouble share) {
        return share.isPresent() ? Figures.share(share.getAsDouble()) : Cell.words("not watched so long");
    }

    private static Cell days(Survival s, OptionalDouble days) {
        return days.isPresent() ? Cell.number(days.getAsDouble(), 0) : Cell.words(s.endings() == 0 ? "none sold" : "not reached");
    }

    private static Table cuts(TimeOnMarket time) {
        Table.Builder table = Table.titled("Cuts of asking prices").columns(Column.words("figure"), Column.number("found", ""),
                Column.words("eight of ten"));
        Optional<TimeOnMarket.Cuts> cuts = time.cuts();
        if (cuts.isEmpty()) {
            return table.note("No ask was seen to be cut.").build();
        }
        TimeOnMarket.Cuts c = cuts.get();
        return table.note("From one sighting to the next: a cut between two looks counts on the day of the second.")
                .row(Cell.words("cars on offer"), Cell.whole(c.cars()), Cell.BLANK)
                .row(Cell.words("cars whose ask was cut"), Cell.whole(c.cut()), Cell.BLANK)
                .row(Cell.words("cuts"), Cell.whole(c.cuts()), Cell.BLANK)
                .row(Cell.words("size of a cut, % of the ask before"), Cell.number(c.percent(), 1), range(c.percentRange(), 1))
                .row(Cell.words("days until the first cut"), Cell.number(c.firstAfterDays(), 0), range(c.daysRange(), 0))
                .build();
    }

    private static Cell range(Range range, int decimals) {
        return Cell.words(Cell.format(range.low(), decimals) + " to " + Cell.format(range.high(), decimals));
    }

    private static Table paid(TimeOnMarket time) {
        Table.Builder table = Table.titled("What is paid against the last ask")
                .note("By your own pairs of last ask and sale, both by the same kind of seller, where there are five or more: eight of ten"
                        + " sales to come lie so, and few pairs give a wide range. Else by the assumptions. What an auction brought is no"
                        + " answer to an ask.")
                .columns(Column.words("seller"), Column.number("pairs", ""), Column.number("middle", "%"), Column.words("eight of ten"),
                        Column.words("by"));
        for (TimeOnMarket.Paid p : time.paid()) {
            table.row(Cell.words(p.seller() == Seller.TRADE ? "trade" : "private"), Cell.whole(p.pairs()), Cell.signed(p.percent(), 1),
                    Cell.words(Cell.signed(p.low80(), 1).shown() + " to " + Cell.signed(p.high80(), 1).shown()),
                    Cell.words(p.pairs() > 0 ? "your own pairs" : "assumption"));
        }
        return table.build();
    }
}
