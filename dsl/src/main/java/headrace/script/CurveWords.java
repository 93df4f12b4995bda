package headrace.script;

import headrace.curve.CurvePoint;
import headrace.curve.Duty;
import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.HeadShape;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.SpeedCollapse;
import headrace.liquid.Liquid;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Power;
import headrace.units.Quantities;
import headrace.units.Ratio;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Words about pump tests and the curves fitted to them. */
public final class CurveWords implements Words {
    private static final String FIT =
            "Fits head and shaft power to the points of a pump test, brought to the speed of the"
                    + " test; the efficiency follows from both.";
    private static final String FIT_EXAMPLE = "curve = fit(readPumpTest('demo-data/pumps/heron-65.csv'))";
    private static final String MODEL =
            "The same curve with another efficiency over speed: 'correlation', which is usual,"
                    + " or 'affinity', or one that was measured, or a mechanical loss apart.";

    @Override
    public String subject() {
        return "Pump curves";
    }

    /** Fits a curve to a test. */
    @Word(help = FIT, example = FIT_EXAMPLE)
    public static PumpCurve fit(Object test) {
        return fit(Map.of(), test);
    }

    /** Fits a curve to a test. */
    @Word(
            help = FIT,
            example = FIT_EXAMPLE,
            choices = {
                "shape: 'free' unless chosen; 'never rising', 'concave' or 'never rising and concave' hold the head to it"
            })
    public static PumpCurve fit(Map<String, ?> given, Object test) {
        Choices choices = Choices.of("fit", given, "shape");
        return PumpCurve.fit(
                Wanted.object(PumpTest.class, test, "the test that fit is given"),
                shape(choices.text("shape", "free")));
    }

    private static HeadShape shape(String words) {
        return Arrays.stream(HeadShape.values())
                .filter(shape -> shape.toString().equals(words))
                .findFirst()
                .orElseThrow(() -> unknown(
                        words,
                        "the choice shape: of fit",
                        Arrays.stream(HeadShape.values())
                                .map(HeadShape::toString)
                                .toList()));
    }

    private static Refusal unknown(String given, String place, List<String> known) {
        List<String> near = Nearest.to(given, known);
        return new Refusal(
                ScriptProblem.WRONG_VALUE,
                "The text '" + given + "' was given for " + place,
                "It must be one of '" + String.join("', '", known) + "'",
                near.isEmpty() ? "Use one of these" : "The nearest is '" + near.get(0) + "'");
    }

    /** Draws a curve through a table. */
    @Word(
            help =
                    "Draws the curve through every point of a table without scatter, such as one read off a printed curve.",
            example = "curve = through(readPumpTest('demo-data/pumps/heron-65.csv'))")
    public static PumpCurve through(Object table) {
        return PumpCurve.through(Wanted.object(PumpTest.class, table, "the table that through is given"));
    }

    /** Moves a curve over speed. */
    @Word(
            help = "The curve at another speed, given as a speed or as a share of the curve's own.",
            example = "atSpeed(curve, 1200.rpm)")
    public static PumpCurve atSpeed(Object curve, Object speed) {
        PumpCurve moved = curve(curve, "atSpeed");
        Object asked = speed instanceof CharSequence text ? Quantities.parse(text.toString()) : speed;
        return asked instanceof Ratio share
                ? moved.atSpeed(share)
                : moved.atSpeed(Wanted.speed(asked, "the speed of a curve"));
    }

    /** Moves a curve to another liquid. */
    @Word(
            help =
                    "The curve in another liquid: power goes with the density, and a viscous liquid lowers flow, head and"
                            + " efficiency, by ANSI/HI 9.6.7 anew at every speed.",
            example = "inLiquid(curve, propyleneGlycol(40.percent, 0.degC))")
    public static PumpCurve inLiquid(Object curve, Object liquid) {
        return curve(curve, "inLiquid").inLiquid(Wanted.object(Liquid.class, liquid, "the liquid of a curve"));
    }

    /** Moves a pump set to another liquid. */
    @Word(
            help = "With a pump set: the set whose curve is in another liquid, such as that of its circuit.",
            example = "inLiquid(set, propyleneGlycol(40.percent, 0.degC))")
    public static PumpSet inLiquid(PumpSet set, Object liquid) {
        return set.inLiquid(Wanted.object(Liquid.class, liquid, "the liquid of a pump set"));
    }

