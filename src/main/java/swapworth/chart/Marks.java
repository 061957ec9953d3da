package swapworth.chart;

import java.util.ArrayList;
import java.util.List;

/** Adds groups of marks to a plot and counts them, and those that its axes do not reach. */
final class Marks {
    /** So many points beyond the axes are named. */
    private static final int NAMED = 3;
    private final Plot plot;
    private final Axis x;
    private final Axis y;
    private final List<String> words = new ArrayList<>();
    private int outside;
    private final List<String> outsiders = new ArrayList<>();

    Marks(Plot plot, Axis x, Axis y) {
        this.plot = plot;
        this.x = x;
        this.y = y;
    }

    void add(String name, double[] valuesX, double[] valuesY, List<String> labels) {
        Places places = new Places();
        for (int i = 0; i < valuesX.length; i++) {
            double across = x.at(valuesX[i]);
            double up = y.at(valuesY[i]);
            if (!Double.isNaN(across + up)) {
                if (!x.holds(across) || !y.holds(up)) {
                    outside++;
                    outsiders.addAll(labels.isEmpty() ? List.of() : labels.subList(i, i + 1));
                }
                places.add(x.clamp(across), y.clamp(up));
                if (!labels.isEmpty()) {
                    plot.hover(x.clamp(across), y.clamp(up), labels.get(i));
                }
            }
        }
        Layer layer = Layer.ofGroup(words.size(), places.x(), places.y());
        plot.add(layer);
        plot.explain(layer.form(), layer.ink(), name + " (" + places.size() + ")");
        words.add(places.size() + " " + name);
    }

    String words() {
        return words.isEmpty() ? "no points" : String.join(", ", words);
    }

    String outside() {
        String named = outsiders.isEmpty() || outsiders.size() > NAMED ? "." : ": " + String.join("; ", outsiders) + ".";
        return switch (outside) {
            case 0 -> "";
            case 1 -> "1 point lies beyond the axes and stands at the edge" + named;
            default -> outside + " points lie beyond the axes and stand at the edge" + named;
        };
    }
}
