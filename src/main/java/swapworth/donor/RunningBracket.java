package swapworth.donor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import swapworth.listing.CandidateCar;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Runs;
import swapworth.market.PriceModel;
import swapworth.market.Range;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RandomNumbers;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What a car that does not run is worth, from both sides: as cars that do not run sell, and as one that runs, less what it costs to make
 * it run, less a margin for the risk. The value lies between the two or near them; where they are far apart, neither is to be trusted.
 *
 * @param car the car
 * @param direct draws of what one such car sells for as it stands; none where the listings cannot tell
 * @param nonRunnersOfLine cars of its line in the listings whose engine is dead or missing
 * @param nonRunners such cars of all lines
 * @param fromRunning draws of its value when it runs, less cost, less margin; none where the listings cannot tell
 * @param engine the median of what an engine for it costs; 0 where no offer names one, and then the second side lacks it
 * @param hours mean of the hours to make it run, which are not priced
 * @param reason why the listings cannot tell a side, where they cannot
 */
public record RunningBracket(CandidateCar car, double[] direct, int nonRunnersOfLine, int nonRunners, double[] fromRunning, double engine,
        double hours, Optional<String> reason) {

    /** Copies the draws in. */
    public RunningBracket {
        direct = direct.clone();
        fromRunning = fromRunning.clone();
    }

    @Override
    public double[] direct() {
        return direct.clone();
    }

    @Override
    public double[] fromRunning() {
        return fromRunning.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RunningBracket bracket && car.equals(bracket.car) && Arrays.equals(direct, bracket.direct)
                && nonRunnersOfLine == bracket.nonRunnersOfLine && nonRunners == bracket.nonRunners
                && Arrays.equals(fromRunning, bracket.fromRunning) && Double.compare(engine, bracket.engine) == 0
                && Double.compare(hours, bracket.hours) == 0 && reason.equals(bracket.reason);
    }

    @Override
    public int hashCode() {
        return (car.hashCode() * 31 + Arrays.hashCode(direct)) * 31 + Arrays.hashCode(fromRunning);
    }

    /** The car and the 80 % range of each side. */
    @Override
    public String toString() {
        return car.name() + ": as it lies " + words(direct) + ", from running " + words(fromRunning);
    }

    /** Whether a car is known not to run. */
    static boolean isNeeded(CandidateCar car) {
        return lacksEngine(car.facts());
    }

    /** Whether the engine is known to be dead or missing. */
    static boolean lacksEngine(CarFacts car) {
        return car.runs() == Runs.ENGINE_DEAD || car.runs() == Runs.NO_ENGINE;
    }

    static RunningBracket of(CandidateCar car, PriceModel model, ValueDraws values, PartsMarket parts, MarketState state,
            AssumptionDraws draws) {
        CarFacts running = car.facts().toBuilder().runs(Runs.DRIVES).build();
        long seed = RandomNumbers.seed(state.seed(), car.name());
        Optional<String> untold = untold(model, state.soldPrivately(car.facts()));
        Optional<String> untoldRunning = untold(model, state.soldPrivately(running));
        double[] direct = untold.isPresent() ? new double[0] : values.price(state.soldPrivately(car.facts()), seed);
        double[] runs = untoldRunning.isPresent() ? new double[0] : values.price(state.soldPrivately(running), seed);
        double[] extra = draws.size("make_run_extra");
        double[] margin = draws.share("make_run_margin");
        Optional<double[]> engine = PartCatalogue.get().kind("engine")
                .flatMap(kind -> parts.draws(state.count(), state.seed()).sold(PiecePrices.another(car, kind),
                        RandomNumbers.seed(state.seed(), car.name() + "/another engine")));
        for (int i = 0; i < runs.length; i++) {
            double bought = engine.isPresent() ? StrictMath.exp(engine.get()[i]) : 0;
            runs[i] = runs[i] * (1 - margin[i]) - bought - extra[i];
        }
        int all = 0;
        int ofLine = 0;
        for (Car seen : model.cars()) {
            boolean dead = lacksEngine(seen.facts());
            all += dead ? 1 : 0;
            ofLine += dead && seen.facts().vehicle().equals(car.facts().vehicle()) ? 1 : 0;
        }
        double hours = Draws.mean(draws.size("make_run_hours"));
        return new RunningBracket(car, direct, ofLine, all, runs, engine.map(e -> StrictMath.exp(Quantiles.of(e, 0.5))).orElse(0.0), hours,
                untold.or(() -> untoldRunning));
    }

    /** Why the listings do not tell what a car is worth; nothing where they do. */
    private static Optional<String> untold(PriceModel model, Subject subject) {
        return model.value(subject).match(value -> Optional.empty(), no -> Optional.of(no.reason()));
    }

    /**
     * The bracket: the medians of the two sides.
     *
     * @return from the lower to the higher; nothing where the listings cannot tell a side
     */
    public Optional<Range> bracket() {
        if (direct.length == 0 || fromRunning.length == 0) {
            return Optional.empty();
        }
        double a = Quantiles.of(direct, 0.5);
        double b = Quantiles.of(fromRunning, 0.5);
        return Optional.of(new Range(Math.min(a, b), Math.max(a, b)));
    }

    /**
     * Both sides.
     *
     * @param currency of all amounts
     * @return one row a side
     */
    public Table table(String currency) {
        Table.Builder table = Table.titled("What " + car.name() + " is worth though it does not run, " + currency + ", private sold")
                .columns(Column.words("side"), Column.number("median", ""), Column.words("80 % range"), Column.sentences("how"));
        bracket().ifPresent(ends -> table.note("Between " + Cell.format(ends.low(), 0) + " and " + Cell.format(ends.high(), 0)
                + " by the medians of both sides."));
        String side = direct.length > 0 ? "the second side" : fromRunning.length > 0 ? "the first side" : "either side";
        reason.ifPresent(why -> table.note("The listings cannot tell " + side + ": " + why + "."));
        List<Cell> first = new ArrayList<>(List.of(Cell.words("as cars that do not run sell")));
        first.addAll(figures(direct));
        first.add(Cell.words(nonRunnersOfLine + (nonRunnersOfLine == 1 ? " such car" : " such cars") + " of the line, " + nonRunners
                + " in all; where there are few, what is assumed of such cars against those that drive carries it (assumption runs_"
                + (car.facts().runs() == Runs.NO_ENGINE ? "no_engine" : "engine_dead") + ")"));
        List<Cell> second = new ArrayList<>(List.of(Cell.words("running, less cost, less margin")));
        second.addAll(figures(fromRunning));
        second.add(Cell.words((engine > 0 ? "an engine at " + Cell.format(engine, 0)
                : "no offer names an engine for it, so none is taken off")
                + ", what else it takes (assumption make_run_extra), and a margin for risk and trouble (make_run_margin); about "
                + Math.round(hours) + " hours of work are not priced"));
        return table.row(first).row(second).build();
    }

    private static List<Cell> figures(double[] values) {
        return List.of(values.length == 0 ? Cell.BLANK : Cell.number(Quantiles.of(values, 0.5), 0), Cell.words(words(values)));
    }

    private static String words(double[] values) {
        return values.length == 0 ? "cannot tell" : Choice.range(values);
    }
}
