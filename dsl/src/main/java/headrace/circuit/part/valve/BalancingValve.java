package headrace.circuit.part.valve;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.PartProblem;
import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Numbers;

/**
 * A balancing valve at a setting.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Settings as on the handwheel; Kv; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>Settings within its table; turbulent flow.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART} or {@code NO_SUCH_SETTING}.
 *   <dt>Source
 *   <dd>{@link Orifice}; the table is the maker's.
 * </dl>
 *
 * @param name what it is called
 * @param table its settings
 * @param setting the one at which it stands
 */
public record BalancingValve(String name, SettingTable table, double setting) implements NamedPart {
    /** A head that was computed may miss the end of the table by so small a share of it. */
    private static final double ROUNDING = 1e-9;

    /** Refuses what cannot be. */
    public BalancingValve {
        PartName part = new PartName("balancing valve", name);
        if (!table.holds(setting)) {
            throw part.refusal(
                    PartProblem.NO_SUCH_SETTING,
                    "Asked for " + part + " at the setting " + setting,
                    "Its settings go from " + Numbers.print(table.first().setting()) + " to "
                            + Numbers.print(table.last().setting()),
                    "Choose one of these");
        }
    }

    /** Returns the valve fully open. */
    public static BalancingValve open(String name, SettingTable table) {
        return new BalancingValve(name, table, table.last().setting());
    }

    /** Returns this valve at another setting. */
    public BalancingValve at(double other) {
        return new BalancingValve(name, table, other);
    }

    @Override
    public BalancingValve named(String other) {
        return new BalancingValve(other, table, setting);
    }

    /** Returns the flow coefficient at its setting. */
    public FlowCoefficient coefficient() {
        return table.at(setting);
    }

    /**
     * Returns this valve at the setting at which it takes a head at a flow.
     *
     * @param flow the flow of its branch, above 0
     * @param excess the head that the branch has too much without it, above 0
     * @throws headrace.problem.Refusal with {@code NO_SUCH_SETTING}
     */
    public BalancingValve taking(Head excess, Flow flow) {
        PartName part = new PartName("balancing valve", name);
        part.positive(flow, "flow to be set");
        part.notNegative(excess, "excess head");
        FlowCoefficient most = table.last().coefficient();
        FlowCoefficient least = table.first().coefficient();
        FlowCoefficient wanted = excess.si() > 0 ? Orifice.taking(excess, flow) : null;
        boolean takes = wanted != null
                && wanted.kv() <= most.kv() * (1 + ROUNDING)
                && wanted.kv() >= least.kv() * (1 - ROUNDING);
        if (!takes) {
            throw part.refusal(
                    PartProblem.NO_SUCH_SETTING,
                    "Asked for the setting at which " + part + " takes " + excess + " at " + flow,
                    "At that flow it takes from " + head(most, flow) + " fully open to " + head(least, flow)
                            + " at its least setting",
                    "Take a valve of another size, or leave the rest to another part");
        }
        return at(table.settingOf(FlowCoefficient.kv(Math.max(least.kv(), Math.min(most.kv(), wanted.kv())))));
    }

    private static Head head(FlowCoefficient coefficient, Flow flow) {
        return Head.metres(Orifice.law(coefficient).headMetres(flow.si()));
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return Orifice.law(coefficient());
    }

    @Override
    public String toString() {
        return name + " at " + Numbers.print(setting) + ", " + coefficient();
    }
}
