package headrace.control.staging;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How many pumps of a plant run along its control curve so that the wire gives least, with the flows at which their
 * number changes, and what a fixed rule takes more.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Total flows, and wire power of all installed pumps.
 *   <dt>Limits
 *   <dd>Steady state, from no flow to the design flow, looked at in 1000 steps; a switch is found to a billionth of
 *       design flow. What lies between two switches closer than a step is not seen. The energy of starts is not
 *       counted.
 *   <dt>Source
 *   <dd>Wire powers of neighbouring numbers of pumps are held against each other; the fixed rule names its own source.
 * </dl>
 *
 * @param plant the plant
 * @param rule the fixed rule
 * @param switches the switches in the order of flow
 */
public record Staging(PumpPlant plant, FlowRatioRule rule, List<Switch> switches) implements Traced {
    private static final int STEPS = 1000;
    private static final double FINE = 1e-9;

    /** Keeps the switches from changing. */
    public Staging {
        switches = List.copyOf(switches);
    }

    /** Returns the staging of a plant beside the rule of the guideline. */
    public static Staging of(PumpPlant plant) {
        return of(plant, FlowRatioRule.GUIDELINE);
    }

    /** Returns the staging of a plant beside a fixed rule. */
    public static Staging of(PumpPlant plant, FlowRatioRule rule) {
        List<Switch> switches = new ArrayList<>();
        double design = plant.design().flow().si();
        double before = design / STEPS;
        for (int i = 2; i <= STEPS; i++) {
            double at = design * i / STEPS;
            if (plant.best(before) > 0 && plant.best(at) > 0) {
                collect(plant, before, at, switches);
            }
            before = at;
        }
        return new Staging(plant, rule, switches);
    }

    /** Halves a step until every change in it is found. */
    private static void collect(PumpPlant plant, double low, double high, List<Switch> switches) {
        int below = plant.best(low);
        double from = low;
        while (plant.best(high) != below) {
            double least = from;
            double most = high;
            while (most - least > FINE * high) {
                double middle = 0.5 * (least + most);
                if (plant.best(middle) == below) {
                    least = middle;
                } else {
                    most = middle;
                }
            }
            int above = plant.best(most);
            if (above == 0) {
                return;
            }
            switches.add(made(plant, most, below, above));
            below = above;
            from = most;
        }
    }

    private static Switch made(PumpPlant plant, double flow, int below, int above) {
        double step = 2 * FINE * flow;
        Optional<String> limit = plant.obstacle(below, flow + step).or(() -> plant.obstacle(above, flow - step));
        return new Switch(
                Flow.cubicMetresPerSecond(flow),
                Ratio.of(flow / plant.design().flow().si()),
                below,
                above,
                Power.watts(plant.watts(above, flow)),
                limit.orElse(Switch.EQUAL_POWER));
    }

    /**
     * Returns the number of pumps that the rule runs at a flow: more than it says where so few cannot serve it, fewer
     * where so many cannot; nothing where no number can.
     */
    public Optional<Integer> byRule(Flow total) {
        int wanted = rule.running(total.over(plant.design().flow()), plant.installed());
        for (int running = wanted; running <= plant.installed(); running++) {
            if (Double.isFinite(plant.watts(running, total.si()))) {
                return Optional.of(running);
            }
        }
        for (int running = wanted - 1; running >= 1; running--) {
            if (Double.isFinite(plant.watts(running, total.si()))) {
                return Optional.of(running);
            }
        }
        return Optional.empty();
    }

    /** Returns the least wire power at a flow; nothing where no number of pumps serves it. */
    public Optional<Power> leastPower(Flow total) {
        int best = plant.best(total);
        return best == 0 ? Optional.empty() : plant.wirePower(best, total);
    }

    /** Returns what the rule takes more than the best number of pumps at a flow; nothing where no number serves it. */
    public Optional<Power> penalty(Flow total) {
        return byRule(total)
                .flatMap(running -> plant.wirePower(running, total))
                .flatMap(power -> leastPower(total).map(power::minus));
    }

    @Override
    public Notes notes() {
        return plant.notes();
    }

    @Override
    public Basis basis() {
        return plant.basis().with("fixed rule for comparison: " + rule);
    }

    @Override
    public String toString() {
        return plant + ": "
                + (switches.isEmpty()
                        ? "one number of pumps at every flow"
                        : String.join(
                                "; ", switches.stream().map(Switch::toString).toList()));
    }
}
