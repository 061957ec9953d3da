package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.listing.CarsFile;
import swapworth.money.Conversion;
import swapworth.money.Money;
import swapworth.reading.CellReader;
import swapworth.reading.FolderSettings;
import swapworth.reading.Parsed;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;

/**
 * The finished cars of {@code cars.csv}, with the columns that only they have: {@code built_by} (owner, shop), {@code gear_line},
 * {@code gear_year}, {@code recipient, donor} (names of cars in the same file), {@code documented, inspected, emissions, approved,
 * return_to_stock} (yes, no), {@code options_kept, options_lost} (several with a semicolon), {@code gear_value, work_value,
 * removed_value} (amounts), {@code obsolescence} (what: amount or share, several with a semicolon), which comes off the value by cost, and
 * {@code faults} (the same, the figure where it is known), which come off the result of all approaches.
 *
 * @param cars the finished cars, in file order
 * @param factoryEquivalent the first car of the role factory equivalent
 * @param problems cells that were not understood and are not used
 */
public record FinishedCars(List<FinishedCar> cars, Optional<CarFacts> factoryEquivalent, List<RowProblem> problems) {

    /** Copies the lists in. */
    public FinishedCars {
        cars = List.copyOf(cars);
        requireNonNull(factoryEquivalent, "factoryEquivalent");
        problems = List.copyOf(problems);
    }

    /**
     * The finished cars among the cars in play.
     *
     * @param file what {@code cars.csv} says
     * @param settings what speaks for all files of the folder
     * @param currency the base currency, in which amounts without a currency of their own are
     * @param assumptions how far stated amounts may be off
     * @return the finished cars
     */
    public static FinishedCars of(CarsFile file, FolderSettings settings, Currency currency, Assumptions assumptions) {
        Reader reader = new Reader(settings, currency, assumptions.get("swap_stated_spread").middle());
        List<CandidateCar> rows = file.cars().stream().filter(c -> c.role() == CandidateCar.Role.FINISHED).toList();
        rows.forEach(row -> List.of("recipient", "donor").forEach(column -> reader.checkName(row, column, file.cars())));
        List<FinishedCar> cars = rows.stream().map(reader::car)
                .map(car -> car.madeFrom(CandidateCar.Role.RECIPIENT, file.cars()).map(one -> car.madeOf(one.facts())).orElse(car))
                .map(car -> car.madeFrom(CandidateCar.Role.DONOR, file.cars()).map(one -> car.withGearFrom(one.facts())).orElse(car))
                .toList();
        List<CandidateCar> equivalents = file.cars().stream().filter(c -> c.role() == CandidateCar.Role.FACTORY_EQUIVALENT).toList();
        equivalents.stream().skip(1).forEach(row -> reader.odd(row, "role", row.role().words(), "there is one of this role already, '"
                + equivalents.get(0).name() + "', and the first is the one that is used"));
        Optional<CarFacts> factory = equivalents.stream().map(CandidateCar::facts).findFirst();
        return new FinishedCars(cars, factory, reader.problems);
    }

    private static final class Reader {
        private final CellReader cells;
        private final FolderSettings settings;
        private final Currency currency;
        private final double spread;
        private final List<RowProblem> problems = new ArrayList<>();

        Reader(FolderSettings settings, Currency currency, double spread) {
            this.settings = settings;
            this.cells = new CellReader(settings.conventions(), ',');
            this.currency = currency;
            this.spread = spread;
        }

        FinishedCar car(CandidateCar row) {
            Map<String, String> further = row.facts().further();
            Map<Paper, Known> papers = new EnumMap<>(Paper.class);
            for (Paper paper : Paper.values()) {
                Optional<String> text = SwapWords.text(further, paper.column());
                papers.put(paper, SwapWords.known(text));
                text.filter(t -> papers.get(paper) == Known.UNKNOWN && !t.equalsIgnoreCase("unknown"))
                        .ifPresent(t -> odd(row, paper.column(), t, "this is neither yes nor no and is taken as unknown"));
            }
            Optional<String> by = SwapWords.text(further, "built_by");
            Optional<BuiltBy> builder = by.flatMap(SwapWords.BUILT_BY::meaning);
            if (by.isPresent() && builder.isEmpty()) {
                odd(row, "built_by", by.get(), "this word is not understood and taken as unknown; known are owner and shop");
            }
            Optional<UnsureAmount> gear = amount(row, "gear_value", Nought.IS_ODD);
            Optional<UnsureAmount> work = amount(row, "work_value", Nought.IS_ODD);
            Optional<UnsureAmount> removed = amount(row, "removed_value", Nought.COUNTS);
            List<SwapCost.Loss> faults = faults(row);
            SwapCost cost = new SwapCost(gear, work, removed, losses(row).stream().filter(loss -> countsBesideFaults(row, loss, faults))
                    .toList());
            if (!cost.losses().isEmpty() && list(further, "options_lost").isEmpty()) {
                problem(row, "obsolescence", further.get("obsolescence"), RowProblem.Kind.QUESTION, "is one of these a function that no"
                        + " longer works? A buyer must be told: name it in options_lost too");
            }
            return new FinishedCar(row.name(), row.facts(), SwapWords.text(further, "gear_line"), year(row),
                    builder.orElse(BuiltBy.UNKNOWN),
                    papers, list(further, "options_kept"), list(further, "options_lost"), faults, cost, Optional.empty(), Optional.empty());
        }

        private static List<String> list(Map<String, String> further, String column) {
            return SwapWords.text(further, column).map(t -> Arrays.stream(t.split(";")).map(String::strip).filter(p -> !p.isEmpty())
                    .toList())
                    .orElse(List.of());
        }

