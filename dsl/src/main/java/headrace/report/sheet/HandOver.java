package headrace.report.sheet;

import headrace.control.ControlLaw;
import headrace.control.Observed;
import headrace.control.SteadyState;
import headrace.control.duty.DutyPlan;
import headrace.data.Column;
import headrace.data.Table;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.UnitSystem;
import headrace.work.Steps;
import headrace.work.Work;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * Tables for the building system: the points that it reads and writes, the set-up of the drive, and a simulated day.
 * They are saved as CSV with a unit in each head, and read back as they were.
 */
public final class HandOver {
    private static final double ROOM = 1.2;
    private static final int MINUTES_OF_A_DAY = 24 * 60;
    private static final int STEPS = 10;

    private HandOver() {}

    /**
     * Returns the points of one pump.
     *
     * @param prefix what the names of the points begin with
     * @param signal the ends of an analogue signal, such as {@code 4 mA} and {@code 20 mA}
     */
    public static Table points(PumpSet set, ControlLaw law, String prefix, List<String> signal) {
        Flow flow = law.design()
                .orElseThrow(() -> new Refusal(
                        SheetProblem.INCOMPLETE_SHEET,
                        "Asked for the points of the law '" + law.name() + "', which is made for no design point",
                        "The range of a flow follows from the design flow",
                        "Use a law that is made for a design point"))
                .flow()
                .times(ROOM);
        double s = set.maximumSpeed().over(set.curve().speed()).value();
        Head head = Head.metres(
                ROOM * set.curve().headMetres(set.curve().lowestFlow().si() * s, s));
        String unitOfSpeed = unit(Speed.KIND);
        Table table = Table.of(
                "Points of " + prefix,
                Column.text("name"),
                Column.text("what it is"),
                Column.text("direction"),
                Column.text("unit"),
                Column.number("low"),
                Column.number("high"),
                Column.text("scaling"));
        String scaling = signal.get(0) + " at low, " + signal.get(1) + " at high, straight between";
        String binary = "0 off, 1 on";
        table = table.row(prefix + "-run-command", "start and stop", "to the drive", "", 0, 1, binary)
                .row(prefix + "-running", "the pump runs", "from the drive", "", 0, 1, binary)
                .row(prefix + "-fault", "the drive reports a fault", "from the drive", "", 0, 1, binary)
                .row(
                        prefix + "-speed-command",
                        "speed wanted",
                        "to the drive",
                        unitOfSpeed,
                        0,
                        in(set.maximumSpeed()),
                        scaling)
                .row(
                        prefix + "-speed",
                        "speed of the shaft",
                        "from the drive",
                        unitOfSpeed,
                        0,
                        in(set.maximumSpeed()),
                        scaling)
                .row(
                        prefix + "-power",
                        "wire power",
                        "from the drive",
                        "kW",
                        0,
                        typed(set.driveTrain().motor().rated().toKilowatts() * ROOM),
                        scaling);
        if (law.observes().contains(Observed.FLOW)) {
            table = table.row(prefix + "-flow", "flow", "from the field", unit(Flow.KIND), 0, in(flow), scaling);
        }
        if (law.observes().contains(Observed.PUMP_HEAD)) {
            table = table.row(
                    prefix + "-head", "head of the pump", "from the field", unit(Head.KIND), 0, in(head), scaling);
        }
        return table;
    }

    private static String unit(Kind<?> kind) {
        return UnitSystem.current().unitOf(kind).symbol();
    }

    private static double in(Quantity<?> quantity) {
        return typed(quantity.in(unit(quantity.kind())));
    }

    /** Six digits: what is typed into a controller has no dust of a change of units behind it. */
    private static double typed(double value) {
        return BigDecimal.valueOf(value).round(new MathContext(6)).doubleValue();
    }