    /** Continues a curve. */
    @Word(
            help = "The curve continued beyond its test to a flow, by choice: points beyond are marked.",
            example = "extend(curve, 90.m3ph)")
    public static PumpCurve extend(Object curve, Object flow) {
        return curve(curve, "extend").extendedTo(Wanted.flow(flow, "the flow to which a curve is extended"));
    }

    /** Gives a point of a curve. */
    @Word(
            help = "The point of a curve at a flow: head, shaft power and efficiency.",
            example = "pointAt(curve, 50.m3ph)")
    public static CurvePoint pointAt(Object curve, Object flow) {
        return curve(curve, "pointAt").at(Wanted.flow(flow, "the flow of a point"));
    }

    /** Gives the points of a head. */
    @Word(
            help = "Every point of a curve that has a head: two where the curve droops.",
            example = "pointsAt(curve, 16.m)")
    public static List<CurvePoint> pointsAt(Object curve, Object head) {
        return curve(curve, "pointsAt").pointsAt(Wanted.head(head, "the head of a point"));
    }

    /** Gives the point of best efficiency. */
    @Word(help = "The point of best efficiency of a curve.", example = "bestEfficiencyPoint(curve)")
    public static CurvePoint bestEfficiencyPoint(Object curve) {
        return curve(curve, "bestEfficiencyPoint").bestEfficiencyPoint();
    }

    /** Finds a speed. */
    @Word(
            help = "The point, with its speed, at which a curve moved over speed delivers a duty.",
            example = "pointFor(curve, duty(52.m3ph, 16.m))")
    public static CurvePoint pointFor(Object curve, Object duty) {
        return curve(curve, "pointFor").pointFor(Wanted.object(Duty.class, duty, "the duty of pointFor"));
    }

    /** Compares speeds. */
    @Word(
            help =
                    "Compares the readings of a test at several speeds with the affinity laws, and measures the efficiency"
                            + " over speed.",
            example = "speeds = compareSpeeds(test)")
    public static SpeedCollapse compareSpeeds(Object test) {
        return SpeedCollapse.of(Wanted.object(PumpTest.class, test, "the test that compareSpeeds is given"));
    }

    /** Changes the efficiency over speed. */
    @Word(help = MODEL, example = "withEfficiencyOverSpeed(curve, 'affinity')")
    public static PumpCurve withEfficiencyOverSpeed(Object curve, Object model) {
        return curve(curve, "withEfficiencyOverSpeed").withEfficiencyOverSpeed(model(model));
    }

    private static EfficiencyOverSpeed model(Object given) {
        if (given instanceof SpeedCollapse measured) {
            return measured.measured();
        }
        if (!(given instanceof CharSequence)) {
            return Wanted.object(EfficiencyOverSpeed.class, given, "the efficiency over speed of a curve");
        }
        return switch (given.toString()) {
            case "affinity" -> EfficiencyOverSpeed.affinity();
            case "correlation" -> EfficiencyOverSpeed.correlation();
            default ->
                throw unknown(
                        given.toString(), "the efficiency over speed of a curve", List.of("correlation", "affinity"));
        };
    }

    /** Splits a mechanical loss off. */
    @Word(
            help = MODEL,
            example = "withEfficiencyOverSpeed(curve, mechanicalLoss: 80.W)",
            choices = {
                "mechanicalLoss: the loss in bearings and seals at the tested speed",
                "exponent: the power of speed with which it goes, 1 to 3; 1 unless chosen"
            })
    public static PumpCurve withEfficiencyOverSpeed(Map<String, ?> given, Object curve) {
        Choices choices = Choices.of("withEfficiencyOverSpeed", given, "mechanicalLoss", "exponent");
        return curve(curve, "withEfficiencyOverSpeed")
                .withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(
                        choices.quantity("mechanicalLoss", Power.KIND), choices.number("exponent", 1)));
    }

    static PumpCurve curve(Object given, String word) {
        return Wanted.object(PumpCurve.class, given, "the curve of " + word);
    }
}
