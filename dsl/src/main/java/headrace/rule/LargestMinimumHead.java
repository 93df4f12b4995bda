package headrace.rule;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.drive.LossModel;
import headrace.drive.Losses;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;

/**
 * The largest minimum head of a quadratic law that still passes a part-load rule, for several loss models side by side.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Minimum heads in shares of the design head.
 *   <dt>Limits
 *   <dd>Found to 1e-9. Where the least speed holds the pump above the law, less minimum head changes nothing.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code CONSTANT_EFFICIENCY_REFUSED} or {@code NOTHING_TO_JUDGE}, and as
 *       {@link PartLoadRule#judge}.
 *   <dt>Source
 *   <dd>The rule's own; hydraulic power alone in closed form is common practice, no source.
 * </dl>
 *
 * @param rule the rule
 * @param limits one answer for each loss model
 * @param decides a sentence on what makes the models differ, or on where the power goes with one model alone
 */
public record LargestMinimumHead(PartLoadRule rule, List<MinimumHeadLimit> limits, String decides) implements Traced {
    /** Keeps the answers from changing. */
    public LargestMinimumHead {
        limits = List.copyOf(limits);
    }

    /** Returns the answer for the loss model of the pump set, and beside it for the others that follow load. */
    public static LargestMinimumHead of(PumpSet set, Duty design, PartLoadRule rule) {
        rule.requireLossesAtPartLoad(set);
        List<LossModel> models = new ArrayList<>();
        models.add(set.driveTrain().model());
        for (LossModel model : LossModel.compared()) {
            if (!model.name().equals(models.get(0).name())) {
                models.add(model);
            }
        }
        return of(set, design, rule, models);
    }

    /** Returns the answer for these loss models, in this order. */
    public static LargestMinimumHead of(PumpSet set, Duty design, PartLoadRule rule, List<LossModel> models) {
        if (models.isEmpty()) {
            throw new Refusal(
                    RuleProblem.NOTHING_TO_JUDGE,
                    "Asked for the largest minimum head with no loss model",
                    "The answer hangs on the losses of motor and drive",
                    "Name one loss model or several, such as 'separate' and 'combined'");
        }
        List<MinimumHeadLimit> limits = models.stream()
                .map(model -> new MinimumHeadSearch(set.with(model), design, rule).limit())
                .toList();
        return new LargestMinimumHead(rule, limits, decides(set, design, limits));
    }

    /**
     * Returns the largest minimum head that hydraulic power alone would pass with: pump, motor and drive without
     * losses.
     *
     * <p>At the share {@code f} of design flow a quadratic law takes {@code f·(φ + f²·(1 − φ))} of design hydraulic
     * power; below 0 where none passes.
     */
    public Ratio hydraulicLimit() {
        double f = rule.flowFraction().value();
        double limit = (rule.powerFraction().value() / f - f * f) / (1 - f * f);
        return Ratio.of(Math.min(1, limit));
    }

    @Override
    public Notes notes() {
        Notes all = Notes.NONE;
        for (MinimumHeadLimit limit : limits) {
            all = all.and(limit.notes());
        }
        return all;
    }

    @Override
    public Basis basis() {
        Basis all = Basis.NONE;
        for (MinimumHeadLimit limit : limits) {
            all = all.and(limit.verdict().basis());
        }
        return all;
    }

    @Override
    public String toString() {
        String answers = String.join(
                "; ", limits.stream().map(MinimumHeadLimit::toString).toList());
        return answers + ". " + decides;
    }

    /** Takes the losses of every model at the minimum head of the first, so that only the model differs. */
    private static String decides(PumpSet set, Duty design, List<MinimumHeadLimit> limits) {
        MinimumHeadLimit first = limits.get(0);
        PartLoadRule rule = first.verdict().rule();
        ControlLaw law = ControlLaw.quadratic(design, first.minimumHead());
        List<RuleVerdict> verdicts = limits.stream()
                .map(limit -> rule.judge(set.with(limit.model()), law))
                .toList();
        StringBuilder text = new StringBuilder("At " + first.minimumHead() + " minimum head");
        if (verdicts.size() > 1) {
            text.append(" what decides is ").append(deciding(verdicts.get(0), verdicts.get(1)));
        }
        for (int i = 0; i < verdicts.size(); i++) {
            RuleVerdict verdict = verdicts.get(i);
            text.append(i == 0 ? ": " : "; ")
                    .append("'")
                    .append(limits.get(i).model().name())
                    .append("' loses ")
                    .append(described(verdict.atPart().point().losses()))
                    .append(" at ")
                    .append(rule.flowFraction())
                    .append(" flow and ")
                    .append(described(verdict.atDesign().losses()))
                    .append(" at the design point");
        }
        return text.toString();
    }

    /** Says which of the two changes the share more when the second model takes the place of the first. */
    private static String deciding(RuleVerdict one, RuleVerdict other) {
        double design = one.designWattage().watts();
        double byPart = (other.partWattage().watts() - one.partWattage().watts()) / design;
        double byDesign = other.share().value() - other.partWattage().watts() / design;
        return Math.abs(byPart) >= Math.abs(byDesign)
                ? "the losses of motor and drive at part flow"
                : "the losses of motor and drive at the design point";
    }

    private static String described(Losses losses) {
        Power motor = losses.of(Losses.Place.MOTOR);
        Power drive = losses.of(Losses.Place.DRIVE);
        return losses.of(Losses.Place.MOTOR_AND_DRIVE).si() > 0
                ? losses.total() + " in motor and drive together"
                : losses.total() + " (motor " + motor + ", drive " + drive + ")";
    }
}
