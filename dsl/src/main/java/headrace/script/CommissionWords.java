package headrace.script;

import headrace.commission.CommissioningSheet;
import headrace.commission.SiteReading;
import headrace.commission.SiteVerdict;
import headrace.curve.Duty;
import headrace.estimate.FlowEstimator;
import headrace.estimate.PowerMap;
import headrace.estimate.site.AgainstTruth;
import headrace.estimate.site.Calibration;
import headrace.estimate.site.KnownPoint;
import headrace.operation.limit.DeadHead;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words about putting a pump set to work: the sheet, what was read, and calibration. */
public final class CommissionWords implements Words {
    private static final String SHEET =
            "What should be read at several speeds: head and wire power against a closed valve and with the circuit open as"
                    + " at its design duty, each with its tolerance, k = 2.";
    private static final String CALIBRATE =
            "The map of an estimator moved to meet readings at known flows, before and after: one point gives a scale, two"
                    + " or more a scale and an offset, a closed valve (a flow of 0) the offset.";
    private static final String CALIBRATE_EXAMPLE =
            "calibrate(estimator, [[45.m3ph, 2.9.kW, 1250.rpm]], flowError: 2.percent)";

    private static final String SWEEP =
            "What an estimator says along the flows of one speed of a pump set whose real map is known, without noise.";
    private static final String SWEEP_EXAMPLE =
            "againstTruth(estimator, changedMap(set, power: 104.percent), speed: 1250.rpm)";

    @Override
    public String subject() {
        return "Commissioning";
    }

    /** Makes a commissioning sheet. */
    @Word(help = SHEET, example = "commissioningSheet(estimator, design)")
    public static CommissioningSheet commissioningSheet(Object estimator, Object duty) {
        return commissioningSheet(Map.of(), estimator, duty);
    }

    /** Makes a commissioning sheet. */
    @Word(
            help = SHEET,
            example = "commissioningSheet(estimator, design, speeds: 5)",
            choices = {
                "speeds: how many, 2 to 20, or a list of speeds; 5 unless chosen",
                "deadHead: what deadHeadTime says of the pump at its greatest speed, printed beside the sheet"
            })
    public static CommissioningSheet commissioningSheet(Map<String, ?> given, Object estimator, Object duty) {
        Choices choices = Choices.of("commissioningSheet", given, "speeds", "deadHead");
        Duty design = Wanted.object(Duty.class, duty, "the duty of commissioningSheet");
        FlowEstimator made = EstimateWords.estimator(estimator, "commissioningSheet");
        CommissioningSheet sheet = given.get("speeds") instanceof List<?> speeds
                ? CommissioningSheet.of(
                        made,
                        design,
                        speeds.stream()
                                .map(each -> Wanted.speed(each, "a speed of commissioningSheet"))
                                .toList())
                : CommissioningSheet.of(made, design, choices.whole("speeds", 5));
        return choices.has("deadHead") ? sheet.with(choices.object("deadHead", DeadHead.class)) : sheet;
    }

    /** Judges readings. */
    @Word(
            help =
                    "What readings on site say beside a commissioning sheet: rotation, a closed valve, another impeller, the"
                            + " scale of a meter, a gauge height or worn rings. A reading is a list of names: speed:, shutOffHead:,"
                            + " closedPower:, dutyHead:, dutyPower:; what was not read is left out.",
            example = "judgeReadings(sheet, [[speed: 1450.rpm, shutOffHead: 19.m, closedPower: 1.7.kW]])")
    public static SiteVerdict judgeReadings(Object sheet, Object readings) {
        CommissioningSheet made = Wanted.object(CommissioningSheet.class, sheet, "the sheet of judgeReadings");
        List<?> rows = Wanted.object(List.class, readings, "the readings of judgeReadings");
        return made.judge(rows.stream().map(CommissionWords::siteReading).toList());
    }

    private static SiteReading siteReading(Object given) {
        Map<?, ?> named = Wanted.object(Map.class, given, "a reading of judgeReadings");
        Map<String, Object> row = new LinkedHashMap<>();
        named.forEach((name, value) -> row.put(String.valueOf(name), value));
        Choices choices =
                Choices.of("judgeReadings", row, "speed", "shutOffHead", "closedPower", "dutyHead", "dutyPower");
        return new SiteReading(
                choices.quantity("speed", Speed.KIND),
                head(choices, "shutOffHead"),
                power(choices, "closedPower"),
                head(choices, "dutyHead"),
                power(choices, "dutyPower"));
    }

    private static Optional<Head> head(Choices choices, String name) {
        return choices.has(name) ? Optional.of(choices.head(name)) : Optional.empty();
    }

    private static Optional<Power> power(Choices choices, String name) {
        return choices.has(name) ? Optional.of(choices.quantity(name, Power.KIND)) : Optional.empty();
    }

    /** Calibrates a map. */
    @Word(help = CALIBRATE, example = CALIBRATE_EXAMPLE)
    public static Calibration calibrate(Object estimator, Object points) {
        return calibrate(Map.of(), estimator, points);
    }

    /** Calibrates a map. */
    @Word(
            help = CALIBRATE,
            example = CALIBRATE_EXAMPLE,
            choices = "flowError: one standard deviation of the known flows; 2 % unless chosen")
    public static Calibration calibrate(Map<String, ?> given, Object estimator, Object points) {
        Choices choices = Choices.of("calibrate", given, "flowError");
        List<?> rows = Wanted.object(List.class, points, "the points of calibrate");
        return Calibration.of(
                EstimateWords.estimator(estimator, "calibrate"),
                rows.stream().map(CommissionWords::point).toList(),
                choices.ratio("flowError", Ratio.percent(2)));
    }

    /** A head may stand as the fourth. */
    private static KnownPoint point(Object row) {
        boolean head = row instanceof List<?> list && list.size() == 4;
        Object[] values = Rows.of(
                row,
                head ? 4 : 3,
                "a point of calibrate",
                "flow, wire power and speed, and the head where it was read");
        KnownPoint point = KnownPoint.of(
                Wanted.flow(values[0], "the flow of a point of calibrate"),
                Wanted.power(values[1], "the power of a point of calibrate"),
                Wanted.speed(values[2], "the speed of a point of calibrate"));
        return head ? point.with(Wanted.head(values[3], "the head of a point of calibrate")) : point;
    }

    /** Sweeps an estimator against the truth. */
    @Word(help = SWEEP, example = SWEEP_EXAMPLE)
    public static AgainstTruth againstTruth(Object estimator, Object truth) {
        return againstTruth(Map.of(), estimator, truth);
    }

    /** Sweeps an estimator against the truth. */
    @Word(
            help = SWEEP,
            example = SWEEP_EXAMPLE,
            choices = {
                "speed: the speed; that of the map unless chosen",
                "by: 'power and speed' unless chosen, or 'torque and speed', 'power and head', 'head and speed', 'mix'"
            })
    public static AgainstTruth againstTruth(Map<String, ?> given, Object estimator, Object truth) {
        Choices choices = Choices.of("againstTruth", given, "speed", "by");
        PowerMap real = EstimateWords.map(truth, "againstTruth");
        return AgainstTruth.of(
                EstimateWords.estimator(estimator, "againstTruth"),
                real,
                EstimateWords.method(choices, "againstTruth"),
                choices.quantity("speed", Speed.KIND, real.speed()));
    }
}
