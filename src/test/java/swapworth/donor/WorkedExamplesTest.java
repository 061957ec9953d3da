package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;

/** One whole donor and one whole recipient, worked out by hand to the cent; chances and times are taken to be certain. */
class WorkedExamplesTest {
    @TempDir
    Path folder;

    private static final Assumptions CERTAIN = Donors.plain("selling_fee", 12, "selling_fee_fixed", 0.30, "packing", 4.50,
            "postage_charged", 80,
            "holding_cost", 25, "hulk_value", 165, "core_value", 135, "packing_hours", 0.5, "hulk_months", 0.5);

    private Donors worked() throws IOException {
        return new Donors(folder)
                .file("cars.csv", "name,role,vehicle,seller,planned_bid,price,price_includes,runs,damage,distance_away,keys,airbags",
                "donor,donor,Velmarch,auction,3250,,neither,engine fires,front,140,yes,fired",
                "body,recipient,Sivrette,private,,5400,neither,engine dead,none,60,yes,in place")
                .file("fees.csv", "table,kind,from,to,flat,percent,minimum,per_day,free_days,days,per_mile,applies_to,seller,when",
                        "premium,fee,0,2999,355,,,,,,,,auction,", "premium,fee,3000,3499,380,,,,,,,,auction,",
                        "online bid,fee,,,,1.5,45,,,,,bid,auction,", "tax,tax,,,,6.25,,,,,,bid; premium; online bid,auction; trade,",
                        "title,paper,,,33,,,,,,,,,", "yard,storage,,,,,,35,2,4,,,auction,", "freight,freight,,,95,,,,,,1.35,,,",
                        "winching,freight,,,115,,,,,,,,,non-runner")
                .file("partout.csv", "car,part,goes_to,state,price,sells,days,postage,hours,bundle",
                        "donor,engine,swap,present,2600,,,,,", "donor,gearbox,swap,present,1450,,,,,",
                        "donor,left door,sell,present,210,1,0.1,65,1.5,", "donor,front seats,sell,present,340,1,0.1,90,2,",
                        "donor,carpet,sell,present,40,1,0.1,22,0.8,trim", "donor,centre console,sell,present,60,1,0.1,18,1,trim",
                        "donor,bonnet,sell,,180,1,0.1,65,1.2,", "donor,driver airbag,sell,present,80,1,0.1,15,1,",
                        "body,engine,sell,,1500,1,0.1,200,8,", "body,gearbox,sell,present,700,1,0.1,120,5,",
                        "body,radiator pack,sell,present,90,1,0.1,20,0.8,", "body,wheels,keep,present,250,,,,,");
    }

    private static BigDecimal cents(double amount) {
        return BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_UP);
    }

    private Landed landed(Donors donors) {
        return Landed.of(donors.cars(), FeeFiles.read(folder.resolve("fees.csv")), Optional.empty());
    }

    // Landed: 3,250 + 380 + 1.5 % 48.75 (above the minimum of 45) + 6.25 % of 3,678.75 = 229.921875 + 33 + 35 x (4 - 2) = 70
    // + 95 + 140 x 1.35 = 284 + 115 (it does not drive) = 4,410.671875 -> 4,410.67.
    // Door: buyer pays 210 + 52 = 262; 12 % 31.44; 0.30; postage 65; packing 4.50: 160.76.
    // Seats: 340 + 72 = 412; 49.44; 0.30; 90; 4.50: 267.76.
    // Trim, both at 75 %: 100 x 0.75 = 75; + 32 charged of 40 = 107; 12.84; 0.30; 40; 9.00: 44.86 with the discount of 25 %.
    // Bonnet: doubtful after a front hit, here 0 % good. Airbag: fired, and the rule is not met. Hulk 165. Space one month 25.
    // Sum: 160.76 + 267.76 + 44.86 + 165 - 25 = 613.38. Net cost 4,410.67 - 613.38 = 3,797.29. Gear 2,600 + 1,450 = 4,050.
    // Hours: door 1.5 + 0.5, seats 2 + 0.5, trim 0.6 x 1.8 + 0.5 = 6.08.
    @Test
    void a_whole_donor_by_hand() throws IOException {
        Donors donors = worked();
        LandedCost cost = landed(donors).costs().get(0);
        assertEquals(new BigDecimal("4410.67"), cost.total());
        Assumptions certain = CERTAIN.with(Donors.with(CERTAIN.get("chance_doubtful"), 0, 0));
        PartOut out = donors.partOut(0, MarketState.withoutCars(3, 1), certain);
        Recovery r = out.recovery().orElseThrow();
        List<BigDecimal> parts = r.parts().stream().map(p -> cents(p.net())).sorted().toList();
        assertEquals(List.of(new BigDecimal("0.00"), new BigDecimal("44.86"), new BigDecimal("160.76"), new BigDecimal("267.76")), parts);
        for (double net : r.net()) {
            assertEquals(new BigDecimal("613.38"), cents(net));
            assertEquals(new BigDecimal("3797.29"), cents(cost.total().doubleValue() - net));
        }
        assertEquals(6.08, r.hours()[0], 1e-9);
        assertEquals(4050, out.gear().draws()[0], 1e-9);
        assertTrue(r.table("USD").csv().contains("\nsum of all asking prices," + (210 + 340 + 40 + 60 + 180)), r.table("USD").csv());
    }

    // Landed: 5,400 privately: no fees, no tax; title 33; freight 95 + 60 x 1.35 = 176; winching 115 (dead engine): 5,724.00.
    // Engine: dead, so a core at 135 and no sale. Gearbox: 700 + 96 = 796; 95.52; 0.30; 120; 4.50: 575.68.
    // Radiator: 90 + 16 = 106; 12.72; 0.30; 20; 4.50: 68.48. Wheels stay. No hulk: the body is built on. Space 25.
    // Sum: 135 + 575.68 + 68.48 - 25 = 754.16. Net cost 5,724.00 - 754.16 = 4,969.84. Hours 5.5 + 1.3.
    @Test
    void a_whole_recipient_by_hand() throws IOException {
        Donors donors = worked();
        CandidateCar body = donors.cars().get(1);
        assertEquals(CandidateCar.Role.RECIPIENT, body.role());
        LandedCost cost = landed(donors).costs().get(1);
        assertEquals(new BigDecimal("5724.00"), cost.total());
        Recovery r = donors.partOut(1, MarketState.withoutCars(3, 1), CERTAIN).recovery().orElseThrow();
        for (double net : r.net()) {
            assertEquals(new BigDecimal("754.16"), cents(net));
            assertEquals(new BigDecimal("4969.84"), cents(cost.total().doubleValue() - net));
        }
        assertEquals(6.8, r.hours()[0], 1e-9);
        assertEquals(2, r.parts().size(), "the gearbox and the radiator pack");
    }
}