    /** Returns what is set at the drive: limits of speed, the control curve in steps, turns. */
    public static Table setUp(PumpSet set, ControlLaw law, Optional<DutyPlan> turns) {
        Table table = Table.of(
                "Set-up for '" + law.name() + "'",
                Column.text("name"),
                Column.text("unit"),
                Column.number("value"),
                Column.text("source"));
        String speed = unit(Speed.KIND);
        String stated = set.minimumSpeedStated() ? "stated" : "assumed, 25 % of rated speed";
        table = table.row("least speed", speed, in(set.minimumSpeed()), stated)
                .row("greatest speed", speed, in(set.maximumSpeed()), "pump set")
                .row(
                        "rated power of the motor",
                        "kW",
                        typed(set.driveTrain().motor().rated().toKilowatts()),
                        "plate");
        Flow design = law.design().map(duty -> duty.flow()).orElse(Flow.ZERO);
        for (int i = 0; i <= STEPS && design.si() > 0; i++) {
            Flow flow = design.times((double) i / STEPS);
            Optional<Head> head = law.requiredHead(flow);
            if (head.isPresent()) {
                table = table.row("control curve, flow " + i, unit(Flow.KIND), in(flow), "law '" + law.name() + "'")
                        .row("control curve, head " + i, unit(Head.KIND), in(head.get()), law.statement());
            }
        }
        if (turns.isPresent()) {
            DutyPlan plan = turns.get();
            table = table.row("pumps that take turns", "", plan.pumps(), "turns")
                    .row(
                            "alternation after",
                            "s",
                            plan.interval().seconds(),
                            plan.counted().words())
                    .row(
                            "overlap at an alternation",
                            "s",
                            plan.changeover().overlap().seconds(),
                            "turns")
                    .row(
                            "start on fault after",
                            "s",
                            plan.changeover().faultDelay().seconds(),
                            "turns");
        }
        return table;
    }

    /**
     * Returns a day under a law, in steady state from step to step.
     *
     * @param date the day, in local standard time
     * @param minutes the length of a step, a divisor of the day
     * @param share the share of design flow at the minute at which a step begins
     */
    public static Table day(PumpSet set, ControlLaw law, LocalDate date, int minutes, IntFunction<Ratio> share) {
        if (minutes < 1 || MINUTES_OF_A_DAY % minutes != 0 || law.design().isEmpty()) {
            throw new Refusal(
                    SheetProblem.INCOMPLETE_SHEET,
                    "Asked for a day in steps of " + minutes + " min under the law '" + law.name() + "'",
                    "A step divides the day, and the law is made for a design point",
                    "Use steps of 1, 5, 15 or 60 min");
        }
        Table table = Table.of(
                "A simulated day under '" + law.name() + "'",
                Column.text("time"),
                Column.of("flow", Flow.KIND),
                Column.of("head", Head.KIND),
                Column.of("speed", Speed.KIND),
                Column.of("shaft power", Power.KIND),
                Column.of("wire power", Power.KIND));
        Flow design = law.design().get().flow();
        List<Object[]> rows = new ArrayList<>();
        try (Steps steps = Work.steps("minutes of the day", MINUTES_OF_A_DAY)) {
            for (int minute = 0; minute < MINUTES_OF_A_DAY; minute += minutes) {
                steps.at(minute);
                LocalDateTime time = date.atStartOfDay().plusMinutes(minute);
                Flow flow = design.times(share.apply(minute));
                String stamp = time.format(DateTimeFormatter.ISO_LOCAL_DATE_TIME);
                if (flow.si() == 0) {
                    Power standby = set.driveTrain().standby();
                    rows.add(new Object[] {stamp, flow, Head.ZERO, Speed.ZERO, Power.ZERO, standby});
                } else {
                    var point = SteadyState.of(law, set, flow).point();
                    rows.add(new Object[] {
                        stamp, flow, point.head(), point.speed(), point.shaftPower(), point.wirePower()
                    });
                }
            }
            steps.at(MINUTES_OF_A_DAY);
        }
        return table.rows(rows);
    }
}