        private OptionalInt year(CandidateCar row) {
            Optional<String> text = SwapWords.text(row.facts().further(), "gear_year");
            if (text.isPresent() && cells.number(text.get()) instanceof Parsed.Understood<BigDecimal> number
                    && number.value().intValue() >= 1886 && number.value().intValue() <= 2200) {
                return OptionalInt.of(number.value().intValue());
            }
            text.ifPresent(t -> odd(row, "gear_year", t, "this is no year and is not used"));
            return OptionalInt.empty();
        }

        /** A name in the row must be that of another car of the file. */
        private void checkName(CandidateCar row, String column, List<CandidateCar> cars) {
            Optional<String> name = SwapWords.text(row.facts().further(), column);
            if (name.isPresent() && cars.stream().noneMatch(car -> Spelling.name(name.get()).equals(Spelling.name(car.name())))) {
                odd(row, column, name.get(), "cars.csv has no such car; its parts are not counted" + Spelling.nearest(name.get(),
                        cars.stream().map(CandidateCar::name).toList()).map(near -> "; did you mean " + near + "?").orElse(""));
            }
        }

        /** Whether an amount of 0 is an answer. */
        private enum Nought { COUNTS, IS_ODD }

        private Optional<UnsureAmount> amount(CandidateCar row, String column, Nought nought) {
            Optional<String> text = SwapWords.text(row.facts().further(), column);
            return text.flatMap(t -> money(row, column, t)).filter(a -> counts(row, column, text.get(),
                    a > 0 || nought == Nought.COUNTS && a == 0, nought == Nought.COUNTS ? "it cannot be below 0" : "it must be above 0"))
                    .map(a -> UnsureAmount.stated(a, spread, column + " in the car's row, give or take " + Math.round(100 * spread)
                    + " %"));
        }

        private boolean counts(CandidateCar row, String column, String text, boolean counts, String must) {
            if (!counts) {
                odd(row, column, text, must + "; it is not used");
            }
            return counts;
        }

        private Optional<Double> money(CandidateCar row, String column, String text) {
            Parsed<Money> parsed = cells.money(text, Optional.of(currency));
            if (parsed instanceof Parsed.Understood<Money> money) {
                var converted = settings.rates().convert(money.value(), currency, LocalDate.MAX);
                if (converted instanceof Conversion.Converted done) {
                    return Optional.of(done.amount().doubleValue());
                }
                odd(row, column, text, "there is no exchange rate for it; it is not used");
            } else if (parsed instanceof Parsed.Refused<Money> no) {
                odd(row, column, text, no.message() + "; it is not used");
            }
            return Optional.empty();
        }

        /** For instance {@code air conditioning lost: 400; cluster does not speak to the engine: 3 %}. */
        private List<SwapCost.Loss> losses(CandidateCar row) {
            return list(row.facts().further(), "obsolescence").stream().flatMap(part -> loss(row, "obsolescence", part).stream()).toList();
        }

        /** The same, but a fault is known whether or not it has a figure that can be used: {@code engine knocks: 1500; small dent}. */
        private List<SwapCost.Loss> faults(CandidateCar row) {
            return list(row.facts().further(), "faults").stream().map(part -> hasFigure(part) ? loss(row, "faults", part)
                    .orElse(SwapCost.Loss.unstated(part)) : SwapCost.Loss.unstated(part)).toList();
        }

        /** A colon may stand in the words of a fault too. */
        private static boolean hasFigure(String part) {
            return part.substring(part.lastIndexOf(':') + 1).chars().anyMatch(Character::isDigit) && part.indexOf(':') >= 0;
        }

        private Optional<SwapCost.Loss> loss(CandidateCar row, String column, String part) {
            int colon = part.lastIndexOf(':');
            String what = colon < 0 ? part : part.substring(0, colon).strip();
            String figure = colon < 0 ? "" : part.substring(colon + 1).strip();
            if (figure.endsWith("%") && cells.number(figure, "%") instanceof Parsed.Understood<BigDecimal> number) {
                double percent = number.value().doubleValue();
                if (percent >= 0 && percent < 100) {
                    return Optional.of(new SwapCost.Loss(what, 0, percent / 100));
                }
                odd(row, column, part, "a share lies between 0 and 100 %; it is not used");
                return Optional.empty();
            }
            if (figure.isEmpty() || figure.endsWith("%")) {
                odd(row, column, part, "this has no amount or share behind a colon, such as 'air conditioning lost: 400'; not used");
                return Optional.empty();
            }
            return money(row, column, figure).filter(a -> counts(row, column, part, a >= 0, "a loss cannot be below 0"))
                    .map(a -> new SwapCost.Loss(what, a, 0));
        }

        /** Asks about a loss that is a fault too. Whether it counts: what a fault takes off counts once, where the fault states it. */
        private boolean countsBesideFaults(CandidateCar row, SwapCost.Loss loss, List<SwapCost.Loss> faults) {
            List<SwapCost.Loss> same = faults.stream().filter(f -> Spelling.name(f.what()).equals(Spelling.name(loss.what()))).toList();
            boolean stated = same.stream().anyMatch(SwapCost.Loss::isStated);
            if (!same.isEmpty()) {
                problem(row, "obsolescence", loss.what(), RowProblem.Kind.QUESTION, "this is among the faults too: what a fault takes off"
                        + " this car is counted where the fault itself states it, " + (stated ? "as it does; here it is not used"
                                : "and it states no figure; here it comes off the value by cost alone. Move the figure to faults"));
            }
            return !stated;
        }

        private void odd(CandidateCar row, String column, String text, String message) {
            problem(row, column, text, RowProblem.Kind.ODD, message);
        }

        private void problem(CandidateCar row, String column, String text, RowProblem.Kind kind, String message) {
            problems.add(new RowProblem(row.origin().file(), row.origin().line(), column, text, kind, message));
        }
    }
}
