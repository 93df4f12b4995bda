package headrace.energy.year;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Closing;
import headrace.circuit.LeastFlow;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.energy.Baseline;
import headrace.energy.EnergyProblem;
import headrace.energy.load.BranchYear;
import headrace.operation.limit.OperatingRegion;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Control laws side by side over the hours of a year of a circuit, every branch with its own demand.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Energy and power at the wire include every loss of motor and drive.
 *   <dt>Limits
 *   <dd>Steady state in each hour; one price at every hour, no demand charge.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code DESIGN_MISSING}, {@code UNKNOWN_BRANCH} for a demand of no branch, and as
 *       {@link headrace.control.LoopOperation}.
 *   <dt>Source
 *   <dd>Savings are differences of two results of this program, their baseline and basis named beside each.
 * </dl>
 *
 * @param circuit the circuit
 * @param design the design point that the laws are made for
 * @param neededAtDesign the head that the circuit really needs at its design flows
 * @param year what was asked
 * @param price the price of energy
 * @param laws the years under the laws, in the order in which they were given
 * @param baselines the years under full speed throttled and under fixed design speed
 * @param fixedWithoutMargin the year under the fixed speed for the head that is really needed
 * @param notes what was touched
 * @param basis what it rests on
 */
public record CircuitYear(
        Circuit circuit,
        Duty design,
        Head neededAtDesign,
        BranchYear year,
        EnergyPrice price,
        List<LawHours> laws,
        List<LawHours> baselines,
        LawHours fixedWithoutMargin,
        Notes notes,
        Basis basis)
        implements Traced {

    /** Keeps the lists from changing. */
    public CircuitYear {
        laws = List.copyOf(laws);
        baselines = List.copyOf(baselines);
    }

    /**
     * Returns the comparison.
     *
     * @param set the pump set
     * @param circuit the circuit
     * @param year what each branch is asked for, hour by hour
     * @param price the price of energy; one below 0 is computed and noted
     * @param laws the laws, all made for one design point, at least one for any
     */
    public static CircuitYear of(
            PumpSet set, Circuit circuit, BranchYear year, EnergyPrice price, List<ControlLaw> laws) {
        return new Years(set, circuit, year, laws).compared(price);
    }

    /** Returns what each law saves against both baselines, its basis the wire. */
    public List<LawSaving> savings() {
        List<LawSaving> all = new ArrayList<>();
        Energy margin = baselines
                .get(1)
                .energy()
                .wire()
                .minus(fixedWithoutMargin.energy().wire());
        for (LawHours law : laws) {
            all.add(new LawSaving(Baseline.CONSTANT_SPEED, baselines.get(0), law, margin));
            all.add(new LawSaving(Baseline.FIXED_DESIGN_SPEED, baselines.get(1), law, margin));
        }
        return all;
    }

    /** Returns the law that takes least energy among those that starve no branch. */
    public Optional<LawHours> best() {
        return laws.stream()
                .filter(law -> law.service().starvedBranchHours().si() == 0)
                .min((one, other) ->
                        one.energy().wire().compareTo(other.energy().wire()));
    }

    /** Returns the margin in the specified head, as a share of what is needed; below 0 where it is too little. */
    public Ratio margin() {
        return Ratio.of(design.head().metres() / neededAtDesign.metres() - 1);
    }

    @Override
    public String toString() {
        return laws.size() + " laws over " + year;
    }

    /** Runs the hours of all laws together, since what the circuit needs is the same for all of them. */
    private static final class Years {
        private final PumpSet set;
        private final Circuit circuit;
        private final BranchYear year;
        private final List<ControlLaw> laws;
        private final Duty design;
        private final CircuitSolver solver;
        private final int[] branches;
        private final List<Branch> bypasses;

        Years(PumpSet set, Circuit circuit, BranchYear year, List<ControlLaw> laws) {
            this.set = set;
            this.circuit = circuit;
            this.year = year;
            this.laws = laws;
            design = design(laws);
            solver = CircuitSolver.of(circuit);
            branches = year.branches().stream()
                    .mapToInt(branch -> solver.link(branch.name()))
                    .toArray();
            bypasses = LeastFlow.bypasses(circuit);
            solver.ask(year.demandsAt(0));
        }

        private static Duty design(List<ControlLaw> laws) {
            Set<Duty> designs = laws.stream()
                    .map(ControlLaw::design)
                    .flatMap(Optional::stream)
                    .collect(Collectors.toSet());
            if (designs.size() != 1) {
                throw new Refusal(
                        EnergyProblem.DESIGN_MISSING,
                        "Asked to compare " + laws.size() + " control laws with " + designs.size() + " design points",
                        "Laws are compared for one design point",
                        "Give every law the same design, and at least one law that has one, such as a fixed speed");
            }
            return designs.iterator().next();
        }

        CircuitYear compared(EnergyPrice price) {
            Head needed = solver.solve(circuit.designDemands(), Closing.neediestValve(Ratio.of(1)))
                    .head();
            List<ControlLaw> all = new ArrayList<>(laws);
            all.add(ControlLaw.constantSpeed());
            all.add(ControlLaw.fixedSpeed(design));
            all.add(ControlLaw.fixedSpeed(new Duty(design.flow(), needed)));
            HourCount.Frame frame =
                    new HourCount.Frame(year.hours(), year.load().start(), OperatingRegion.USUAL);
            List<HourCount> counts = all.stream()
                    .map(law -> new HourCount(law, set, solver, frame))
                    .toList();
            count(counts);
            List<LawHours> years =
                    counts.stream().map(count -> count.year(year)).toList();
            int own = laws.size();
            Notes notes = circuit.notes().and(year.notes()).and(set.notes());
            if (price.perKilowattHour().amount() < 0) {
                notes = notes.with(
                        EnergyProblem.NEGATIVE_PRICE,
                        "At " + price + " the law that takes most costs least, and every saving of energy is a loss");
            }
            for (LawHours law : years.subList(0, own)) {
                notes = notes.and(law.notes());
            }
            Basis basis = set.basis()
                    .and(circuit.basis())
                    .and(year.basis())
                    .with("energy price: " + price)
                    .with("saving: at the wire, against the same demands");
            for (ControlLaw law : laws) {
                basis = basis.with("law '" + law.name() + "': " + law.statement());
            }
            return new CircuitYear(
                    circuit,
                    design,
                    needed,
                    year,
                    price,
                    years.subList(0, own),
                    years.subList(own, own + 2),
                    years.get(own + 2),
                    notes,
                    basis);
        }

        private void count(List<HourCount> counts) {
            boolean onlyThey = circuit.carriesOnlyDemands();
            double[] demands = new double[circuit.branches().size()];
            try (Steps steps = Work.steps("hours of the year", year.hours())) {
                for (int hour = 0; hour < year.hours(); hour++) {
                    steps.next();
                    double total = fill(hour, demands);
                    if (total == 0) {
                        for (HourCount count : counts) {
                            count.still(hour);
                        }
                    } else {
                        solver.ask(demands);
                        double needed = needed();
                        for (HourCount count : counts) {
                            Work.poll();
                            count.run(hour, demands, total, needed, onlyThey);
                        }
                    }
                }
            }
        }

        private double fill(int hour, double[] demands) {
            Arrays.fill(demands, 0);
            double total = 0;
            for (int i = 0; i < branches.length; i++) {
                double flow = year.flowShareAt(hour, i)
                        * year.branches().get(i).design().si();
                demands[branches[i]] = flow;
                total += flow;
            }
            return total > 0 ? total + bypassed(demands, total) : 0;
        }

        /** Asks the minimum-flow valves for what the demands lack of their least flow; returns what they add. */
        private double bypassed(double[] demands, double total) {
            double added = 0;
            for (Branch branch : bypasses) {
                MinimumFlowValve valve = (MinimumFlowValve) branch.valve().orElseThrow();
                double flow = Math.max(0, valve.least().si() - total - added);
                demands[solver.link(branch.name())] = flow;
                added += flow;
            }
            return added;
        }

        private double needed() {
            return solver.solve(solver.neediestValve(1)).pump().metres();
        }
    }
}
