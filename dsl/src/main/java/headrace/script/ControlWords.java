package headrace.script;

import headrace.circuit.SystemCurve;
import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.operation.Crossing;
import headrace.operation.OperatingPoint;
import headrace.pump.PumpSet;
import headrace.units.Head;
import headrace.units.Quantities;
import headrace.units.Ratio;
import java.util.List;
import java.util.Map;

/** Words about what the circuit asks for, how the pump is controlled, and where it then runs. */
public final class ControlWords implements Words {
    private static final String CONSTANT_SPEED =
            "Full speed at every flow, valves throttle the rest; on the mains without a drive unless chosen otherwise.";
    private static final String SYSTEM =
            "The head that a circuit with fixed valves takes against its flow, through a" + " point.";
    private static final String SYSTEM_EXAMPLE = "systemCurve(design, staticHead: 3.m)";
    private static final String MINIMUM_HEAD =
            "minimumHead: head kept at no flow, as a share of the design head or as a head; always needed";

    @Override
    public String subject() {
        return "Circuit and control";
    }

    /** Makes a duty. */
    @Word(help = "A flow and the head that is needed at it.", example = "duty(52.m3ph, 16.m)")
    public static Duty duty(Object flow, Object head) {
        return new Duty(Wanted.flow(flow, "the flow of a duty"), Wanted.head(head, "the head of a duty"));
    }

    /** Makes a system curve. */
    @Word(help = SYSTEM, example = SYSTEM_EXAMPLE)
    public static SystemCurve systemCurve(Object design) {
        return systemCurve(Map.of(), design);
    }

    /** Makes a system curve. */
    @Word(
            help = SYSTEM,
            example = SYSTEM_EXAMPLE,
            choices = {
                "staticHead: head at no flow; none unless chosen",
                "exponent: power of flow with which friction goes, 1 to 2.2; 2 unless chosen"
            })
    public static SystemCurve systemCurve(Map<String, ?> given, Object design) {
        Choices choices = Choices.of("systemCurve", given, "staticHead", "exponent");
        return SystemCurve.through(
                point(design, "a system curve"), choices.head("staticHead", Head.ZERO), choices.number("exponent", 2));
    }

    /** Makes the law of constant speed. */
    @Word(help = CONSTANT_SPEED, example = "constantSpeed()")
    public static ControlLaw constantSpeed() {
        return ControlLaw.constantSpeed();
    }

    /** Makes the law of constant speed. */
    @Word(
            help = CONSTANT_SPEED,
            example = "constantSpeed()",
            choices = "throughDrive: true to count the losses of the drive at full speed; false unless chosen")
    public static ControlLaw constantSpeed(Map<String, ?> given) {
        boolean drive = Choices.of("constantSpeed", given, "throughDrive").yes("throughDrive", false);
        return drive ? ControlLaw.constantSpeedThroughDrive() : ControlLaw.constantSpeed();
    }

    /** Makes the law of fixed speed. */
    @Word(
            help = "The speed at which the pump meets the design point, kept at every flow; valves throttle the rest.",
            example = "fixedSpeed(design)")
    public static ControlLaw fixedSpeed(Object design) {
        return ControlLaw.fixedSpeed(point(design, "fixedSpeed"));
    }

    /** Makes the law of constant head. */
    @Word(help = "The design head at every flow: constant differential pressure.", example = "constantHead(design)")
    public static ControlLaw constantHead(Object design) {
        return ControlLaw.constantHead(point(design, "constantHead"));
    }

    /** Makes the linear law. */
    @Word(
            help = "A head that rises in a straight line from the minimum head at no flow to the design head.",
            example = "linear(design, minimumHead: 50.percent)",
            choices = MINIMUM_HEAD)
    public static ControlLaw linear(Map<String, ?> given, Object design) {
        Duty duty = point(design, "linear");
        return ControlLaw.linear(duty, minimumHead("linear", given, duty));
    }

    /** Asks for what is missing. */
    @Word(
            help = "A head that rises in a straight line from the minimum head at no flow to the design head.",
            example = "linear(design, minimumHead: 50.percent)")
    public static ControlLaw linear(Object design) {
        return linear(Map.of(), design);
    }

    /** Makes the quadratic law. */
    @Word(
            help = "A head that rises with the square of flow from the minimum head at no flow to the design head.",
            example = "quadratic(design, minimumHead: 35.percent)",
            choices = MINIMUM_HEAD)
    public static ControlLaw quadratic(Map<String, ?> given, Object design) {
        Duty duty = point(design, "quadratic");
        return ControlLaw.quadratic(duty, minimumHead("quadratic", given, duty));
    }

    /** Asks for what is missing. */
    @Word(
            help = "A head that rises with the square of flow from the minimum head at no flow to the design head.",
            example = "quadratic(design, minimumHead: 35.percent)")
    public static ControlLaw quadratic(Object design) {
        return quadratic(Map.of(), design);
    }

    /** Finds the point at which a drive makes the pump deliver a duty. */
    @Word(
            help = "Where the pump set runs to deliver a duty: speed, shaft and wire power, losses one by one.",
            example = "operatingPoint(set, duty(52.m3ph, 16.m))")
    public static OperatingPoint operatingPoint(Object set, Object duty) {
        return OperatingPoint.at(set(set, "operatingPoint"), point(duty, "operatingPoint"));
    }

    /** Finds every point where the pump at a speed meets a system curve. */
    @Word(
            help = "Every point where the pump at a speed meets a system curve; a drooping pump may have two.",
            example = "operatingPoints(set, 1450.rpm, systemCurve(design))")
    public static List<OperatingPoint> operatingPoints(Object set, Object speed, Object system) {
        return Crossing.of(
                set(set, "operatingPoints"),
                Wanted.speed(speed, "the speed of operatingPoints"),
                Wanted.object(SystemCurve.class, system, "the system curve of operatingPoints"));
    }

    /** Finds where a law makes the pump set run at a flow. */
    @Word(
            help = "Where a control law makes the pump set run at a flow, once the limits of speed have had their say.",
            example = "steadyState(set, quadratic(design, minimumHead: 35.percent), 26.m3ph)")
    public static SteadyState steadyState(Object set, Object law, Object flow) {
        return SteadyState.of(
                Wanted.object(ControlLaw.class, law, "the law of steadyState"),
                set(set, "steadyState"),
                Wanted.flow(flow, "the flow of steadyState"));
    }

    private static Ratio minimumHead(String word, Map<String, ?> given, Duty design) {
        return minimumHead(word, Choices.of(word, given, "minimumHead"), design);
    }

    static Ratio minimumHead(String word, Choices choices, Duty design) {
        Object value = choices.object("minimumHead", Object.class);
        if (value instanceof CharSequence text) {
            value = Quantities.parse(text.toString());
        }
        String place = "the choice minimumHead: of " + word;
        boolean share = value instanceof Ratio || value instanceof Number;
        return share ? Wanted.ratio(value, place) : Wanted.head(value, place).over(design.head());
    }

    static Duty point(Object design, String word) {
        return Wanted.object(Duty.class, design, "the design point of " + word);
    }

    static PumpSet set(Object set, String word) {
        return Wanted.object(PumpSet.class, set, "the pump set of " + word);
    }
}
