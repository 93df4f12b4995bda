package headrace.energy.year;

import headrace.circuit.BranchState;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Demands;
import headrace.circuit.LeastFlow;
import headrace.control.ControlLaw;
import headrace.control.ControlProblem;
import headrace.control.Demand;
import headrace.control.LoopOperation;
import headrace.control.LoopRunner;
import headrace.control.LoopState;
import headrace.control.SteadyState;
import headrace.curve.PumpCurve;
import headrace.energy.EnergyProblem;
import headrace.energy.load.BranchYear;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.OperatingRegion.Zone;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.units.Volume;
import java.time.LocalDateTime;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Counts up a year under one law, hour by hour. */
final class HourCount {
    /** Below this share of its demand a branch counts as starved. */
    static final double ENOUGH = 0.99;

    private static final double ROUNDING = 1e-9;
    /** Shares that differ by less are the same: the first hour stays the worst. */
    private static final double TIE = 1e-12;

    private static final double STANDARD_GRAVITY = 9.80665;

    final ControlLaw law;
    private final PumpSet set;
    private final CircuitSolver solver;
    private final Frame frame;
    private LoopRunner runner;
    private ControlLaw now;
    private final OperatingRegion region;
    private final double bestFlow;
    private final double weight;
    private final double standby;
    final double[] wire;
    final double[] starved;
    final double[] zones = new double[Zone.values().length];
    double shaft;
    double liquid;
    double needed;
    double standbyWatts;
    double head;
    double unmet;
    int on;
    int starts;
    double atLeast;
    double atGreatest;
    int peakHour;
    double worst = 1;
    int worstHour = -1;
    int worstBranch = -1;
    double worstMissing;
    private boolean running;

    /** A minimum-flow valve serves nobody, and starves nobody. */
    private final boolean[] bypass;

    /** The share of an hour that is being counted. */
    private double part = 1;

    HourCount(ControlLaw law, PumpSet set, CircuitSolver solver, Frame frame) {
        this.law = law;
        this.set = set;
        this.solver = solver;
        this.frame = frame;
        region = frame.region();
        now = law.at(frame.start());
        runner = LoopRunner.canRun(now) ? LoopRunner.of(now, set, solver) : null;
        PumpCurve curve = set.curve();
        bestFlow = curve.bestEfficiencyPoint().flow().si();
        weight = curve.liquid().density().kilogramsPerCubicMetre() * STANDARD_GRAVITY;
        standby = frame.standby(now, set);
        wire = new double[frame.hours()];
        starved = new double[solver.circuit().branches().size()];
        bypass = new boolean[starved.length];
        LeastFlow.bypasses(solver.circuit()).forEach(branch -> bypass[solver.link(branch.name())] = true);
    }

    /**
     * What is the same for every law: how many hours, when the first one begins on the clock of the place, the region.
     */
    record Frame(int hours, LocalDateTime start, OperatingRegion region) {
        double standby(ControlLaw law, PumpSet set) {
            boolean mains =
                    !law.needsCircuit() && law.demand(new LoopState(Flow.ZERO), set) instanceof Demand.FullSpeedOnMains;
            return mains ? 0 : set.driveTrain().standby().watts();
        }
    }

    void still(int hour) {
        wire[hour] = standby;
        standbyWatts += standby;
        running = false;
    }

    /**
     * Counts an hour.
     *
     * @param hour the hour
     * @param demands what each branch is asked for, by its place in the circuit, in m³/s
     * @param total their sum
     * @param neededMetres the head that meets all of them
     * @param onlyThey whether no flow but theirs can pass
     */
    void run(int hour, double[] demands, double total, double neededMetres, boolean onlyThey) {
        starts += running ? 0 : 1;
        running = true;
        on++;
        follow(hour);
        if (runner == null) {
            slowly(hour, demands, neededMetres);
            return;
        }
        part = 1.0 / runner.stepsAnHour();
        double watts = 0;
        for (int step = 0; step < runner.stepsAnHour(); step++) {
            boolean met = runner.run(total, onlyThey ? neededMetres : Double.POSITIVE_INFINITY);
            if (!met) {
                for (int i = 0; i < demands.length; i++) {
                    if (look(hour, i, demands[i], runner.flow(i))) {
                        worstMissing = runner.missingMetres(i, demands[i]);
                    }
                }
            }
            atLeast += runner.atLeastSpeed() ? part : 0;
            atGreatest += runner.atGreatestSpeed() ? part : 0;
            add(runner.flow(), runner.head(), neededMetres);
            watts += part * runner.wireWatts();
            shaft += part * runner.shaftWatts();
            zone(runner.flow(), runner.speedRatio());
            runner.step(demands);
        }
        take(hour, watts);
    }

    /** A law that follows the clock is another law in every hour. */
    private void follow(int hour) {
        if (law.followsClock()) {
            now = law.at(frame.start().plusHours(hour));
            runner = runner == null ? null : LoopRunner.of(now, set, solver);
        }
    }

