package headrace.units;

import java.util.List;
import java.util.Optional;

/**
 * How much a valve passes: its flow of water at a set pressure difference.
 *
 * <p>Kv is the flow in m³/h at 1 bar, Cv the flow in US gpm at 1 psi, both at 1000 kg/m³ (IEC 60534-1). Held as Kv; it
 * remembers in which of the two it was said, so that a table that mixes them can be refused.
 */
public final class FlowCoefficient extends Amount<FlowCoefficient> {
    private static final double CV =
            (231 * 0.0254 * 0.0254 * 0.0254 * 60) / Math.sqrt(0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1e5);

    /** The units of a flow coefficient, the SI unit first. */
    public static final Kind<FlowCoefficient> KIND = new Kind<>(
            "flow coefficient",
            FlowCoefficient.class,
            FlowCoefficient::new,
            List.of(Unit.of("kv", "Kv", 1, "kv", "m3/h/bar^0.5"), Unit.of("cv", "Cv", CV, "cv")),
            "kv",
            "cv");

    /** No flow coefficient. */
    public static final FlowCoefficient ZERO = new FlowCoefficient(0);

    private final Optional<Unit> said;

    private FlowCoefficient(double si) {
        this(si, Optional.empty());
    }

    private FlowCoefficient(double si, Optional<Unit> said) {
        super(si);
        this.said = said;
    }

    @Override
    FlowCoefficient saidIn(Unit unit) {
        return new FlowCoefficient(si(), Optional.of(unit));
    }

    /** Returns the symbol of the unit in which it was said, {@code Kv} or {@code Cv}; none if it was computed. */
    public Optional<String> said() {
        return said.map(Unit::symbol);
    }

    /** Returns the flow coefficient of so many Kv. */
    public static FlowCoefficient kv(double value) {
        return new FlowCoefficient(value);
    }

    /** Returns the flow coefficient of so many Cv. */
    public static FlowCoefficient cv(double value) {
        return KIND.of(value, "cv");
    }

    /** Returns this flow coefficient in Kv. */
    public double kv() {
        return si();
    }

    /** Returns this flow coefficient in Cv. */
    public double toCv() {
        return in("cv");
    }

    @Override
    public Kind<FlowCoefficient> kind() {
        return KIND;
    }
}
