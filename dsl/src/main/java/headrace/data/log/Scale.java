package headrace.data.log;

import headrace.pump.PumpSet;
import headrace.trend.Channel;
import headrace.units.Pressure;
import headrace.units.Speed;
import headrace.units.Unit;
import java.util.List;
import java.util.Optional;

/**
 * How numbers of a column become SI: a unit of the quantity itself, or of what stands for it in a building system. A
 * drive shows its frequency or a share for the speed; a gauge shows a pressure for the head.
 *
 * @param symbol the unit
 * @param factor how many of the SI unit it is
 * @param offset what is added after multiplying
 * @param about how it was taken, where it is not the quantity's own unit; blank otherwise
 */
record Scale(String symbol, double factor, double offset, String about) {
    /** The units that a building system commonly uses, by channel, tried where none is said. */
    static List<String> common(Channel channel) {
        return switch (channel) {
            case POWER -> List.of("kW", "W", "hp");
            case SPEED -> List.of("rpm", "Hz", "%");
            case FLOW -> List.of("m³/h", "L/s", "L/min", "gpm");
            case HEAD, PLANT_HEAD -> List.of("m", "kPa", "bar", "ft", "psi");
            case VALVE -> List.of("%", "ratio");
            case OUTDOOR -> List.of("°C", "°F");
        };
    }

    /** Returns the scale of a unit for a channel, if it has that unit. */
    static Optional<Scale> of(Channel channel, String unit, PumpSet set) {
        Optional<Scale> own = channel.kind().find(unit).map(Scale::own);
        if (own.isPresent()) {
            return own;
        }
        if (channel == Channel.SPEED) {
            return standIn(unit, set);
        }
        boolean head = channel == Channel.HEAD || channel == Channel.PLANT_HEAD;
        return head ? Pressure.KIND.find(unit).map(found -> head(found, set)) : Optional.empty();
    }

    private static Scale own(Unit unit) {
        String symbol = unit.symbol().isEmpty() ? unit.word() : unit.symbol();
        return new Scale(symbol, unit.factor(), unit.offset(), "");
    }

    private static Optional<Scale> standIn(String unit, PumpSet set) {
        Speed rated = set.ratedSpeed();
        if (unit.equals("%")) {
            return Optional.of(new Scale("%", rated.si() / 100, 0, "100 % taken as " + rated + ", the rated speed"));
        }
        if (!unit.equalsIgnoreCase("Hz")) {
            return Optional.empty();
        }
        int poles = set.driveTrain().motor().poles();
        Speed synchronous = set.driveTrain().motor().synchronousSpeed(rated).orElse(rated);
        double hertz = Math.rint(synchronous.toRevolutionsPerMinute() * poles / 120);
        return Optional.of(new Scale(
                "Hz",
                rated.si() / hertz,
                0,
                Math.round(hertz) + " Hz taken as " + rated + ", the rated speed; slip at part load is left out"));
    }

    private static Scale head(Unit unit, PumpSet set) {
        double metres = set.curve().liquid().headOf(Pressure.pascals(1)).metres();
        return new Scale(
                unit.symbol(),
                unit.factor() * metres,
                0,
                "made a head in " + set.curve().liquid() + ", as the pump set has it");
    }

    double si(double value) {
        return value * factor + offset;
    }
}
