package swapworth.market;

import swapworth.assumptions.*;
import swapworth.world.*;
import java.lang.reflect.*;

final class IndexTrial2 {
    public static void main(String[] a) throws Exception {
        for (int seed = 500; seed < 504; seed++) {
            SampleWorld w = SampleWorld.generate(seed);
            for (double s : new double[] {.002, .004, .007, .01, .014, .02, .028, .04}) {
                Assumptions as = Assumptions.defaults();
                Assumption o = as.get("spread_market_month");
                as = as.with(new Assumption(o.name(), o.question(), s, 0, o.unit(), o.source(), o.note()));
                PriceModel m = PriceModel.options().with(as).fit(w.joinedCars());
                Field f = PriceModel.class.getDeclaredField("posterior"); f.setAccessible(true);
                Object p = f.get(m); Method lm = p.getClass().getDeclaredMethod("logMarginal"); lm.setAccessible(true);
                MarketIndex ix = ((Answer.Told<MarketIndex>) m.index()).value();
                IndexMonth im = ix.months().get(4); 
                System.out.printf("%d s %.3f lm %.3f  idx4 %.1f (%.1f-%.1f) truth %.1f%n", seed, s, (double) lm.invoke(p), im.index(), im.range80().low(), im.range80().high(), w.truths().index(4, 0));
            }
        }
    }
}
