package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import swapworth.statistics.Quantiles;

/** A whole forecast against an independent simulation of the laws that it states: {@code reference/forecast/SOURCE.md}. */
class ForecastBySimulationTest {
    private static final Forecast FORECAST = Forecast.of(Ledger.read(Path.of("src/test/resources/reference/forecast/ledger.csv")));
    private static final Map<String, double[]> DRAWS = Map.of("still to pay", FORECAST.toPay(), "still to come in", FORECAST.toReceive(),
            "total", FORECAST.total(), "peak", FORECAST.peak().amounts(), "hours", FORECAST.hours());

    @ParameterizedTest(name = "{0} at {1}")
    @CsvFileSource(resources = "/reference/forecast/quantiles.csv", numLinesToSkip = 1)
    void its_figures_are_those_of_another_program(String figure, double probability, double amount, double error) {
        assertEquals(amount, Quantiles.of(DRAWS.get(figure), probability), 4.5 * error);
    }
}
