package headrace.trend;

import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;

/** What a trend log can hold beside the time. */
public enum Channel {
    /** The wire power of the pump. */
    POWER("power", Power.KIND),
    /** The speed of the pump. */
    SPEED("speed", Speed.KIND),
    /** The flow through the pump. */
    FLOW("flow", Flow.KIND),
    /** The head of the pump. */
    HEAD("head", Head.KIND),
    /** The head across what lies beside the pump in the plant: strainer, exchanger. */
    PLANT_HEAD("plant head", Head.KIND),
    /** How far a valve is open. */
    VALVE("valve", Ratio.KIND),
    /** The temperature of the air outdoors. */
    OUTDOOR("outdoor temperature", Temperature.KIND);

    private final String words;
    private final Kind<?> kind;

    Channel(String words, Kind<?> kind) {
        this.words = words;
        this.kind = kind;
    }

    /** Returns the name as it stands in a sentence and at the head of a column. */
    public String words() {
        return words;
    }

    /** Returns what is measured. */
    public Kind<?> kind() {
        return kind;
    }

    /** Returns an SI value of this channel with its unit, as printed. */
    public String print(double si) {
        return kind.make().apply(si).toString();
    }
}
