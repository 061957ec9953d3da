package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class SameChartEverywhereTest {
    private final Locale language = Locale.getDefault();
    private final TimeZone zone = TimeZone.getDefault();

    @AfterEach
    void putBack() {
        Locale.setDefault(language);
        TimeZone.setDefault(zone);
    }

    @Test
    void two_runs_give_the_same_charts() {
        assertEquals(SampleCharts.six(200, 3), SampleCharts.six(200, 3));
    }

    @Test
    void the_language_and_zone_of_the_machine_change_nothing() {
        var here = SampleCharts.six(200, 3);
        for (String tag : new String[] {"tr-TR", "ar-EG-u-nu-arab", "de-CH", "hi-IN-u-nu-deva"}) {
            Locale.setDefault(Locale.forLanguageTag(tag));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
            assertEquals(here, SampleCharts.six(200, 3), tag);
        }
    }
}
