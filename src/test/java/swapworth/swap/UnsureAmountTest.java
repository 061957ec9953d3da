package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class UnsureAmountTest {

    @Test
    void it_prints_its_middle_with_a_range_and_who_says_so() {
        // ln 1.2 = 0.18232 and the ninetieth per cent of the normal law at 1.28155: 5,200 times or over e^0.23366.
        assertEquals("5,200, 80 % range 4,117 to 6,569, by my row", UnsureAmount.stated(5200, 0.2, "my row").toString());
        assertEquals("2,000, 80 % range 1,200 to 3,600, 3 draws, by parts",
                UnsureAmount.drawn(new double[] {1000, 2000, 4000}, "parts").toString());
    }
}
