package headrace.script;

import headrace.curve.CurvePoint;
import headrace.curve.Duty;
import headrace.curve.NpshCurve;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.liquid.Liquid;
import headrace.operation.OperatingPoint;
import headrace.operation.limit.ReachableRegion;
import headrace.operation.suction.Atmosphere;
import headrace.operation.suction.Filling;
import headrace.operation.suction.NpshCheck;
import headrace.operation.suction.NpshCheck.Terms;
import headrace.operation.suction.NpshOverReach;
import headrace.operation.suction.NpshRule;
import headrace.operation.suction.SuctionSide;
import headrace.operation.suction.WorkingPressure;
import headrace.operation.suction.WorkingPressure.Part;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.AbsolutePressure;
import headrace.units.GaugePressure;
import headrace.units.Length;
import headrace.units.Pressure;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words about the suction side, NPSH and the pressures of a loop. */
public final class SuctionWords implements Words {
    private static final String OPEN =
            "A suction side that draws from a surface open to the air, so high above the pump; below is negative.";
    private static final String CLOSED = "The suction side of a closed loop whose tank holds a gauge pressure.";
    private static final String AIR = "air: the absolute pressure of the air; that at sea level unless chosen";
    private static final String LOSS =
            "loss: a duty, the head that the pipe to the pump takes at a flow; none unless chosen";
    private static final String BORE = "bore: the bore of the suction flange, for the pressure there";
    private static final String TIMES =
            "times: multiple of the NPSH required that must be available; 1.2 unless chosen";
    private static final String PLUS = "plus: head beyond the NPSH required that must be available; 1 m unless chosen";
    private static final String LIQUID =
            "liquid: what is pumped, at the temperature of the suction side; that of the curve unless chosen";
    private static final String SUCTION = "suction: openSuction or closedSuction; always needed";
    private static final String NPSH = "npsh: the npshCurve of the pump; always needed";

    @Override
    public String subject() {
        return "Suction and pressures";
    }

    /** Gives the pressure of the air. */
    @Word(help = "The mean pressure of the air at an altitude, -500 to 11 000 m.", example = "airAt(800.m)")
    public static AbsolutePressure airAt(Object altitude) {
        return Atmosphere.at(Wanted.quantity(Length.KIND, altitude, "the altitude of airAt"));
    }

    /** Makes an open suction side. */
    @Word(help = OPEN, example = "openSuction(-1.5.m)")
    public static SuctionSide openSuction(Object surfaceAbovePump) {
        return openSuction(Map.of(), surfaceAbovePump);
    }

    /** Makes an open suction side. */
    @Word(
            help = OPEN,
            example = "openSuction(-1.5.m, loss: duty(50.m3ph, 0.8.m))",
            choices = {AIR, LOSS, BORE})
    public static SuctionSide openSuction(Map<String, ?> given, Object surfaceAbovePump) {
        Choices choices = Choices.of("openSuction", given, "air", "loss", "bore");
        return rest(
                choices,
                SuctionSide.open(
                        air(choices),
                        Wanted.quantity(Length.KIND, surfaceAbovePump, "the height of the surface of openSuction")));
    }

    /** Makes a closed suction side. */
    @Word(help = CLOSED, example = "closedSuction(120.kPaGauge)")
    public static SuctionSide closedSuction(Object pressure) {
        return closedSuction(Map.of(), pressure);
    }

