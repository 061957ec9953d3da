package swapworth.report;

import java.util.List;
import java.util.stream.Stream;
import swapworth.listing.Airbags;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;

/** The short cautions that belong to what a page speaks of, each with its source; all defer to local law and licensed practice. */
public final class Cautions {
    private static final String ASKED = "An asking price is not a selling price, and a vanished advertisement is not a sale. A value holds"
            + " for its day and its level of trade only.";
    private static final String ODOMETER = "(US: 49 CFR 580.5; 49 USC 32704, NHTSA letter of 8 December 1995)";
    private static final String ENGINE_CHANGE = "(US: Clean Air Act 203(a)(3), EPA tampering policy of 23 November 2020; California: 16 CCR"
            + " 3362.1; UK: DVLA rules on radically altered vehicles; EU: Regulation 2018/858, articles 44 and 45; Germany: StVZO 19(2))";
    private static final String INSURANCE = "Actual cash value, stated value and agreed value are different promises, and";
    private static final String DISCLOSURE = "(UK: Consumer Insurance (Disclosure and Representations) Act 2012, section 2)";
    private static final String MARKED_PARTS = "fitting a marked major part without the prescribed check is unlawful in some places."
            + " (US: 49 USC 33111; 18 USC 511; 28 CFR 25.52)";
    private static final String NO_APPRAISAL = "These are statistical estimates from listings that you chose and collected. They are no"
            + " appraisal, no offer and no advice. Where law or a contract asks for an appraisal (a claim, a loan, an estate, an agreed"
            + " sum), go to a qualified appraiser. (Uniform Standards of Professional Appraisal Practice, Standards 7 and 8, on personal"
            + " property)";
    private static final String APPRAISER = "For a claim, a loan, a divorce or an agreed sum go to a qualified appraiser. (US: 26 CFR"
            + " 1.170A-17; Uniform Standards of Professional Appraisal Practice, Standards 7 and 8)";

    private Cautions() {
    }

    /**
     * For a page of values from listings.
     *
     * @return one caution an item
     */
    public static List<String> ofValues() {
        return List.of(NO_APPRAISAL, ASKED,
                "A low price often has a reason that the row does not give. See the car and its papers, or have it seen, before you pay.",
                "Title brands differ from place to place, and a blank title is not a clean one. Check the title and what the brand means at"
                        + " your registry. (28 CFR 25.52 for the federal words in the US; UK insurers' categories since October 2017)",
                "The mileage is the distance of the chassis. Running gear with another distance does not change it: state both, never one"
                        + " blended figure, and follow your odometer law. (US: 49 CFR 580.5; 49 USC 32704)",
                "Keep the title, the bill of sale and photographs of the stamped numbers of every car and major part; removing or altering"
                        + " them is a crime in many places. (US: 18 USC 511; 49 USC 33111)");
    }

    /**
     * For a page of the market in time, on which no single car is valued.
     *
     * @return one caution an item
     */
    public static List<String> ofMarket() {
        return List.of(NO_APPRAISAL, ASKED);
    }

    /**
     * For a page of costs, parts and money, which rest on more than listings.
     *
     * @return the caution
     */
    static String ofEstimates() {
        return "What stands here as a range is an estimate from rows that you collected and assumptions that you can change: no appraisal,"
                + " no offer and no advice. " + APPRAISER;
    }

    /**
     * Whether work on a car can hurt whoever does it: it is said to be crashed or branded, not to drive, or to lack its airbags.
     *
     * @param car what is known of it
     * @return whether a page that speaks of it says {@link #ofCrashedCars()}
     */
    static boolean areNeededFor(CarFacts car) {
        return car.isTroubled() || car.airbags() == Airbags.FIRED || car.airbags() == Airbags.GONE;
    }

    /**
     * The same of a car in play: a donor is taken apart, whatever its row says of it.
     *
     * @param car the car
     * @return whether a page that speaks of it says {@link #ofCrashedCars()}
     */
    static boolean areNeededFor(CandidateCar car) {
        return car.role() == CandidateCar.Role.DONOR || areNeededFor(car.facts());
    }

    /**
     * For a page that speaks of crashed cars.
     *
     * @return one caution an item
     */
    public static List<String> ofCrashedCars() {
        return List.of(
                "Airbags and belt tensioners of a crashed car hold explosives: leave them to trained people, check recalls by the vehicle's"
                        + " number, and ask what may be used again where you live. (49 CFR 173.166; Directive 2005/64/EC, Annex V)",
                "Seats with airbags or belts in them, belts and steering locks of a crashed car may not be used again in some places. Where"
                        + " airbags are replaced have a qualified shop fit genuine ones: cheap copies have killed people. (Directive"
                        + " 2005/64/EC, Annex V, from memory; US: NHTSA warning of July 2024, by news reports)",
                "A damaged electric or hybrid car can shock or catch fire days later: do not open or move the pack, ask a qualified person."
                        + " (US: 49 CFR Part 561)",
                "Drain petrol only with a proper fuel retriever, in the open and away from any flame. (UK HSE, motor vehicle repair: fire)",
                "Never work beneath a vehicle that stands on jacks only. (UK HSE, INDG434)",
                "Stripping and selling a car may need papers handed in first, a licence, or a limit on numbers: ask your registry."
                        + " (for example California Vehicle Code 220 and 5500)",
                "An engine change may need approval, inspection and your insurer's consent: ask before you spend. (US: Clean Air Act "
                        + "203(a)(3); EU: Regulation 2018/858, articles 44 and 45)");
    }

