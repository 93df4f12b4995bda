package headrace.circuit;

import headrace.curve.Duty;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;

/**
 * The head that a circuit with fixed valves takes against its flow: {@code H = Hₛ + (H_d − Hₛ)·(Q/Q_d)^m}.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Head in metres of the liquid.
 *   <dt>Limits
 *   <dd>Flows of 0 or more. The exponent is 2 for turbulent flow in rough pipes and through valves, about 1.75 to 1.9
 *       in smooth pipes, 1 for laminar flow. A circuit whose valves move has no single system curve: this is one
 *       position.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_SYSTEM_CURVE} or {@code NEGATIVE_SYSTEM_FLOW}.
 *   <dt>Source
 *   <dd>Textbook knowledge; the exponent is a choice of model and stands in the basis.
 * </dl>
 *
 * @param design the point through which it passes
 * @param staticHead the head at no flow: a difference of levels or of pressures that does not depend on flow
 * @param exponent {@code m}, from 1 to 2.2
 */
public record SystemCurve(Duty design, Head staticHead, double exponent) implements Traced {
    private static final double LEAST_EXPONENT = 1;
    private static final double MOST_EXPONENT = 2.2;

    /** Refuses a curve that would fall with flow or bend unlike any friction. */
    public SystemCurve {
        if (design.flow().si() <= 0
                || staticHead.si() < 0
                || staticHead.compareTo(design.head()) > 0
                || !(exponent >= LEAST_EXPONENT && exponent <= MOST_EXPONENT)) {
            throw new Refusal(
                    CircuitProblem.IMPOSSIBLE_SYSTEM_CURVE,
                    "Asked for a system curve through " + design + " with a static head of " + staticHead
                            + " and the exponent " + exponent,
                    "The flow must be above 0, the static head from 0 to the head of that point, the exponent from "
                            + Numbers.print(LEAST_EXPONENT) + " to " + Numbers.print(MOST_EXPONENT),
                    "Use no static head and the exponent 2 for a closed loop without further knowledge");
        }
    }

    /** Returns the system curve of a closed loop through a point: no static head, exponent 2. */
    public static SystemCurve through(Duty design) {
        return new SystemCurve(design, Head.ZERO, 2);
    }

    /** Returns the system curve through a point, with a static head and an exponent. */
    public static SystemCurve through(Duty design, Head staticHead, double exponent) {
        return new SystemCurve(design, staticHead, exponent);
    }

    /**
     * Returns the head at a flow.
     *
     * @throws Refusal with {@code NEGATIVE_SYSTEM_FLOW} below 0
     */
    public Head headAt(Flow flow) {
        if (flow.si() < 0) {
            throw new Refusal(
                    CircuitProblem.NEGATIVE_SYSTEM_FLOW,
                    "Asked for the head of a circuit at " + flow,
                    "Its flow must be 0 or more",
                    "Check the sign");
        }
        return Head.metres(headMetres(flow.cubicMetresPerSecond()));
    }

    /**
     * Returns the head in m.
     *
     * @param q the flow in m³/s, 0 or more
     */
    public double headMetres(double q) {
        double fraction = q / design.flow().si();
        double friction = design.head().si() - staticHead.si();
        return staticHead.si() + friction * (exponent == 2 ? fraction * fraction : Math.pow(fraction, exponent));
    }

    @Override
    public Notes notes() {
        return Notes.NONE;
    }

    @Override
    public Basis basis() {
        return Basis.of("system curve through " + design + ": static head " + staticHead
                + ", friction with flow to the " + Numbers.print(exponent));
    }

    @Override
    public String toString() {
        return "system curve through " + design + (staticHead.si() > 0 ? ", static head " + staticHead : "");
    }
}
