package swapworth.report;

import java.util.ArrayList;
import java.util.List;
import swapworth.assumptions.Assumptions;
import swapworth.assumptions.Question;
import swapworth.chart.DonorCharts;
import swapworth.donor.DonorStudy;
import swapworth.donor.Landed;
import swapworth.donor.PartOut;

/** What a page says of donors and recipients. */
public final class DonorSections {
    /** The section of parts that are sold, which has cautions of its own. */
    static final String PARTS = "parts";
    static final String LANDED = "landed";
    static final String CHOICE = "choice";

    private DonorSections() {
    }

    /**
     * What each car costs once it stands in the yard.
     *
     * @param landed the costs
     * @param assumptions what stands in where files do not speak, in the base currency
     * @return a section
     */
    public static Section landed(Landed landed, Assumptions assumptions) {
        List<Part> parts = new ArrayList<>();
        parts.add(Part.prose("A bid is not what a car costs. Each line below is charged by a table of fees.csv; lines that add nothing say "
                + "why."
                + (landed.bids().isEmpty() ? " The step landed with --target AMOUNT finds the highest bid that stays within an amount."
                        : "")));
        parts.add(Part.picture(DonorCharts.landed(landed)));
        landed.bidTable().ifPresent(table -> parts.add(Part.rows(table)));
        parts.add(Part.rows(landed.totals()));
        landed.lookTable(assumptions).ifPresent(table -> parts.add(Part.rows(table)));
        parts.add(new Part.Folded("landed-lines", "Every line of each car",
                landed.costs().stream().map(c -> Part.rows(c.table())).toList()));
        landed.lacking().forEach(sentence -> parts.add(Part.prose(sentence)));
        return new Section(LANDED, "What each car costs at the door", parts);
    }

    /**
     * What the left-over parts of each car bring.
     *
     * @param study what the folder says
     * @return a section
     */
    public static Section partOuts(DonorStudy study) {
        List<Part> parts = new ArrayList<>();
        String currency = study.currency().getCurrencyCode();
        parts.add(Part.prose("A list of all parts at full price is not money. Below is what comes back once each part has turned out good "
                + "or not, has waited for its buyer, and fees, postage, packing and returns are paid. Hours are counted and not priced. "
                + "Prices rest on " + study.offersOfParts() + study.on().map(d -> ", as of " + d).orElse("") + "."));
        for (PartOut out : study.partOuts()) {
            String id = "parts-" + (study.partOuts().indexOf(out) + 1);
            out.recovery().ifPresent(recovery -> {
                parts.add(Part.rows(recovery.table(currency)));
                parts.add(Part.picture(DonorCharts.recoveryByMonth(out, currency)));
                parts.add(Part.picture(DonorCharts.netPerHour(out, currency)));
                parts.add(Part.folded(id, out.car().name() + ": each part, each month, and what the damage leaves",
                        Part.rows(recovery.partsTable(currency)), Part.rows(recovery.monthsTable(currency)), Part.rows(out.leftTable())));
            });
        }
        return new Section(PARTS, "What the parts bring", parts);
    }

    /**
     * Donors side by side, recipients side by side, what else could be done with a donor, and what cars that do not run are worth.
     *
     * @param study what the folder says
     * @return a section
     */
    public static Section choice(DonorStudy study) {
        List<Part> parts = new ArrayList<>();
        String currency = study.currency().getCurrencyCode();
        parts.add(Part.prose("Bids are not compared, net costs are: what a car costs in the yard less what its left-over parts bring, and"
                + " of a donor what must be replaced of its gear. Differences are taken within one state of the market at a time. Where the"
                + " 80 % range of a difference holds 0, money does not decide."
                + study.on().map(d -> " All of it is as of " + d + ".").orElse("")));
        study.choices().forEach(choice -> parts.add(Part.rows(choice.table(currency))));
        study.brackets().forEach(bracket -> parts.add(Part.rows(bracket.table(currency))));
        study.uses().forEach(uses -> parts.add(Part.rows(uses.table(currency))));
        return new Section(CHOICE, "Which donor, which recipient", parts);
    }

    /**
     * The assumptions behind all of it, folded.
     *
     * @param assumptions the assumptions
     * @return a block
     */
    public static Part assumptions(Assumptions assumptions) {
        return Part.folded("assumptions-donor", "Assumptions of donors, recipients and parts, with their sources",
                Part.rows(assumptions.table(Question.DONOR)));
    }

    /**
     * Everything that a folder says of donors and recipients.
     *
     * @param study what the folder says
     * @param assumptions the assumptions behind it
     * @return sections; none where the folder has neither fees.csv nor partout.csv
     */
    public static List<Section> all(DonorStudy study, Assumptions assumptions) {
        List<Section> sections = new ArrayList<>();
        study.landed().told().ifPresent(l -> sections.add(landed(l, assumptions)));
        if (!study.choices().isEmpty()) {
            sections.add(choice(study));
        }
        if (!study.partOuts().isEmpty()) {
            sections.add(partOuts(study));
        }
        if (!sections.isEmpty()) {
            List<Part> parts = new ArrayList<>();
            parts.add(Part.prose("What became of the rows of fees.csv, partout.csv and parts.csv, and the numbers that stand in where they"
                    + " do not speak."));
            study.read().forEach(read -> parts.add(read.problems().isEmpty()
                    ? Part.prose(read.sentence() + ".") : Part.rows(read.table())));
            study.market().filter(m -> m.offers() > 0).ifPresent(m -> parts.add(Part.rows(m.table())));
            parts.add(assumptions(assumptions));
            sections.add(new Section("donor-read", "What that rests on", parts));
        }
        return sections;
    }

    /**
     * The cautions of crashed cars and of parts that are sold.
     *
     * @return a section
     */
    public static Section cautions() {
        return section(Cautions.ofDonors());
    }

    /**
     * The cautions of crashed cars, without those of parts.
     *
     * @return a section
     */
    public static Section cautionsOfCrashes() {
        List<String> cautions = new ArrayList<>(List.of(Cautions.ofEstimates()));
        cautions.addAll(Cautions.ofCrashedCars());
        return section(cautions);
    }

    private static Section section(List<String> cautions) {
        return Section.of("cautions", "Cautions", Part.cautions("Before you rely on any of this", cautions));
    }
}
