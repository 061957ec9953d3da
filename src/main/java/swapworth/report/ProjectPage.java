package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import swapworth.assumptions.Question;
import swapworth.chart.ProjectCharts;
import swapworth.project.Alternatives;
import swapworth.project.Category;
import swapworth.project.DrawFigures;
import swapworth.project.Entry;
import swapworth.project.Equity;
import swapworth.project.Extras;
import swapworth.project.FinishOrStop;
import swapworth.project.Forecast;
import swapworth.project.Gates;
import swapworth.project.Job;
import swapworth.project.Ledger;
import swapworth.project.LedgerSums;
import swapworth.project.NowOrLater;
import swapworth.project.RedoCost;
import swapworth.project.Undertaking;
import swapworth.project.WalkAway;
import swapworth.statistics.Quantiles;
import swapworth.swap.SwapValue;
import swapworth.table.Cell;
import swapworth.table.Table;

/** The page of an undertaking; its sections stand on the page of a folder too. */
public final class ProjectPage {
    static final String GATES = "gates";
    static final String LEDGER = "ledger";
    static final String LEFT = "equity";
    static final String JOB = "job";
    static final String AGAINST = "alternatives";
    static final String FINISH_OR_STOP = "finish";
    static final String NOW_OR_LATER = "now-or-later";
    private static final String ROWS = "ledger-";

    private final Undertaking undertaking;

    private ProjectPage(Undertaking undertaking) {
        this.undertaking = requireNonNull(undertaking, "undertaking");
    }

    /**
     * The page of an undertaking.
     *
     * @param name what the undertaking is called, for the title
     * @param undertaking the undertaking
     * @return the page
     */
    public static Page of(String name, Undertaking undertaking) {
        return of(name, undertaking, List.of(), new InShort(List.of()));
    }

    /**
     * The page of an undertaking with what else its folder says.
     *
     * @param name what the undertaking is called, for the title
     * @param undertaking the undertaking
     * @param more sections that stand before those of the money
     * @param inShort the answers in short, before all else but what must be settled first
     * @return the page
     */
    public static Page of(String name, Undertaking undertaking, List<Section> more, InShort inShort) {
        List<Section> sections = new ArrayList<>();
        undertaking.market().ifPresent(m -> sections.addAll(CarsSection.toLookAt(m.cars())));
        sections.addAll(more);
        sections.addAll(sections(undertaking));
        if (!undertaking.missing().isEmpty()) {
            sections.add(Section.of("further", "What further files would answer", Part.bullets(undertaking.missing())));
        }
        boolean parts = more.stream().anyMatch(s -> s.id().equals(DonorSections.PARTS));
        if (parts || !more.isEmpty() || speaksOfDonors(undertaking)) {
            sections.add(parts ? DonorSections.cautions() : DonorSections.cautionsOfCrashes());
        }
        List<Section> head = first(undertaking);
        sections.addAll(0, head);
        inShort.section(sections).ifPresent(answers -> sections.add(head.size(), answers));
        return Page.of(name + ": the undertaking", new ProjectPage(undertaking).lead(), sections);
    }

    /** Whether its rows or its cars in play speak of a car that is taken apart. */
    private static boolean speaksOfDonors(Undertaking undertaking) {
        return undertaking.ledger().stream().flatMap(l -> l.sums().byCar().stream()).anyMatch(sum -> sum.name().equals("donor")
                && sum.rows() > 0) || undertaking.market().stream().flatMap(m -> m.cars().cars().stream())
                .anyMatch(Cautions::areNeededFor);
    }

    /**
     * What must be read before all else.
     *
     * @param undertaking the undertaking
     * @return the gates, where the folder has any
     */
    public static List<Section> first(Undertaking undertaking) {
        return undertaking.gates().map(g -> List.of(gates(g))).orElse(List.of());
    }

    /**
     * The sections that the files allow: the money, what is left, what else could be done, with the assumptions and cautions of the
     * money.
     *
     * @param undertaking the undertaking
     * @return no section where the folder has none of the files
     */
    public static List<Section> sections(Undertaking undertaking) {
        ProjectPage page = new ProjectPage(undertaking);
        List<Section> sections = new ArrayList<>();
        undertaking.forecast().ifPresent(f -> sections.addAll(List.of(money(f), toCome(f, undertaking.extras()))));
        undertaking.equity().ifPresent(e -> sections.add(page.left(e)));
        undertaking.job().ifPresent(job -> sections.add(Section.of(JOB, "What the job leaves", Part.rows(job.table()))));
        undertaking.finishOrStop().ifPresent(f -> sections.add(finishOrStop(f)));
        undertaking.redoCost().ifPresent(r -> sections.add(redo(r)));
        undertaking.keeping().ifPresent(k -> sections.add(Section.of("keeping", "What keeping it costs", Part.rows(k.table()))));
        undertaking.alternatives().ifPresent(a -> sections.add(alternatives(a)));
        undertaking.nowOrLater().ifPresent(n -> sections.add(nowOrLater(n)));
        undertaking.walkAway().ifPresent(w -> sections.add(walkAway(w)));
        if (!sections.isEmpty()) {
            sections.add(Section.of("money-cautions", "Assumptions and cautions of the money",
                    Part.folded("money-assumptions", "All assumptions of the money with their sources",
                            Part.rows(undertaking.assumptions().table(Question.PROJECT))),
                    Part.cautions("Before you rely on any of this", Cautions.ofMoney())));
        }
        return sections;
    }

