package headrace.data.inquiry;

import headrace.curve.Duty;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Frequency;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.TemperatureDifference;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What somebody asks for in a line of text, such as {@code 480 gpm @ 62 ft, 30 % PG, 3 duty}, as values with their
 * units, and what had to be assumed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The flow is that of all duty pumps together.
 *   <dt>Limits
 *   <dd>What docs/inquiry.md lists. Where heat load and temperature difference ask for another flow than was stated, by
 *       more than 5 %, {@code HEAT_DISAGREES_WITH_FLOW} says so.
 *   <dt>Errors
 *   <dd>{@link Refusal} at the line and column of the part that cannot be read, with {@code UNREADABLE_INQUIRY},
 *       {@code SAID_TWICE} or {@code INQUIRY_VALUE_NOT_POSSIBLE}, or as the liquid refuses its temperature.
 *   <dt>Source
 *   <dd>The grammar is our own; Q = P/(ρ·c_p·ΔT).
 * </dl>
 *
 * @param text what was asked, as written
 * @param demand flow and head
 * @param liquid the liquid, at the temperature stated or assumed
 * @param pumps the number of pumps
 * @param heat heat load and temperature difference
 * @param supply the motor's supply
 * @param assumptions what was assumed, a sentence each
 * @param notes what does not agree
 */
public record Inquiry(
        String text,
        Demand demand,
        Liquid liquid,
        Pumps pumps,
        Heat heat,
        Supply supply,
        List<String> assumptions,
        Notes notes)
        implements Traced {
    /**
     * Flow and head.
     *
     * @param flow the flow of all duty pumps together, if it was stated or follows from the heat load
     * @param head the head, if it was stated
     */
    public record Demand(Optional<Flow> flow, Optional<Head> head) {}

    /**
     * The number of pumps.
     *
     * @param duty those that run at design
     * @param standby those that wait
     */
    public record Pumps(int duty, int standby) {}

    /**
     * The heat to be moved.
     *
     * @param load the heat load
     * @param difference the difference between supply and return
     */
    public record Heat(Optional<Power> load, Optional<TemperatureDifference> difference) {
        /** Returns the flow that moves the load in a liquid, if both load and difference are known. */
        public Optional<Flow> flowIn(Liquid liquid) {
            double perKelvin = liquid.density().kilogramsPerCubicMetre()
                    * liquid.heatCapacity().joulesPerKilogramKelvin();
            return load.flatMap(power -> difference.map(
                    kelvins -> Flow.cubicMetresPerSecond(power.watts() / (perKelvin * kelvins.kelvins()))));
        }
    }

    /**
     * The motor's supply, as far as it was stated.
     *
     * @param volts the voltage
     * @param phases 1 or 3
     * @param frequency the frequency
     */
    public record Supply(OptionalDouble volts, OptionalInt phases, Optional<Frequency> frequency) {
        /** Returns whether nothing of it was stated. */
        public boolean unknown() {
            return volts.isEmpty() && phases.isEmpty() && frequency.isEmpty();
        }
    }

    /** Keeps the assumptions from changing. */
    public Inquiry {
        assumptions = List.copyOf(assumptions);
    }

    /** Reads an inquiry. */
    public static Inquiry read(String text) {
        return InquiryText.read(text);
    }

    /** Returns the flow of all duty pumps together, if it is known. */
    public Optional<Flow> flow() {
        return demand.flow();
    }

    /** Returns the flow of one duty pump, if it is known. */
    public Optional<Flow> flowOfOne() {
        return demand.flow().map(flow -> flow.times(1.0 / pumps.duty()));
    }

    /** Returns the head, if it is known. */
    public Optional<Head> head() {
        return demand.head();
    }

    /** Returns the duty of one pump, if flow and head are known. */
    public Optional<Duty> dutyOfOne() {
        return flowOfOne().flatMap(flow -> head().map(head -> new Duty(flow, head)));
    }

    @Override
    public Basis basis() {
        Basis basis = Basis.of("inquiry as written: " + text.strip()).and(liquid.basis());
        for (String assumption : assumptions) {
            basis = basis.with("assumed: " + assumption);
        }
        return basis;
    }

    @Override
    public String toString() {
        return flow().map(Flow::toString).orElse("flow not stated") + " at "
                + head().map(Head::toString).orElse("head not stated") + ", " + liquid + ", " + pumps.duty() + " duty, "
                + pumps.standby() + " standby";
    }
}
