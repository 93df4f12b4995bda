package headrace.energy.load;

import headrace.circuit.part.coil.EmissionLaw;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Numbers;
import headrace.units.Ratio;

/**
 * An emission law with one number: {@code q = a·L/(1 − L + a·L)}, up to design load.
 *
 * @param law the law
 */
record EmissionFlow(EmissionLaw law) implements LoadToFlow {
    private static final double ROUNDING = 1e-9;

    @Override
    public double flowShare(double load) {
        if (load > 1 + ROUNDING) {
            throw LoadToFlow.beyond(this, load, "The law holds from 0 to 100 % of design load");
        }
        return law.flowFor(Ratio.of(Math.min(1, load))).value();
    }

    @Override
    public String name() {
        return "the emission law with a = " + Numbers.print(law.a());
    }

    @Override
    public Notes notes() {
        return Notes.NONE;
    }

    @Override
    public Basis basis() {
        return Basis.of("load to flow: by " + name() + ", q = a·L/(1 − L + a·L)");
    }

    @Override
    public String toString() {
        return name();
    }
}
