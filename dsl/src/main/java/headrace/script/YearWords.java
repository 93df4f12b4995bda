package headrace.script;

import headrace.circuit.Circuit;
import headrace.control.ControlLaw;
import headrace.energy.load.BranchYear;
import headrace.energy.year.CircuitYear;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Words that run a circuit over a year. */
public final class YearWords implements Words {
    private static final String COMPARE = "Compares control laws over the hours of a year of a circuit: energy, peak,"
            + " branches with too little, and savings against two baselines, split into what the law saves and what the"
            + " margin in the specified head wasted.";
    private static final String EXAMPLE = "compare(set, loop, branchYear(load, branches: [foyer: 16.m3ph, attic:"
            + " 18.m3ph]), price: 0.18.perKWh, laws: [quadratic(design, minimumHead: 35.percent), neediestValve(design)])";

    @Override
    public String subject() {
        return "Energy over a year";
    }

    /** Compares control laws over a year of a circuit. */
    @Word(
            help = COMPARE,
            example = EXAMPLE,
            choices = {
                "price: price of energy at every hour; always needed",
                "laws: a list of control laws, made for one design point; always needed"
            })
    public static CircuitYear compare(Map<String, ?> given, Object set, Object circuit, Object year) {
        Choices choices = Choices.of("compare", given, "price", "laws");
        List<ControlLaw> laws = new ArrayList<>();
        for (Object law : choices.object("laws", List.class)) {
            laws.add(Wanted.object(ControlLaw.class, law, "a law of compare"));
        }
        return CircuitYear.of(
                ControlWords.set(set, "compare"),
                Wanted.object(Circuit.class, circuit, "the circuit of compare"),
                Wanted.object(BranchYear.class, year, "the year of compare, with a demand for each branch"),
                choices.price("price"),
                laws);
    }

    /** Asks for what is missing. */
    @Word(help = COMPARE, example = EXAMPLE)
    public static CircuitYear compare(Object set, Object circuit, Object year) {
        return compare(Map.of(), set, circuit, year);
    }
}
