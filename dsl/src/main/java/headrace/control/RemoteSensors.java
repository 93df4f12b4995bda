package headrace.control;

import headrace.circuit.Closing;
import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Head;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Sensors out in the circuit: the pump gives the least head at which each of them sees what it wants, so that the
 * greatest error decides.
 *
 * @param forDuty the duty it is made for
 * @param wanted the head that is wanted across each named branch
 */
record RemoteSensors(Duty forDuty, Map<String, Head> wanted) implements CircuitLaw {
    RemoteSensors {
        wanted = Collections.unmodifiableMap(new LinkedHashMap<>(wanted));
        if (wanted.isEmpty() || wanted.values().stream().anyMatch(head -> !(head.si() > 0))) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for remote sensors that want " + (wanted.isEmpty() ? "nothing" : said(wanted)),
                    "At least one branch has a sensor, and each wants a head above 0",
                    "Name them, as in ['attic': 5.m]");
        }
    }

    @Override
    public String name() {
        return "remote sensor, " + said(wanted);
    }

    @Override
    public String statement() {
        return "the pump gives the least head that leaves " + said(wanted);
    }

    @Override
    public Set<Observed> observes() {
        return Set.of(Observed.BRANCH_HEAD);
    }

    @Override
    public Closing closing(PumpSet set) {
        return Closing.sensors(wanted);
    }

    private static String said(Map<String, Head> wanted) {
        return wanted.entrySet().stream()
                .map(each -> each.getValue() + " across '" + each.getKey() + "'")
                .collect(Collectors.joining(" and "));
    }

    @Override
    public String toString() {
        return name();
    }
}
