package headrace.control;

import headrace.circuit.Closing;
import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Ratio;
import java.util.Set;

/**
 * The neediest valve decides: the pump gives the least head at which every demand is met and no valve stands further
 * open than a stroke. It is what a reset by trim and respond comes to when it has time.
 *
 * @param forDuty the duty it is made for
 * @param greatestOpening the stroke
 */
record NeediestValve(Duty forDuty, Ratio greatestOpening) implements CircuitLaw {
    NeediestValve {
        if (!(greatestOpening.value() > 0 && greatestOpening.value() <= 1)) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for a law by the neediest valve at an opening of " + greatestOpening,
                    "A valve opens above 0 and up to 100 %",
                    "Choose 90 to 100 %, which leaves the valve something to give");
        }
    }

    @Override
    public String name() {
        return "neediest valve at " + greatestOpening;
    }

    @Override
    public String statement() {
        return "the pump gives the least head at which no valve stands further open than " + greatestOpening
                + " and every demand is met";
    }

    @Override
    public Set<Observed> observes() {
        return Set.of(Observed.VALVE_OPENING);
    }

    @Override
    public Closing closing(PumpSet set) {
        return Closing.neediestValve(greatestOpening);
    }
}
