package headrace.data.inquiry;

import headrace.data.inquiry.Gathered.Item;
import headrace.data.inquiry.Gathered.Mixture;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Frequency;
import headrace.units.Head;
import headrace.units.MassFlow;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.TemperatureDifference;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Completes what an inquiry says by what has to be assumed, and says each assumption. */
final class Assumed {
    private static final double ORDINARY_CELSIUS = 20;
    private static final double DISAGREES = 0.05;

    private final Gathered said;
    private final Scan scan;
    private final List<String> assumptions = new ArrayList<>();

    private Assumed(Gathered said, Scan scan) {
        this.said = said;
        this.scan = scan;
    }

    static Inquiry completed(String text, Gathered said, Scan scan) {
        Assumed assumed = new Assumed(said, scan);
        Liquid liquid = assumed.liquid();
        Inquiry.Pumps pumps = assumed.pumps();
        Inquiry.Heat heat = new Inquiry.Heat(
                said.of(Item.HEAT, Power.class), said.of(Item.DIFFERENCE, TemperatureDifference.class));
        Optional<Flow> stated = assumed.flow(liquid, pumps);
        Optional<Flow> byHeat = heat.flowIn(liquid);
        Notes notes = stated.flatMap(flow -> byHeat.map(other -> check(flow, other, heat, liquid)))
                .orElse(Notes.NONE);
        if (stated.isEmpty() && byHeat.isPresent()) {
            assumed.assume(
                    "no flow was stated; " + byHeat.get() + " moves the heat load at the temperature difference");
        }
        Inquiry.Demand demand = new Inquiry.Demand(stated.or(() -> byHeat), assumed.head(liquid));
        return new Inquiry(
                text,
                demand,
                liquid,
                pumps,
                heat,
                assumed.supply(),
                assumed.assumptions,
                liquid.notes().and(notes));
    }

    private void assume(String assumption) {
        assumptions.add(assumption);
    }

    private Liquid liquid() {
        Optional<Temperature> stated = said.of(Item.TEMPERATURE, Temperature.class);
        Temperature at = stated.orElse(Temperature.celsius(ORDINARY_CELSIUS));
        if (!said.has(Item.LIQUID)) {
            assume("no liquid was named; water is assumed");
        }
        if (stated.isEmpty()) {
            assume("no temperature was stated; " + at + " is assumed");
        } else if (said.position(Item.DIFFERENCE) == said.position(Item.TEMPERATURE) && said.has(Item.DIFFERENCE)) {
            assume("the liquid is taken at " + at + ", the middle of the two temperatures");
        }
        Mixture mixture = said.of(Item.LIQUID, Mixture.class).orElse(new Mixture(false, Optional.empty()));
        try {
            return mixture.share().map(share -> mixed(mixture, share, at)).orElseGet(() -> Liquid.water(at));
        } catch (Refusal refusal) {
            Item cause = said.has(Item.TEMPERATURE) ? Item.TEMPERATURE : Item.LIQUID;
            throw refusal.at(scan.place(said.position(cause)));
        }
    }

    private Liquid mixed(Mixture mixture, Ratio share, Temperature at) {
        assume("the share of glycol is one by mass");
        return mixture.ethylene() ? Liquid.ethyleneGlycol(share, at) : Liquid.propyleneGlycol(share, at);
    }

    private Inquiry.Pumps pumps() {
        Optional<Integer> duty = said.of(Item.DUTY, Integer.class);
        Optional<Integer> standby = said.of(Item.STANDBY, Integer.class);
        if (duty.isEmpty()) {
            assume("no number of pumps was stated; one duty pump is assumed");
        }
        if (standby.isEmpty()) {
            assume("no standby pump was stated; none is assumed");
        }
        return new Inquiry.Pumps(duty.orElse(1), standby.orElse(0));
    }

    private Optional<Flow> flow(Liquid liquid, Inquiry.Pumps pumps) {
        Optional<Flow> flow = said.of(Item.FLOW, Flow.class)
                .or(() -> said.of(Item.FLOW, MassFlow.class)
                        .map(mass -> Flow.cubicMetresPerSecond(
                                mass.si() / liquid.density().kilogramsPerCubicMetre())));
        Optional<Boolean> total = said.of(Item.SHARE, Boolean.class);
        if (flow.isEmpty() || pumps.duty() == 1) {
            return flow;
        }
        if (total.isPresent() && !total.get()) {
            return flow.map(each -> each.times(pumps.duty()));
        }
        if (total.isEmpty()) {
            assume(flow.get() + " is taken as the flow of all " + pumps.duty() + " duty pumps, "
                    + flow.get().times(1.0 / pumps.duty()) + " each");
        }
        return flow;
    }

    private Optional<Head> head(Liquid liquid) {
        Optional<Head> head = said.of(Item.HEAD, Head.class)
                .or(() -> said.of(Item.HEAD, Pressure.class).map(pressure -> {
                    Head asHead = liquid.headOf(pressure);
                    assume(pressure + " is taken as a difference of pressure, " + asHead + " of this liquid");
                    return asHead;
                }));
        if (head.isPresent()) {
            assume("the head is taken as it stands, without a margin");
        }
        return head;
    }

    private Inquiry.Supply supply() {
        Optional<Double> volts = said.of(Item.VOLTS, Double.class);
        Optional<Integer> phases = said.of(Item.PHASES, Integer.class);
        return new Inquiry.Supply(
                volts.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                phases.map(OptionalInt::of).orElse(OptionalInt.empty()),
                said.of(Item.FREQUENCY, Frequency.class));
    }

    private static Notes check(Flow stated, Flow byHeat, Inquiry.Heat heat, Liquid liquid) {
        double off = stated.over(byHeat).value() - 1;
        if (Math.abs(off) <= DISAGREES) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                InquiryProblem.HEAT_DISAGREES_WITH_FLOW,
                heat.load().orElseThrow() + " at " + heat.difference().orElseThrow() + " needs " + byHeat + " of "
                        + liquid + "; " + stated + " was stated, " + Numbers.print(Math.abs(100 * off)) + " % "
                        + (off > 0 ? "more" : "less"));
    }
}
