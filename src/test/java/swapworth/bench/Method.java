package swapworth.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import swapworth.market.FairValue;
import swapworth.market.PriceModel;
import swapworth.market.Range;

/** Ours and the references. */
enum Method {
    /** The price model of the project. */
    OURS("ours"),
    /** The median price of the training cars. */
    MEDIAN("median"),
    /** Least squares of ln price on age and mileage, with the usual prediction intervals. */
    SQUARES("squares, age and mileage"),
    /** Least squares of ln price on all columns. */
    SQUARES_ALL("squares, all columns"),
    /** The Huber fit on all columns. */
    HUBER_ALL("Huber, all columns"),
    /** The ridge: age and mileage free, the further columns shrunken by the penalty of the smallest left-out error. */
    RIDGE("ridge, further columns");

    private final String words;

    Method(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    /** What the method says of some cars after some others; the options are those of our model. */
    List<Prediction> predict(PriceModel.Options options, List<BenchCar> training, List<BenchCar> leftOut) {
        double[] y = training.stream().mapToDouble(c -> Math.log(c.price())).toArray();
        double median = Figure.median(training.stream().mapToDouble(BenchCar::price).toArray());
        ReferenceColumns columns = new ReferenceColumns(training);
        return switch (this) {
            case OURS -> ours(options, training, leftOut, median);
            case MEDIAN -> each(leftOut, car -> Prediction.point(median));
            case SQUARES -> squares(ReferenceSquares.of(matrix(training, columns::first), y), leftOut, columns::first);
            case SQUARES_ALL -> squares(ReferenceSquares.of(matrix(training, columns::all), y), leftOut, columns::all);
            case HUBER_ALL -> {
                ReferenceSquares fit = ReferenceSquares.huber(matrix(training, columns::all), y);
                yield each(leftOut, car -> Prediction.point(Math.exp(fit.predicted(columns.all(car)))));
            }
            case RIDGE -> {
                ReferenceRidge ridge = new ReferenceRidge(matrix(training, columns::all), ReferenceColumns.FIRST, y);
                double[] b = ridge.coefficients(ridge.best());
                yield each(leftOut, car -> Prediction.point(Math.exp(ReferenceSquares.dot(b, columns.all(car)))));
            }
        };
    }

    private static List<Prediction> ours(PriceModel.Options options, List<BenchCar> training, List<BenchCar> leftOut,
            double median) {
        PriceModel model = options.fit(training.stream().map(BenchCar::car).toList());
        return each(leftOut, car -> model.value(car.subject()).match(Method::own, no -> Prediction.cannotTell(median)));
    }

    private static Prediction own(FairValue value) {
        Range in80 = value.range(0.80);
        Range in95 = value.range(0.95);
        return new Prediction(value.median(), in80.low(), in80.high(), in95.low(), in95.high(), Prediction.Answer.OWN);
    }

    private static List<Prediction> squares(ReferenceSquares fit, List<BenchCar> leftOut, Function<BenchCar, double[]> row) {
        return each(leftOut, car -> {
            double[] x = row.apply(car);
            double middle = fit.predicted(x);
            double in80 = fit.reach(x, 0.80);
            double in95 = fit.reach(x, 0.95);
            return new Prediction(Math.exp(middle), Math.exp(middle - in80), Math.exp(middle + in80), Math.exp(middle - in95),
                    Math.exp(middle + in95), Prediction.Answer.OWN);
        });
    }

    private static List<Prediction> each(List<BenchCar> cars, Function<BenchCar, Prediction> prediction) {
        List<Prediction> all = new ArrayList<>(cars.size());
        cars.forEach(car -> all.add(prediction.apply(car)));
        return all;
    }

    private static double[][] matrix(List<BenchCar> cars, Function<BenchCar, double[]> row) {
        return cars.stream().map(row).toArray(double[][]::new);
    }
}
