package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Dispersion and bias of ratios, against two published studies. Source: see the SOURCE.md of ratio-study. */
class RatioStudyTest {

    private static RatioStudy of(String file) {
        Reference reference = Reference.read("ratio-study/" + file);
        return RatioStudy.of(reference.numbers("appraised"), reference.numbers("sale_price"));
    }

    // Source: Texas Comptroller, Property Value Study 2000 and 2001; beyond the printed digits R 4.2.2.
    @Test
    void agrees_with_the_study_of_texas() {
        RatioStudy study = of("ratio_texas.csv");
        assertEquals(25, study.n());
        assertEquals(0.811528397722026, study.median(), 1e-14);
        assertEquals(0.828196215004693, study.mean(), 1e-14);
        assertEquals(0.821590392809342, study.weightedMean(), 1e-14);
        assertEquals(8.00047890212993, study.cod(), 1e-12);
        assertEquals(1.0080402865627, study.prd(), 1e-12);
        assertEquals(-0.00430210076372559, study.prb(), 1e-13);
        assertEquals(0.0302464945420411, study.prbError(), 1e-13);
    }

    // Source: Texas Comptroller: the printed dispersion is made of ratios of two digits, median 0.81, deviations 1.62 in all.
    @Test
    void agrees_with_the_printed_dispersion_of_texas() {
        Reference reference = Reference.read("ratio-study/ratio_texas.csv");
        double[] ones = new double[reference.rows()];
        Arrays.fill(ones, 1);
        RatioStudy study = RatioStudy.of(reference.numbers("printed_ratio"), ones);
        assertEquals(0.81, study.median(), 1e-15);
        assertEquals(8.0, study.cod(), 1e-12);
    }

    // Source: Cabarrus County, 2012 Appraisal Manual; beyond the printed digits R 4.2.2.
    @Test
    void agrees_with_the_study_of_cabarrus() {
        RatioStudy study = of("ratio_cabarrus.csv");
        assertEquals(10, study.n());
        assertEquals(0.80084789753738, study.mean(), 1e-14);
        assertEquals(0.8296875, study.median(), 1e-14);
        assertEquals(0.802821869488536, study.weightedMean(), 1e-14);
        assertEquals(11.7772727589968, study.cod(), 1e-12);
        assertEquals(0.997541208048538, study.prd(), 1e-13);
        assertEquals(0.0733540921871729, study.prb(), 1e-13);
        assertEquals(0.0869127224069637, study.prbError(), 1e-13);
    }

    // Source: by hand: ratios 0.95, 1.05, 0.96, 1.10, 1.10; 86.7 / 83.
    @Test
    void agrees_with_five_cars_by_hand() {
        RatioStudy study = RatioStudy.of(new double[] {9.5, 21.0, 14.4, 33.0, 8.8}, new double[] {10, 20, 15, 30, 8});
        assertEquals(1.05, study.median(), 1e-14);
        assertEquals(5.5238, study.cod(), 5e-5);
        assertEquals(1.032, study.mean(), 1e-14);
        assertEquals(1.044578, study.weightedMean(), 5e-7);
        assertEquals(0.987959, study.prd(), 1e-6);
    }

    @Test
    void two_pairs_have_a_bias_of_unknown_error() {
        RatioStudy study = RatioStudy.of(new double[] {9, 22}, new double[] {10, 20});
        assertEquals(Double.POSITIVE_INFINITY, study.prbError());
    }

    @Test
    void one_pair_and_a_price_of_nothing_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> RatioStudy.of(new double[] {9}, new double[] {10}));
        assertThrows(IllegalArgumentException.class, () -> RatioStudy.of(new double[] {9, 8}, new double[] {10, 0}));
        assertThrows(IllegalArgumentException.class, () -> RatioStudy.of(new double[] {9, 8}, new double[] {10}));
    }
}