    /** A law that limits the flow: with all its notes, and slower. */
    private void slowly(int hour, double[] demands, double neededMetres) {
        LoopOperation run = LoopOperation.of(now, set, solver, Demands.of(solver.circuit(), demands));
        SteadyState pump = run.pump().orElseThrow();
        for (int i = 0; i < demands.length; i++) {
            BranchState state = run.circuit().branches().get(i);
            if (look(hour, i, demands[i], state.flow().si())) {
                worstMissing = state.missing().metres();
            }
        }
        atLeast += pump.limit() == SteadyState.Limit.MINIMUM_SPEED ? 1 : 0;
        atGreatest += pump.limit() == SteadyState.Limit.MAXIMUM_SPEED ? 1 : 0;
        double flow = pump.point().flow().si();
        add(flow, pump.point().head().metres(), neededMetres);
        take(hour, pump.point().wirePower().watts());
        shaft += pump.point().shaftPower().watts();
        zone(flow, pump.point().speed().over(set.curve().speed()).value());
    }

    private boolean look(int hour, int branch, double asked, double got) {
        if (!(asked > 0) || bypass[branch]) {
            return false;
        }
        double share = got / asked;
        unmet += part * Math.max(0, asked - got);
        starved[branch] += share < ENOUGH ? part : 0;
        if (share >= worst - TIE) {
            return false;
        }
        worst = share;
        worstHour = hour;
        worstBranch = branch;
        return true;
    }

    private void add(double flow, double metres, double neededMetres) {
        head += part * metres;
        liquid += part * weight * flow * metres;
        needed += part * weight * flow * Math.min(metres, neededMetres);
    }

    private void take(int hour, double wireWatts) {
        wire[hour] = wireWatts;
        peakHour = wireWatts > wire[peakHour] ? hour : peakHour;
    }

    private void zone(double flow, double speed) {
        zones[region.zoneOf(Ratio.of(flow / (speed * bestFlow))).ordinal()] += part;
    }

    LawHours year(BranchYear asked) {
        double sum = 0;
        for (double watts : wire) {
            sum += watts;
        }
        Energy whole = energy(sum);
        double running = sum - standbyWatts;
        EnergyShares shares = new EnergyShares(
                energy(needed),
                energy(liquid - needed),
                energy(shaft - liquid),
                energy(running - shaft),
                energy(standbyWatts));
        return new LawHours(
                law,
                new LawHours.Taken(whole, energy(shaft)),
                new LawHours.Peak(Power.watts(wire[peakHour]), asked.load().clockAt(peakHour)),
                service(asked),
                running(),
                shares,
                wire,
                notes(),
                Basis.of("law '" + law.name() + "': " + law.statement()));
    }

    private LawHours.Service service(BranchYear asked) {
        Map<String, Time> byBranch = new LinkedHashMap<>();
        double hours = 0;
        for (int i = 0; i < starved.length; i++) {
            if (starved[i] > 0) {
                byBranch.put(solver.circuit().branches().get(i).name(), Time.hours(starved[i]));
                hours += starved[i];
            }
        }
        Optional<Shortfall> shortfall = worst < 1 - ROUNDING ? Optional.of(shortfall(asked)) : Optional.empty();
        return new LawHours.Service(
                Time.hours(hours), byBranch, Volume.cubicMetres(unmet * LawHours.SECONDS_OF_AN_HOUR), shortfall);
    }

    private Shortfall shortfall(BranchYear asked) {
        String name = solver.circuit().branches().get(worstBranch).name();
        return new Shortfall(name, asked.load().clockAt(worstHour), Ratio.of(worst), Head.metres(worstMissing));
    }

    private LawHours.Running running() {
        Map<Zone, Time> hours = new EnumMap<>(Zone.class);
        for (Zone zone : Zone.values()) {
            hours.put(zone, Time.hours(zones[zone.ordinal()]));
        }
        return new LawHours.Running(
                Time.hours(on),
                starts,
                hours,
                Time.hours(atLeast),
                Time.hours(atGreatest),
                Head.metres(on > 0 ? head / on : 0));
    }

    private Notes notes() {
        Notes notes = law.notes().and(region.notes());
        if (atLeast > 0) {
            notes = notes.with(
                    ControlProblem.MINIMUM_SPEED_REACHED,
                    "Under '" + law.name() + "' the pump turns at its least speed in " + Time.hours(atLeast) + " of "
                            + on + " hours, above what the law asks for");
        }
        if (atGreatest > 0 && !law.observes().isEmpty()) {
            notes = notes.with(
                    ControlProblem.MAXIMUM_SPEED_REACHED,
                    "Under '" + law.name() + "' the pump turns at its greatest speed in " + Time.hours(atGreatest)
                            + " of " + on + " hours, where it gives no more");
        }
        if (unmet * LawHours.SECONDS_OF_AN_HOUR > 0 && worst < ENOUGH) {
            notes = notes.with(
                    EnergyProblem.SAVES_BY_NOT_SERVING,
                    "'" + law.name() + "' leaves "
                            + Volume.cubicMetres(unmet * LawHours.SECONDS_OF_AN_HOUR)
                            + " undelivered, so that part of what it saves is service that it does not give");
        }
        return notes;
    }

    private static Energy energy(double sumOfWatts) {
        return Energy.joules(sumOfWatts * LawHours.SECONDS_OF_AN_HOUR);
    }
}
