package swapworth.donor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import swapworth.statistics.RandomNumbers;

/** What is put on sale together: one part, or the parts of a bundle. Everything is drawn once for each state of the market. */
final class SaleUnit {
    final String name;
    final List<Piece> pieces;
    /** Money of a sale at once, before drift, with what it costs to send; hours to put on sale; hours to send. */
    final double[] money;
    final double[] price;
    final double[] hoursListed;
    final double[] hoursSent;
    /** Pieces that turn out good; 0 where the unit cannot be sold at all. */
    final int[] good;
    /** Days from listing until it sells; infinite for never. */
    final double[] days;
    final boolean[] returned;
    private final double[] fee;
    private final double[] fixed;
    private final double[] paid;
    private final double[] charged;
    private final double[] pack;

    SaleUnit(String name, List<Piece> pieces, PartOut of) {
        this.name = name;
        // By name, so that the order of the rows decides nothing.
        this.pieces = pieces.stream().sorted(Comparator.comparing(p -> p.row.part().name())).toList();
        AssumptionDraws a = of.draws();
        int m = of.state().count();
        money = new double[m];
        price = new double[m];
        hoursListed = new double[m];
        hoursSent = new double[m];
        good = new int[m];
        days = new double[m];
        returned = new boolean[m];
        fee = new double[m];
        fixed = a.size("selling_fee_fixed");
        paid = new double[m];
        pack = new double[m];
        charged = new double[m];
        // A bundle sells no likelier than the least wanted of its parts, and waits as long as the slowest.
        double[] sells = all(1, m);
        double[] median = new double[m];
        for (Piece p : this.pieces) {
            add(p, of.good(p), a);
            double[] selling = own(p.row.sells(), a.share("sells_" + p.row.part().group()));
            double[] waiting = own(p.row.days(), a.size("days_" + p.row.part().group()));
            for (int i = 0; i < m; i++) {
                sells[i] = Math.min(sells[i], selling[i]);
                median[i] = Math.max(median[i], waiting[i]);
            }
        }
        for (int i = 0; i < m; i++) {
            // Each part's fee weighs as much as the part brings.
            fee[i] /= price[i] > 0 ? price[i] : 1;
        }
        if (isBundle()) {
            soldTogether(a);
        }
        drawSales(a, RandomNumbers.of(of.state().seed(), of.car().name() + "/sale/" + name), sells, median);
    }

    private boolean isBundle() {
        return pieces.size() > 1;
    }

    /** Adds what one part brings and costs, as many of it as turn out good. */
    private void add(Piece p, int[] sound, AssumptionDraws a) {
        String group = p.row.part().group();
        double[] hours = own(p.row.hours(), a.size("hours_" + group));
        double[] post = own(p.row.postage(), a.size("postage_" + group));
        double[] packing = own(p.row.packing(), a.size("packing"));
        double[] share = a.share("postage_charged");
        double[] cut = p.row.fee().isPresent() ? all(p.row.fee().getAsDouble() / 100, sound.length) : a.share("selling_fee");
        for (int i = 0; i < sound.length; i++) {
            int have = sound[i];
            good[i] += have;
            double brings = have * StrictMath.exp(p.logPrice[i]);
            price[i] += brings;
            fee[i] += brings * cut[i];
            hoursListed[i] += have * hours[i];
            paid[i] += have * post[i];
            charged[i] += have * (p.row.postageCharged().isPresent() ? p.row.postageCharged().getAsDouble() : share[i] * post[i]);
            pack[i] += have * packing[i];
        }
    }

    /** Parts of a bundle are cheaper than one by one, and less work to put on sale. */
    private void soldTogether(AssumptionDraws a) {
        double[] discount = a.share("bundle_discount");
        double[] saved = a.share("bundle_hours");
        for (int i = 0; i < price.length; i++) {
            price[i] *= 1 - discount[i];
            hoursListed[i] *= saved[i];
        }
    }

    /** Draws whether it ever sells, when, whether it comes back, and what is left then. */
    private void drawSales(AssumptionDraws a, RandomNumbers chance, double[] sells, double[] median) {
        double[] returns = a.share("returns");
        double[] packHours = a.size("packing_hours");
        for (int i = 0; i < money.length; i++) {
            boolean ever = chance.uniform() < sells[i];
            double wait = chance.waiting() * median[i] / StrictMath.log(2);
            days[i] = ever && good[i] > 0 ? wait : Double.POSITIVE_INFINITY;
            returned[i] = chance.uniform() < returns[i];
            hoursSent[i] = (isBundle() ? 1 : good[i]) * packHours[i];
            money[i] = moneyAt(i, price[i]);
        }
    }

    private static double[] own(OptionalDouble stated, double[] otherwise) {
        return stated.isPresent() ? all(stated.getAsDouble(), otherwise.length) : otherwise;
    }

    static double[] all(double value, int count) {
        double[] values = new double[count];
        Arrays.fill(values, value);
        return values;
    }

    /** Net of a sale at a price: s + c - f (s + c) - x - paid - pack; a sale that comes back costs the postage twice and the packing. */
    double moneyAt(int i, double at) {
        if (returned[i]) {
            return -2 * paid[i] - pack[i];
        }
        double buyerPays = at + charged[i];
        return buyerPays - fee[i] * buyerPays - fixed[i] - paid[i] - pack[i];
    }

    /** What the prices of its parts rest on, each once. */
    String priceFrom() {
        return pieces.stream().map(Piece::priceFrom).distinct().collect(Collectors.joining("; "));
    }

    double asked() {
        double sum = 0;
        for (Piece p : pieces) {
            sum += p.row.count() * p.asked();
        }
        return sum;
    }

    int count() {
        int count = 0;
        for (Piece p : pieces) {
            count += p.row.count();
        }
        return count;
    }

    /** Expected money per hour if put on sale on the first day: what the order of work goes by. */
    double netPerHour(double horizonDays) {
        double net = 0;
        double hours = 0;
        for (int i = 0; i < money.length; i++) {
            boolean sold = days[i] <= horizonDays;
            net += sold ? money[i] : 0;
            hours += (good[i] > 0 ? hoursListed[i] : 0) + (sold ? hoursSent[i] : 0);
        }
        return hours > 0 ? net / hours : net > 0 ? Double.POSITIVE_INFINITY : 0;
    }

    /** The units of a car: bundles first met, each part that is in none by itself. */
    static List<SaleUnit> of(PartOut out) {
        Map<String, List<Piece>> together = new LinkedHashMap<>();
        for (Piece piece : out.pieces()) {
            if (piece.onSale()) {
                String name = piece.row.bundle().isEmpty() ? piece.row.part().name() : "bundle " + piece.row.bundle();
                together.computeIfAbsent(name, n -> new ArrayList<>()).add(piece);
            }
        }
        List<SaleUnit> units = new ArrayList<>();
        together.forEach((name, pieces) -> units.add(new SaleUnit(name, pieces, out)));
        return units;
    }
}
