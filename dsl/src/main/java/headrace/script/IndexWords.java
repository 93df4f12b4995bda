package headrace.script;

import headrace.curve.PumpCurve;
import headrace.rule.index.CirculatorEnergyIndex;
import headrace.rule.index.ClearWaterPumpType;
import headrace.rule.index.MinimumEfficiencyIndex;
import headrace.rule.index.PumpEnergyIndex;
import headrace.rule.index.WaterPumpType;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Words about the energy indices of regulations: calculation aids, not certified ratings. */
public final class IndexWords implements Words {
    private static final String MINIMUM =
            "Which minimum efficiency index of EU 547/2012 a water pump of type ESOB, ESCC,"
                    + " ESCCi, MS-V or MSS reaches; a calculation aid, not a certified rating.";
    private static final String MINIMUM_EXAMPLE = "minimumEfficiencyIndex(curve, 'ESOB')";
    private static final String PUMP = "The US pump energy index (2016 procedure, from memory) of a pump of type ESCC,"
            + " ESFM, IL, RSV or ST, at constant and at variable load; a calculation aid, not a certified rating.";
    private static final String PUMP_EXAMPLE = "pumpEnergyIndex(curve, 'ESCC')";
    private static final String STAGES = "stages: number of stages; 1 unless chosen";

    @Override
    public String subject() {
        return "Energy indices";
    }

    /** Judges a water pump of one stage. */
    @Word(help = MINIMUM, example = MINIMUM_EXAMPLE)
    public static MinimumEfficiencyIndex minimumEfficiencyIndex(Object curve, Object type) {
        return minimumEfficiencyIndex(Map.of(), curve, type);
    }

    /** Judges a water pump. */
    @Word(help = MINIMUM, example = MINIMUM_EXAMPLE, choices = STAGES)
    public static MinimumEfficiencyIndex minimumEfficiencyIndex(Map<String, ?> given, Object curve, Object type) {
        return MinimumEfficiencyIndex.of(
                Wanted.object(PumpCurve.class, curve, "the curve of minimumEfficiencyIndex"),
                WaterPumpType.of(text(type, "the type of minimumEfficiencyIndex")),
                Choices.of("minimumEfficiencyIndex", given, "stages").whole("stages", 1));
    }

    /** Judges a circulator by four readings. */
    @Word(
            help =
                    "The circulator energy index of EU 641/2009 from four readings along its control curve, each flow, head"
                            + " and wire power, at 100, 75, 50 and 25 % flow; a calculation aid, not a certified rating.",
            example = "circulatorEnergyIndex([[2.4.m3ph, 4.m, 50.W], [1.8.m3ph, 3.5.m, 36.W], [1.2.m3ph, 3.m, 25.W],"
                    + " [0.6.m3ph, 2.5.m, 17.W]])")
    public static CirculatorEnergyIndex circulatorEnergyIndex(Object readings) {
        List<CirculatorEnergyIndex.Reading> read = new ArrayList<>();
        for (Object reading : Wanted.object(List.class, readings, "the readings of circulatorEnergyIndex")) {
            Object[] parts = Rows.of(reading, 3, "a reading of circulatorEnergyIndex", "flow, head and wire power");
            read.add(new CirculatorEnergyIndex.Reading(
                    Wanted.flow(parts[0], "the flow of a reading"),
                    Wanted.head(parts[1], "the head of a reading"),
                    Wanted.quantity(Power.KIND, parts[2], "the power of a reading")));
        }
        return CirculatorEnergyIndex.of(read);
    }

    /** Judges a clear-water pump of one stage. */
    @Word(help = PUMP, example = PUMP_EXAMPLE)
    public static PumpEnergyIndex pumpEnergyIndex(Object curve, Object type) {
        return pumpEnergyIndex(Map.of(), curve, type);
    }

    /** Judges a clear-water pump. */
    @Word(help = PUMP, example = PUMP_EXAMPLE, choices = STAGES)
    public static PumpEnergyIndex pumpEnergyIndex(Map<String, ?> given, Object curve, Object type) {
        return PumpEnergyIndex.of(
                Wanted.object(PumpCurve.class, curve, "the curve of pumpEnergyIndex"),
                ClearWaterPumpType.of(text(type, "the type of pumpEnergyIndex")),
                Choices.of("pumpEnergyIndex", given, "stages").whole("stages", 1));
    }

    private static String text(Object given, String place) {
        return Wanted.object(CharSequence.class, given, place).toString();
    }
}