    /**
     * For a page that speaks of selling parts.
     *
     * @return one caution an item
     */
    public static List<String> ofPartsSold() {
        return List.of(
                "Catalysts are not counted: in many places a used one may be sold or fitted only if tested and labelled, and sellers of "
                        + "loose ones must prove where it came from. Check your rule, then say so in the row. (US EPA policy of 1986, 51 "
                        + "FR 28114, from memory; for example California Vehicle Code 11500)",
                "Airbags, inflators and belt tensioners are not counted: they hold explosives, posting them is regulated, some have been "
                        + "recalled, and some places forbid their reuse. (49 CFR 173.166; Directive 2005/64/EC, Annex V)",
                "Keep proof of where each part came from, and sell no part whose number has been removed or altered. (US: 18 USC 2321)",
                "Money from parts may be taxable, and selling many cars or parts may need a licence: ask where you live. (US: 49 USC 30504 "
                        + "on reporting by salvage yards)");
    }

    /**
     * For a page of donors and recipients, what they cost and what their parts bring.
     *
     * @return one caution an item
     */
    public static List<String> ofDonors() {
        return Stream.of(List.of(ofEstimates()), ofCrashedCars(), ofPartsSold()).flatMap(List::stream).toList();
    }

    /**
     * For a page of the money of an undertaking.
     *
     * @return one caution an item
     */
    public static List<String> ofMoney() {
        return List.of(
                "What parts and cars bring in may be taxed, and a loss may not count: keep the ledger by date and ask a tax adviser."
                        + " (US: Treasury Regulation 1.183-2(b) on hobby or business)",
                "An engine change can end an insurer's promise and break the terms of a loan: tell the insurer and the lender before you "
                        + "change the car, and read what the policy pays. (UK: Consumer Insurance (Disclosure and Representations) Act "
                        + "2012, section 2)",
                "A forecast holds what its rows hold. Work that nobody thought of is only in the reserve, which is an assumption.",
                ofEstimates());
    }

    /**
     * For a page that speaks of a finished swap.
     *
     * @return one caution an item
     */
    public static List<String> ofSwaps() {
        return List.of(
                "Sell a swap with both distances written down, that of the chassis and that of the running gear, each with its status,"
                        + " and never with one figure made of the two. Whether the odometer's reading is the actual mileage is for you to"
                        + " certify; a donor's instrument cluster in another car is the trap. " + ODOMETER,
                "Another engine may be tampering with the emission controls unless the result matches a certified configuration, or an"
                        + " authority has approved it: ask before you build, and again before you sell. " + ENGINE_CHANGE,
                "Tell your insurer what was changed. " + INSURANCE + " what you spent is none of them. " + DISCLOSURE,
                "A lender may refuse a rebuilt or altered car, and a change may breach a loan: ask first. (common practice, no source)",
                "A brand travels with the title of the chassis. Keep the donor's title and bill of sale, and photographs of the stamped"
                        + " numbers of engine and gearbox; " + MARKED_PARTS,
                "A gain on a car or on parts may be taxable, and sales or use tax is due where a car is registered: ask. (US: 26 CFR"
                        + " 1.183-2 on hobby and business)",
                "This is a statistical estimate from rows that you collected and assumptions that you can change, most of them without a"
                        + " source: no appraisal. " + APPRAISER);
    }

    /**
     * For the file on a finished swap that its owner hands on: who reads it has neither built the car nor collected the listings.
     *
     * @return one caution an item
     */
    public static List<String> ofSwapsHandedOn() {
        return List.of(
                "This is a statistical estimate from listings that the owner chose and collected and from assumptions, most of them"
                        + " without a source. It is no appraisal, no offer and no advice. " + APPRAISER,
                ASKED,
                "The mileage of the car is that of its chassis, whatever its running gear has run. Whether the odometer's reading is the"
                        + " actual mileage is for the seller to certify; a donor's instrument cluster in another car is the trap. "
                        + ODOMETER,
                "Another engine may be tampering with the emission controls unless the result matches a certified configuration, or an"
                        + " authority has approved it: ask to see the approval, and ask the authority where the car is to be registered. "
                        + ENGINE_CHANGE,
                "An insurer must know what was changed. " + INSURANCE + " what the owner spent is none of them. " + DISCLOSURE,
                "A brand travels with the title of the chassis. See the titles and bills of sale of both cars, and hold the stamped"
                        + " numbers of engine and gearbox against them; " + MARKED_PARTS,
                "Sales or use tax may be due where a car is registered: ask there. (common practice, no source)");
    }
}
