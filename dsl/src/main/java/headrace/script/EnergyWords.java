package headrace.script;

import headrace.control.ControlLaw;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.energy.PowerSaving;
import headrace.energy.StrategyComparison;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.LoadToFlow;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Words about the year: its load, and what control laws take over it. */
public final class EnergyWords implements Words {
    private static final String COMPARE = "Compares control laws over a year: speed, head, shaft and wire power in each"
            + " bin, energy, cost and savings with their basis.";
    private static final String COMPARE_EXAMPLE = "compare(set, year, price: 0.18.perKWh, laws: [constantSpeed(),"
            + " quadratic(design, minimumHead: 35.percent)])";

    @Override
    public String subject() {
        return "Energy over a year";
    }

    /** Makes a load profile. */
    @Word(
            help = "A load profile from its bins, each a share of design flow and the hours of a year at it.",
            example = "loadProfile('an office year', [[50.percent, 3000.h], [100.percent, 400.h]])")
    public static LoadProfile loadProfile(String name, List<?> bins) {
        List<LoadBin> made = new ArrayList<>();
        for (Object bin : bins) {
            List<?> pair = Wanted.object(List.class, bin, "a bin of a load profile");
            if (pair.size() != 2) {
                throw new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "A list of " + pair.size() + " was given for a bin of a load profile",
                        "A bin is a share of design flow and its hours",
                        "Write it as [50.percent, 3000.h]");
            }
            Ratio flow = Wanted.ratio(pair.get(0), "the flow of a bin");
            made.add(new LoadBin(flow, Wanted.quantity(Time.KIND, pair.get(1), "the hours of a bin")));
        }
        return LoadProfile.of(name, made, Basis.of("load profile '" + name + "' as stated in the script"));
    }

    /** Asks for what is missing. */
    @Word(help = COMPARE, example = COMPARE_EXAMPLE)
    public static StrategyComparison compare(Object set, Object year) {
        return compare(Map.of(), set, year);
    }

    /** Compares control laws over a year. */
    @Word(
            help = COMPARE,
            example = COMPARE_EXAMPLE,
            choices = {
                "price: price of energy at every hour; always needed",
                "laws: a list of control laws, made for one" + " design point; always needed"
            })
    public static StrategyComparison compare(Map<String, ?> given, Object set, Object year) {
        Choices choices = Choices.of("compare", given, "price", "laws");
        List<ControlLaw> laws = new ArrayList<>();
        for (Object law : choices.object("laws", List.class)) {
            laws.add(Wanted.object(ControlLaw.class, law, "a law of compare"));
        }
        return StrategyComparison.of(
                ControlWords.set(set, "compare"),
                year instanceof HourlyLoad hourly
                        ? hourly.flows(LoadToFlow.constantDifference())
                        : Wanted.object(LoadProfile.class, year, "the year of compare"),
                choices.price("price"),
                laws);
    }

    /** Tells what each law saves at a flow. */
    @Word(
            help =
                    "What each law of a comparison saves at a share of design flow, at shaft and wire, against throttling,"
                            + " fixed design speed and design power.",
            example = "savings(comparison, 50.percent)")
    public static List<PowerSaving> savings(Object comparison, Object flow) {
        return Wanted.object(StrategyComparison.class, comparison, "the comparison of savings")
                .savingsAt(Wanted.ratio(flow, "the flow of savings"));
    }
}
