package headrace.circuit;

import static headrace.pump.KnownPump.m3ph;

import headrace.circuit.part.Drop;
import headrace.circuit.part.PlantResistance;
import headrace.pump.KnownPump;
import headrace.units.Head;

/**
 * A made-up circuit whose results can be worked by hand: a plant of 8 m at 80 m³/h; near takes 4 m at 40 m³/h; a main
 * of 3 m and far of 5 m at 40 m³/h. All losses go with the square of flow, so that 16 m are needed at 80 m³/h.
 */
public final class KnownLoop {
    public static final Circuit LOOP = Circuit.of(
            KnownPump.WATER,
            "supply",
            "return",
            Branch.of("plant", "supply", "first tap", loss("chiller", 80, 8)),
            Branch.terminal("near", "first tap", "return", m3ph(40), loss("near coil", 40, 4)),
            Branch.of("main", "first tap", "second tap", loss("pipe", 40, 3)),
            Branch.terminal("far", "second tap", "return", m3ph(40), loss("far coil", 40, 5)));

    private KnownLoop() {}

    /** Returns a part that takes so many metres at a flow in m³/h. */
    public static PlantResistance loss(String name, double cubicMetresPerHour, double metres) {
        return PlantResistance.of(name, Drop.of(m3ph(cubicMetresPerHour), Head.metres(metres)));
    }
}
