package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class UnsureAmountTest {

    @Test
    void it_prints_its_middle_and_who_says_so() {
        assertEquals("5,200, by my row", UnsureAmount.stated(5200, 0.2, "my row").toString());
        assertEquals("2,000, 3 draws, by parts", UnsureAmount.drawn(new double[] {1000, 2000, 4000}, "parts").toString());
    }
}