    private String lead() {
        if (undertaking.ledger().isEmpty() || undertaking.forecast().isEmpty()) {
            return "Without rows of a ledger what is spent, still to come and left is not told.";
        }
        Ledger ledger = undertaking.ledger().get();
        String left = undertaking.equity().map(Equity::sentence).or(() -> undertaking.job().map(Job::sentence)).map(words -> " " + words)
                .orElse("");
        return inIt(ledger, undertaking.forecast().get()) + left + " " + ledger.read().sentence() + "."
                + ledger.notesOfWhatStandsApart().stream().map(note -> " " + note).collect(Collectors.joining());
    }

    /** What is in it, and what it will be. */
    static String inIt(Ledger ledger, Forecast forecast) {
        String unit = ledger.currency().getCurrencyCode();
        return "As of " + ledger.on() + " you have " + unit + " " + Cell.amount(ledger.sums().total().net()).shown()
                + " in it, net of refunds and of what was sold. "
                + (ledger.hasNothingToCome() ? ledger.allDone() + ": what it will be at completion is not told until the ledger has rows of"
                + " what is still to be paid (status committed or estimate)."
                : "At completion it will be " + unit + " " + DrawFigures.withRange(forecast.total()) + ".");
    }

    private static Section gates(Gates gates) {
        List<Part> parts = new ArrayList<>();
        List<String> warnings = gates.warnings();
        parts.add(warnings.isEmpty() ? Part.prose("Every gate is open by your own answers.")
                : Part.cautions("Not settled yet: ask before you spend more", warnings));
        parts.add(Part.rows(gates.table()));
        problems(parts, gates.read().table());
        return new Section(GATES, "What must be settled first", parts);
    }

    private static void problems(List<Part> parts, Table problems) {
        if (!problems.rows().isEmpty()) {
            parts.add(Part.rows(problems));
        }
    }

