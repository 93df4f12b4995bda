package headrace.estimate;

import java.util.List;

/**
 * How a flow and a head answer to each cause of error, to first order: two equations between flow and speed, each with
 * what an error of one standard deviation does to it.
 *
 * <p>An equation is {@code g(Q, s; map) = reading}; an error of the reading adds to its right side, one of the map
 * takes from it. The two are solved for the changes of flow and speed.
 */
final class Sensitivity {
    /** What an equation reads. */
    enum Equation {
        POWER,
        TORQUE,
        HEAD,
        SPEED
    }

    /** A number at which an answer without bound is cut off, so that squares stay finite. */
    private static final double BOUND = 1e100;

    private final ErrorBudget budget;
    private final double radiansPerSecond;

    Sensitivity(ErrorBudget budget, double radiansPerSecond) {
        this.budget = budget;
        this.radiansPerSecond = radiansPerSecond;
    }

    /** The answers to each part of a budget, in its order: changes of flow in m³/s, speed as a share and head in m. */
    record Answers(double[] flow, double[] speed, double[] head) {
        double variance(List<ErrorBudget.Part> parts, double[] of, boolean systematic) {
            double sum = 0;
            for (int i = 0; i < of.length; i++) {
                sum += parts.get(i).cause().systematic() == systematic ? of[i] * of[i] : 0;
            }
            return sum;
        }
    }

    /** Returns the answers of two equations at a cell of a row. */
    Answers of(Equation one, Equation two, MapRow row, int i, double s) {
        double a = overFlow(one, row, i, s);
        double b = overSpeed(one, row, i, s);
        double c = overFlow(two, row, i, s);
        double d = overSpeed(two, row, i, s);
        double determinant = a * d - b * c;
        List<ErrorBudget.Part> parts = budget.parts();
        Answers answers = new Answers(new double[parts.size()], new double[parts.size()], new double[parts.size()]);
        for (int k = 0; k < parts.size(); k++) {
            double first = shift(one, parts.get(k), row, i, s);
            double second = shift(two, parts.get(k), row, i, s);
            double flow = bounded((first * d - b * second) / determinant);
            double speed = bounded((a * second - first * c) / determinant);
            double map = parts.get(k).cause() == Cause.HEAD_MAP ? parts.get(k).standard(row.head[i]) : 0;
            answers.flow[k] = flow;
            answers.speed[k] = speed;
            answers.head[k] = bounded(row.headOverFlow[i] * flow + row.headOverSpeed[i] * speed + map);
        }
        return answers;
    }

    private static double bounded(double value) {
        return Double.isNaN(value) ? 0 : Math.max(-BOUND, Math.min(BOUND, value));
    }

    private double overFlow(Equation equation, MapRow row, int i, double s) {
        return switch (equation) {
            case POWER -> row.wireOverFlow[i];
            case TORQUE -> row.shaftOverFlow[i] / (s * radiansPerSecond);
            case HEAD -> row.headOverFlow[i];
            case SPEED -> 0;
        };
    }

    private double overSpeed(Equation equation, MapRow row, int i, double s) {
        return switch (equation) {
            case POWER -> row.wireOverSpeed[i];
            case TORQUE -> (row.shaftOverSpeed[i] - row.shaft[i] / s) / (s * radiansPerSecond);
            case HEAD -> row.headOverSpeed[i];
            case SPEED -> 1;
        };
    }

    private double shift(Equation equation, ErrorBudget.Part part, MapRow row, int i, double s) {
        return switch (equation) {
            case POWER ->
                switch (part.cause()) {
                    case POWER_READING, METER_SCALE -> part.standard(row.wire[i]);
                    case POWER_MAP, DENSITY -> -part.standard(row.wireOverPower[i]);
                    case LOSSES -> -part.standard(row.loss[i]);
                    default -> 0;
                };
            case TORQUE ->
                switch (part.cause()) {
                    case TORQUE_READING -> part.standard(row.shaft[i] / (s * radiansPerSecond));
                    case POWER_MAP, DENSITY -> -part.standard(row.shaft[i] / (s * radiansPerSecond));
                    default -> 0;
                };
            case HEAD ->
                switch (part.cause()) {
                    case HEAD_READING -> part.standard(row.head[i]);
                    case HEAD_MAP -> -part.standard(row.head[i]);
                    default -> 0;
                };
            case SPEED ->
                part.cause() == Cause.SPEED_READING ? part.standard(s * radiansPerSecond) / radiansPerSecond : 0;
        };
    }
}
