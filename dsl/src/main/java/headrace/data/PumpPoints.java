package headrace.data;

import headrace.curve.CurveProblem;
import headrace.curve.NpshPoint;
import headrace.curve.TestPoint;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The points of a pump file, in the order of their flows. */
final class PumpPoints {
    private static final double EFFICIENCY_TOLERANCE = 0.02;
    private static final int FEWEST_FLOWS = 3;

    private final Sheet sheet;
    private Notes notes = Notes.NONE;

    PumpPoints(Sheet sheet) {
        this.sheet = sheet;
    }

    Notes notes() {
        return notes;
    }

    List<TestPoint> points(Speed speed, Liquid liquid) {
        List<TestPoint> points = new ArrayList<>();
        for (int row = 0; row < sheet.size(); row++) {
            points.add(point(row, speed, liquid));
        }
        long different = points.stream().map(TestPoint::flow).distinct().count();
        if (different < FEWEST_FLOWS) {
            throw tooFew(sheet);
        }
        List<TestPoint> ordered =
                points.stream().sorted(Comparator.comparing(TestPoint::flow)).toList();
        if (!ordered.equals(points)) {
            notes = notes.with(
                    DataProblem.UNORDERED_ROWS, "the rows were not in the order of their flows and were put into it");
        }
        if (different < points.size()) {
            notes = notes.with(
                    CurveProblem.REPEATED_FLOWS,
                    points.size() + " points at " + different + " different flows: all were kept as repeated readings");
        }
        return ordered;
    }

    /** Returns the NPSH required where it was read; its cells may be left empty. */
    List<NpshPoint> npsh(Speed common) {
        List<NpshPoint> readings = new ArrayList<>();
        for (int row = 0; sheet.has("npsh") && row < sheet.size(); row++) {
            if (!sheet.entry(row, PumpFile.NPSH).empty()) {
                Speed speed = sheet.has("speed") ? sheet.quantity(row, PumpFile.SPEED) : common;
                readings.add(
                        new NpshPoint(sheet.quantity(row, PumpFile.FLOW), sheet.quantity(row, PumpFile.NPSH), speed));
            }
        }
        return readings.stream().sorted(Comparator.comparing(NpshPoint::flow)).toList();
    }

    static Refusal tooFew(Sheet sheet) {
        return sheet.refused(
                DataProblem.TOO_FEW_ROWS,
                "Asked to read a pump file with fewer than three different flows",
                "A curve takes at least three points, a good one nine to twelve",
                "Add the points that are missing");
    }

    private TestPoint point(int row, Speed common, Liquid liquid) {
        Flow flow = sheet.quantity(row, PumpFile.FLOW);
        Head head = sheet.quantity(row, PumpFile.HEAD);
        Power power = sheet.quantity(row, PumpFile.POWER);
        Speed speed = sheet.has("speed") ? sheet.quantity(row, PumpFile.SPEED) : common;
        double efficiency = liquid.pressureOf(head).pascals() * flow.si() / power.watts();
        if (efficiency > 1) {
            throw sheet.entry(row, PumpFile.POWER)
                    .refused(
                            CurveProblem.EFFICIENCY_ABOVE_ONE,
                            "Asked to read a point with more hydraulic power than shaft power: " + flow + " at " + head
                                    + " is "
                                    + Power.watts(efficiency * power.watts()) + ", and the shaft power " + power,
                            "The shaft power is always the greater",
                            "See whether a column is in another unit than its head says");
        }
        if (sheet.has("efficiency")) {
            compareEfficiency(row, efficiency);
        }
        return new TestPoint(flow, head, power, speed);
    }

    private void compareEfficiency(int row, double efficiency) {
        double stated = sheet.quantity(row, PumpFile.EFFICIENCY).value();
        if (Math.abs(stated - efficiency) > EFFICIENCY_TOLERANCE * Math.max(stated, efficiency)) {
            notes = notes.with(
                    DataProblem.INCONSISTENT_EFFICIENCY,
                    "line " + sheet.entry(row, PumpFile.EFFICIENCY).place().line() + " states an efficiency of "
                            + Ratio.of(stated) + ", but its flow, head and power give " + Ratio.of(efficiency)
                            + ", which counts");
        }
    }
}
