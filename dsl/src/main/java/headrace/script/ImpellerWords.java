package headrace.script;

import headrace.curve.Duty;
import headrace.curve.ImpellerSizing;
import headrace.curve.PumpCurve;
import headrace.curve.TestedDiameters;
import headrace.curve.Trim;
import headrace.curve.TrimComparison;
import headrace.curve.TrimRule;
import headrace.problem.Refusal;
import headrace.units.Length;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words about impellers: turned down, between tested diameters, sized. */
public final class ImpellerWords implements Words {
    private static final String TRIM =
            "The curve with its impeller turned down to a diameter, by a rule that is named: rules"
                    + " disagree, compare them.";
    private static final String RULE =
            "rule: 'radial' unless chosen, flow with the diameter and head with its square; or a"
                    + " number from 2 to 3, flow and head both with that power of it";
    private static final String INLET = "inlet: the mean diameter of the impeller's inlet, for the rule of ISO 9906";
    private static final String COMPARE = "One trim by several rules side by side, and how much they disagree.";
    private static final String SIZE =
            "An impeller sized by a trim rule to a duty, to a power, and to best efficiency at the"
                    + " duty's flow, side by side.";

    @Override
    public String subject() {
        return "Impellers";
    }

    /** Trims an impeller. */
    @Word(help = TRIM, example = "trim(curve, 228.mm)")
    public static PumpCurve trim(Object curve, Object diameter) {
        return trim(Map.of(), curve, diameter);
    }

    /** Trims an impeller. */
    @Word(
            help = TRIM,
            example = "trim(curve, 228.mm, rule: 2.5)",
            choices = {
                RULE,
                INLET,
                "loss: points of efficiency lost for each per cent of diameter, 0 to 1; 0.2 unless chosen"
            })
    public static PumpCurve trim(Map<String, ?> given, Object curve, Object diameter) {
        Choices choices = Choices.of("trim", given, "rule", "inlet", "loss");
        return CurveWords.curve(curve, "trim")
                .trimmed(new Trim(diameter(diameter), rule(choices, "trim"), choices.number("loss", Trim.USUAL_LOSS)));
    }

    private static Length diameter(Object given) {
        return Wanted.quantity(Length.KIND, given, "the diameter of an impeller");
    }

    private static TrimRule rule(Choices choices, String word) {
        if (choices.has("inlet")) {
            return TrimRule.inlet(choices.quantity("inlet", Length.KIND));
        }
        Object rule = choices.object("rule", Object.class, "radial");
        if (rule instanceof Number) {
            return TrimRule.exponent(Wanted.number(rule, "the choice rule: of " + word));
        }
        if (!rule.toString().equals("radial")) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "'" + rule + "' was given for the choice rule: of " + word,
                    "It must be 'radial' or a number from 2 to 3",
                    "For the rule of ISO 9906 give inlet: instead");
        }
        return TrimRule.radial();
    }

    /** Compares trim rules. */
    @Word(help = COMPARE, example = "compareTrims(curve, 228.mm)")
    public static TrimComparison compareTrims(Object curve, Object diameter) {
        return compareTrims(Map.of(), curve, diameter);
    }

    /** Compares trim rules. */
    @Word(
            help = COMPARE,
            example = "compareTrims(curve, 228.mm, inlet: 110.mm)",
            choices = {INLET, "tested: a list of curves of other diameters of the pump, to interpolate between"})
    public static TrimComparison compareTrims(Map<String, ?> given, Object curve, Object diameter) {
        Choices choices = Choices.of("compareTrims", given, "inlet", "tested");
        PumpCurve full = CurveWords.curve(curve, "compareTrims");
        Optional<Length> inlet =
                choices.has("inlet") ? Optional.of(choices.quantity("inlet", Length.KIND)) : Optional.empty();
        Optional<TestedDiameters> tested = Optional.empty();
        if (choices.has("tested")) {
            List<PumpCurve> curves = curves(choices.object("tested", List.class), "compareTrims");
            if (!curves.contains(full)) {
                curves.add(full);
            }
            tested = Optional.of(TestedDiameters.of(curves));
        }
        return TrimComparison.of(full, diameter(diameter), inlet, tested);
    }

    private static List<PumpCurve> curves(List<?> given, String word) {
        List<PumpCurve> curves = new ArrayList<>();
        given.forEach(curve -> curves.add(CurveWords.curve(curve, word)));
        return curves;
    }

    /** Interpolates between tested diameters. */
    @Word(
            help = "The curve of a diameter between tested ones, in proportion; better than any rule.",
            example = "betweenDiameters([small, large], 228.mm)")
    public static PumpCurve betweenDiameters(List<?> tested, Object diameter) {
        return TestedDiameters.of(curves(tested, "betweenDiameters")).at(diameter(diameter));
    }

    /** Sizes an impeller. */
    @Word(
            help = SIZE,
            example = "sizeImpeller(curve, duty(52.m3ph, 16.m), power: 5.5.kW)",
            choices = {
                "power: the power that must not be exceeded anywhere on the curve, such as the motor's",
                RULE,
                INLET
            })
    public static List<ImpellerSizing.Sized> sizeImpeller(Map<String, ?> given, Object curve, Object duty) {
        Choices choices = Choices.of("sizeImpeller", given, "power", "rule", "inlet");
        return new ImpellerSizing(CurveWords.curve(curve, "sizeImpeller"), rule(choices, "sizeImpeller"))
                .sideBySide(
                        Wanted.object(Duty.class, duty, "the duty of sizeImpeller"),
                        choices.quantity("power", Power.KIND));
    }
}