    private static Section money(Forecast forecast) {
        Ledger ledger = forecast.ledger();
        LedgerSums sums = ledger.sums();
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose("Every figure is a sum of rows of the ledger, each rounded to the smallest coin, so that you can add it again."
                + " A category leads to its rows. Own hours stand apart: they are in no amount."));
        parts.add(Part.rows(sums.byCategoryTable("#" + ROWS)));
        parts.add(Part.picture(ProjectCharts.moneyWaterfall(forecast)));
        if (!forecast.drivers().isEmpty()) {
            parts.add(Part.prose("The step from the likely amounts to the forecast is the reserve for what nobody thought of (unless the"
                    + " ledger has its own), what such estimates usually overrun by, and what the market does to them. The last bar is the"
                    + " median of the forecast, which 'What is still to come' shows with its ranges."));
        }
        List<Table> others = sums.tables();
        others.subList(1, others.size()).forEach(table -> parts.add(Part.rows(table)));
        problems(parts, ledger.read().table());
        for (Category category : ledger.all().map(Entry::category).collect(Collectors.toCollection(TreeSet::new))) {
            Table rows = sums.rowsOf(category);
            parts.add(Part.folded(ROWS + category.words().replace(' ', '-'), category.words() + ": " + rows.rows().size()
                    + (rows.rows().size() == 1 ? " row" : " rows"), Part.rows(rows)));
        }
        return new Section(LEDGER, "Where the money is", parts);
    }

    private static Section toCome(Forecast forecast, Optional<Extras> extras) {
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose("What is paid and agreed stands as it is. Estimates are drawn " + Cell.format(forecast.count(), 0)
                + " times between their low and high ends, or around the likely amount with the spread of their category from the"
                + " assumptions. One outcome in ten lies below the 80 % range and one in ten above it."));
        parts.add(Part.rows(forecast.figures()));
        parts.add(Part.picture(ProjectCharts.cashByMonth(forecast)));
        parts.add(Part.rows(forecast.spread()));
        if (!forecast.drivers().isEmpty()) {
            parts.add(Part.picture(ProjectCharts.drivers(forecast)));
        }
        extras.ifPresent(e -> parts.add(Part.rows(e.table())));
        return new Section("forecast", "What is still to come", parts);
    }

    /**
     * Which value of the finished car is in what is left.
     *
     * @param undertaking the undertaking
     * @return a sentence with its day and level of trade; nothing without such a value, or where the car is sold
     */
    public static Optional<String> valueInIt(Undertaking undertaking) {
        return undertaking.equity().filter(e -> e.sale().isEmpty()).flatMap(e -> undertaking.finished()).map(f ->
                "The value in what is left is that of '" + f.car().name() + "' (" + f.level().sold().words()
                + f.on().map(d -> ", " + d).orElse("") + "): what is paid for such a car counts, not what is asked for it"
                + untilDone(undertaking).map(words -> "; " + words).orElse("") + ".");
    }

    /**
     * What market and age do between the day of the value and the month in which the car is done, or is the day of the ledger where all is
     * done, is in no figure of what is left: by how much they move the value until then, where the outlook of the market reaches so far.
     */
    static Optional<String> untilDone(Undertaking undertaking) {
        Optional<LocalDate> on = undertaking.finished().flatMap(SwapValue::on);
        Optional<YearMonth> done = undertaking.ledger().flatMap(l -> l.sums().doneIn());
        Optional<YearMonth> until = done.or(() -> undertaking.ledger().map(l -> YearMonth.from(l.on())));
        if (on.isEmpty() || until.isEmpty() || !until.get().isAfter(YearMonth.from(on.get()))) {
            return Optional.empty();
        }
        int months = (int) ChronoUnit.MONTHS.between(YearMonth.from(on.get()), until.get());
        boolean now = undertaking.market().flatMap(m -> m.model().lastSeen()).equals(on);
        return Optional.of("what market and age do to its price until " + done.map(month -> "it is done in " + month)
                .orElse(until.get() + ", the month of the ledger,") + " is not in it"
                + undertaking.nowOrLater().filter(n -> now && months <= n.months()).map(n -> {
                    // The exits of later months are of the car as much older.
                    double more = Quantiles.median(n.exit().get(months - 1)) - Quantiles.median(n.exitNow());
                    return ": about " + Cell.format(Math.abs(more), 0) + (more < 0 ? " less" : " more")
                            + " by the outlook and by ageing as the listings tell it";
                }).orElse(""));
    }

    private Section left(Equity equity) {
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose(equity.sale().map(s -> "The finished car is sold: what came in for it by " + s.on() + ", "
                + Cell.amount(s.received()).shown() + " net of its fee, stands in place of its value. ")
                .or(() -> undertaking.finished().map(f -> valueInIt(undertaking).orElse("") + " " + f.held() + ". ")).orElse("")
                + undertaking.otherFinished().map(words -> "But " + words + ". ").orElse("")
                + "Cash, cost of money and own hours stand apart, so that you can stop reading where you count."));
        equity.tables().forEach(table -> parts.add(Part.rows(table)));
        parts.add(Part.picture(ProjectCharts.equity(equity)));
        if (!undertaking.narrowing().isEmpty()) {
            parts.add(Part.bullets(undertaking.narrowing()));
        }
        return new Section(LEFT, "What is left", parts);
    }

    private static Section finishOrStop(FinishOrStop choice) {
        List<Part> parts = new ArrayList<>();
        choice.tables().forEach(table -> parts.add(Part.rows(table)));
        return new Section(FINISH_OR_STOP, "Finish or stop", parts);
    }

    private static Section redo(RedoCost redo) {
        List<Part> parts = new ArrayList<>();
        redo.tables().forEach(table -> parts.add(Part.rows(table)));
        parts.add(Part.bullets(redo.evidence()));
        return new Section("redo", "What it would cost to do it again" + (redo.sale().isPresent() ? "" : ", and the sum to insure"), parts);
    }

    private static Section alternatives(Alternatives alternatives) {
        List<Part> parts = new ArrayList<>();
        alternatives.tables().forEach(table -> parts.add(Part.rows(table)));
        parts.add(Part.picture(ProjectCharts.alternatives(alternatives)));
        problems(parts, alternatives.rowsRead().table());
        return new Section(AGAINST, "Against what", parts);
    }

    private static Section nowOrLater(NowOrLater choice) {
        List<Part> parts = new ArrayList<>();
        choice.tables().forEach(table -> parts.add(Part.rows(table)));
        parts.add(Part.picture(ProjectCharts.nowOrLater(choice)));
        return new Section(NOW_OR_LATER, "Now or later", parts);
    }

    private static Section walkAway(WalkAway walkAway) {
        return Section.of("walk-away", "When to walk away from a whole car", Part.rows(walkAway.table()));
    }
}
