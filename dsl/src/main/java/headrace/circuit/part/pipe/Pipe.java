package headrace.circuit.part.pipe;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.fitting.Fitting;
import headrace.circuit.part.fitting.FittingLoss;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Gravity;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Velocity;
import java.util.ArrayList;
import java.util.List;

/**
 * A straight pipe with its fittings: {@code h = (f·L/D + ΣK)·v²/2g} (Darcy and Weisbach).
 *
 * <dl>
 *   <dt>Units
 *   <dd>Lengths in m; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>Round pipes that run full; a roughness of at most 5 % of the inside diameter. Fittings by one method only.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART} or {@code MIXED_FITTING_METHODS}.
 *   <dt>Source
 *   <dd>Friction factor: {@link Friction}. Fittings: {@link FittingLoss}.
 * </dl>
 *
 * @param name what it is called
 * @param length its length
 * @param bore how wide and how rough it is inside
 * @param fittings its fittings; none takes no head
 */
public record Pipe(String name, Length length, Bore bore, List<Fitting> fittings) implements NamedPart {
    /** Refuses what cannot be. */
    public Pipe {
        PartName part = new PartName("pipe", name);
        part.notNegative(length, "length");
        bore.check(part);
        fittings = List.copyOf(fittings);
        oneMethod(part, fittings);
    }

    /** Returns a pipe of a size of a series, without fittings. */
    public static Pipe of(String name, PipeSize size, Length length) {
        return new Pipe(name, length, Bore.of(size), List.of());
    }

    /** Returns a pipe of one's own, without fittings. */
    public static Pipe of(String name, Length inside, Length roughness, Length length) {
        return new Pipe(name, length, Bore.of(inside, roughness), List.of());
    }

    /** Returns this pipe with more fittings, stated by the method of those that it has. */
    public Pipe with(Fitting... more) {
        List<Fitting> all = new ArrayList<>(fittings);
        all.addAll(List.of(more));
        return new Pipe(name, length, bore, all);
    }

    /** Returns this pipe with another length and the same fittings. */
    public Pipe withLength(Length other) {
        return new Pipe(name, other, bore, fittings);
    }

    @Override
    public Pipe named(String other) {
        return new Pipe(other, length, bore, fittings);
    }

    /** Returns the velocity at a flow. */
    public Velocity velocityAt(Flow flow) {
        return Velocity.metresPerSecond(flow.si() / bore.squareMetres());
    }

    /** Returns the Reynolds number at a flow in a liquid. */
    public double reynoldsAt(Flow flow, Liquid liquid) {
        return Math.abs(flow.si()) * reynoldsPerFlow(liquid);
    }

    /** Returns the friction factor at a flow above 0 in a liquid. */
    public double frictionFactorAt(Flow flow, Liquid liquid) {
        new PartName("pipe", name).positive(flow, "flow at which its friction factor is asked for");
        return Friction.of(bore.relativeRoughness()).factor(reynoldsAt(flow, liquid));
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        double diameter = bore.inside().metres();
        double area = bore.squareMetres();
        double velocityHead = 1 / (2 * Gravity.STANDARD * area * area);
        double reynolds = reynoldsPerFlow(liquid);
        double lengths = length.metres() / diameter;
        double constant = 0;
        double overReynolds = 0;
        for (Fitting fitting : fittings) {
            FittingLoss loss = fitting.loss();
            lengths += fitting.count() * loss.diameters();
            constant += fitting.count() * loss.constantAt(bore.inside());
            overReynolds += fitting.count() * loss.overReynolds();
        }
        return new PipeLaw(
                Friction.of(bore.relativeRoughness()),
                reynolds,
                velocityHead * lengths,
                velocityHead * constant,
                velocityHead * overReynolds / reynolds);
    }

    @Override
    public Notes notesAt(Flow flow, Liquid liquid) {
        double reynolds = reynoldsAt(flow, liquid);
        Notes notes = PipeVelocity.notes(this, flow);
        if (reynolds > Friction.LAMINAR && reynolds < Friction.TURBULENT) {
            notes = notes.with(
                    PartProblem.FLOW_IN_TRANSITION,
                    "In " + part() + " the Reynolds number is " + Numbers.print(reynolds) + " at " + flow
                            + ", between " + Numbers.print(Friction.LAMINAR) + " and "
                            + Numbers.print(Friction.TURBULENT)
                            + ": its friction is a bridge from laminar to turbulent");
        }
        boolean formula = fittings.stream().anyMatch(fitting -> fitting.loss().overReynolds() > 0);
        if (formula && reynolds > 0 && reynolds < 1) {
            notes = notes.with(
                    PartProblem.FITTING_OUTSIDE_FORMULA,
                    "In " + part() + " the fittings stand at a Reynolds number of " + Numbers.print(reynolds)
                            + ", below 1");
        }
        return notes;
    }

    @Override
    public Basis basis() {
        return fittings.stream().map(fitting -> fitting.loss().basis()).reduce(bore.basis(), Basis::and);
    }

    PartName part() {
        return new PartName("pipe", name);
    }

    private double reynoldsPerFlow(Liquid liquid) {
        return bore.inside().metres()
                / (bore.squareMetres() * liquid.kinematicViscosity().si());
    }

    private static void oneMethod(PartName part, List<Fitting> fittings) {
        for (Fitting fitting : fittings) {
            FittingLoss first = fittings.get(0).loss();
            if (!fitting.loss().method().equals(first.method())) {
                throw part.refusal(
                        PartProblem.MIXED_FITTING_METHODS,
                        "Asked for " + part + " with " + fittings.get(0).name() + " by " + first.method() + " and "
                                + fitting.name() + " by " + fitting.loss().method(),
                        "The fittings of a pipe are stated by one method",
                        "State all of them by one, or lay the others in a pipe of their own");
            }
        }
    }

    @Override
    public String toString() {
        return name + ", " + length + " of " + bore
                + (fittings.isEmpty()
                        ? ""
                        : " with "
                                + String.join(
                                        ", ",
                                        fittings.stream().map(Fitting::toString).toList()));
    }
}