    /** Makes a closed suction side. */
    @Word(
            help = CLOSED,
            example = "closedSuction(120.kPaGauge, height: 2.m, loss: duty(50.m3ph, 0.5.m))",
            choices = {
                "height: of the tank above the pump, negative below; 0 unless chosen",
                "tank: 'suction' unless chosen, or 'discharge', the side of the pump on which the tank is connected",
                AIR,
                LOSS,
                BORE
            })
    public static SuctionSide closedSuction(Map<String, ?> given, Object pressure) {
        Choices choices = Choices.of("closedSuction", given, "height", "tank", "air", "loss", "bore");
        SuctionSide suction = SuctionSide.closed(
                air(choices),
                Wanted.quantity(GaugePressure.KIND, pressure, "the pressure of closedSuction"),
                choices.quantity("height", Length.KIND, Length.ZERO));
        String side = choices.text("tank", "suction");
        if (!side.equals("suction") && !side.equals("discharge")) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "'" + side + "' was given for the choice tank: of closedSuction",
                    "It must be 'suction' or 'discharge'",
                    "Name the side of the pump on which the tank is connected");
        }
        return rest(choices, side.equals("discharge") ? suction.onDischargeSide() : suction);
    }

    private static AbsolutePressure air(Choices choices) {
        return choices.quantity("air", AbsolutePressure.KIND, Atmosphere.SEA_LEVEL);
    }

    private static SuctionSide rest(Choices choices, SuctionSide suction) {
        SuctionSide made = choices.has("loss") ? suction.withLoss(choices.object("loss", Duty.class)) : suction;
        return choices.has("bore") ? made.withFlange(choices.quantity("bore", Length.KIND)) : made;
    }

    /** Fits the NPSH required. */
    @Word(
            help = "The NPSH that a pump requires, fitted to the NPSH column of its test as a + b·Q².",
            example = "npshCurve(readPumpTest('demo-data/pumps/bittern-150.csv'))")
    public static NpshCurve npshCurve(Object test) {
        return NpshCurve.of(Wanted.object(PumpTest.class, test, "the test of npshCurve"));
    }

    /** Fits the NPSH required, for another impeller and liquid. */
    @Word(
            help = "The NPSH that a pump requires, as it is with the impeller and in the liquid of one of its curves: a"
                    + " trim leaves it at the same flow, a viscous liquid asks for more.",
            example = "npshCurve(readPumpTest('demo-data/pumps/bittern-150.csv'), as: curve)",
            choices = "as: the curve of the pump; always needed here")
    public static NpshCurve npshCurve(Map<String, ?> given, Object test) {
        return npshCurve(test).movedAs(Choices.of("npshCurve", given, "as").object("as", PumpCurve.class));
    }

    /** Checks the NPSH of a point. */
    @Word(
            help = "The NPSH available at an operating point or a point of a curve, against what is required.",
            example = "npshAt(pointAt(curve, 200.m3ph), suction: openSuction(1.m), npsh: required, liquid: liquid)",
            choices = {SUCTION, NPSH, "liquid: what is pumped, at the temperature of the suction side", TIMES, PLUS})
    public static NpshCheck npshAt(Map<String, ?> given, Object point) {
        Choices choices = Choices.of("npshAt", given, "suction", "npsh", "liquid", "times", "plus");
        CurvePoint at = point instanceof OperatingPoint operating
                ? operating.point()
                : Wanted.object(CurvePoint.class, point, "the point of npshAt");
        return NpshCheck.of(at, terms(choices, choices.object("liquid", Liquid.class)));
    }

    /** Checks NPSH over reach. */
    @Word(
            help = "The NPSH available against what is required, over all that a pump set can reach.",
            example = "checkNpsh(set, suction: closedSuction(120.kPaGauge, height: 2.m), npsh: required)",
            choices = {SUCTION, NPSH, LIQUID, TIMES, PLUS, LimitWords.FROM, LimitWords.TO})
    public static NpshOverReach checkNpsh(Map<String, ?> given, Object set) {
        Choices choices = Choices.of("checkNpsh", given, "suction", "npsh", "liquid", "times", "plus", "from", "to");
        ReachableRegion reach = LimitWords.reach(choices, set, "checkNpsh");
        Liquid liquid =
                choices.object("liquid", Liquid.class, reach.set().curve().liquid());
        return NpshOverReach.of(reach, terms(choices, liquid));
    }

    private static Terms terms(Choices choices, Liquid liquid) {
        NpshRule usual = NpshRule.USUAL;
        NpshRule rule = choices.has("times") || choices.has("plus")
                ? NpshRule.of(choices.number("times", usual.times()), choices.head("plus", usual.plus()))
                : usual;
        return new Terms(
                choices.object("suction", SuctionSide.class), choices.object("npsh", NpshCurve.class), rule, liquid);
    }

    /** Finds the filling of a loop. */
    @Word(
            help = "The pressure to which a closed loop is filled cold, and the least one hot, at its tank.",
            example = "filling(water(10.degC), water(80.degC), topAboveTank: 18.m)",
            choices = {
                "topAboveTank: how high the top of the loop stands above the tank; always needed",
                "top: pressure at the top when cold; 30 kPa is assumed otherwise",
                "aboveBoiling: how far the top stays above boiling when hot; 30 kPa is assumed otherwise",
                AIR
            })
    public static Filling filling(Map<String, ?> given, Object cold, Object hot) {
        Choices choices = Choices.of("filling", given, "topAboveTank", "top", "aboveBoiling", "air");
        Filling.Loop loop = new Filling.Loop(
                Wanted.object(Liquid.class, cold, "the cold liquid of filling"),
                Wanted.object(Liquid.class, hot, "the hot liquid of filling"),
                choices.quantity("topAboveTank", Length.KIND),
                air(choices));
        return Filling.of(loop, pressure(choices, "top"), pressure(choices, "aboveBoiling"));
    }

    private static Optional<Pressure> pressure(Choices choices, String name) {
        return choices.has(name) ? Optional.of(choices.quantity(name, Pressure.KIND)) : Optional.empty();
    }

    /** Finds the highest pressure. */
    @Word(
            help =
                    "The highest pressure that a pump set can make against a closed valve at its greatest speed, held against"
                            + " what the parts bear.",
            example = "highestPressure(set, atRest: 150.kPaGauge, swing: 50.kPa, parts: [casing: 10.barGauge])",
            choices = {
                "atRest: the pressure where the pump stands, at rest; always needed",
                "swing: how far the pressure of the tank rises; none unless chosen",
                "parts: what each part bears, by its name",
                "relief: the setting of the relief valve, of which 90 % count"
            })
    public static WorkingPressure highestPressure(Map<String, ?> given, Object set) {
        Choices choices = Choices.of("highestPressure", given, "atRest", "swing", "parts", "relief");
        PumpSet pumps = Wanted.object(PumpSet.class, set, "the pump set of highestPressure");
        List<Part> parts = new ArrayList<>();
        Map<?, ?> named = choices.object("parts", Map.class, Map.of());
        named.forEach((name, bears) -> parts.add(new Part(
                String.valueOf(name),
                Wanted.quantity(GaugePressure.KIND, bears, "the part " + name + " of highestPressure"))));
        if (choices.has("relief")) {
            parts.add(Part.relief(choices.quantity("relief", GaugePressure.KIND)));
        }
        return WorkingPressure.of(
                ReachableRegion.of(pumps),
                choices.quantity("atRest", GaugePressure.KIND),
                choices.quantity("swing", Pressure.KIND, Pressure.ZERO),
                parts);
    }
}
