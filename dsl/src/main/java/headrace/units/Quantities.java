package headrace.units;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import java.util.List;
import java.util.Optional;

/** All kinds of quantity, and quantities of a kind that is not known beforehand. */
public final class Quantities {
    /**
     * All kinds. Where kinds share a spelling, as length and head share {@code m}, a text that could be either is the
     * earlier one here.
     */
    public static final List<Kind<?>> KINDS = List.of(
            Flow.KIND,
            MassFlow.KIND,
            Length.KIND,
            Head.KIND,
            Area.KIND,
            Volume.KIND,
            Velocity.KIND,
            Pressure.KIND,
            GaugePressure.KIND,
            AbsolutePressure.KIND,
            Power.KIND,
            Energy.KIND,
            Torque.KIND,
            Speed.KIND,
            Frequency.KIND,
            Ratio.KIND,
            Temperature.KIND,
            TemperatureDifference.KIND,
            Density.KIND,
            HeatCapacity.KIND,
            Viscosity.KIND,
            KinematicViscosity.KIND,
            Mass.KIND,
            Time.KIND,
            FlowCoefficient.KIND);

    private Quantities() {}

    /**
     * Returns the quantity that a number and the word of a unit make, as in {@code 52.m3ph}, if there is such a word.
     *
     * <p>Only the word counts, not the symbols and spellings that a text may use: no two kinds share a word.
     */
    public static Optional<Quantity<?>> of(double value, String word) {
        for (Kind<?> kind : KINDS) {
            for (Unit unit : kind.units()) {
                if (unit.word().equals(word)) {
                    return Optional.of(kind.of(value, word));
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Reads a number and a unit of any kind, such as {@code 230 gpm}.
     *
     * @throws Refusal with {@code UNREADABLE_QUANTITY} if it is no number followed by a unit, with {@code UNKNOWN_UNIT}
     *     if no kind has such a unit
     */
    public static Quantity<?> parse(String text) {
        UnitText read = UnitText.of(text, "a quantity", "m³/h");
        for (Kind<?> kind : KINDS) {
            if (kind.find(read.unit()).isPresent()) {
                return kind.of(read.number(), read.unit());
            }
        }
        List<String> near = Nearest.to(
                read.unit(),
                KINDS.stream()
                        .flatMap(kind -> kind.units().stream())
                        .map(Unit::symbol)
                        .toList());
        throw new Refusal(
                UnitProblem.UNKNOWN_UNIT,
                "Asked to read '" + text + "', and no kind of quantity has the unit '" + read.unit() + "'",
                near.isEmpty() ? "No unit is spelled nearly so" : "The nearest units are " + Nearest.either(near),
                "See docs/words.md for all units");
    }
}
