package headrace.energy;

import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.operation.limit.BestAtSixty;
import headrace.operation.limit.LimitProblem;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.OperatingRegion.Zone;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.EnergyPrice;
import headrace.units.Head;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RegionHoursTest {
    private static LoadBin bin(double percent, double hours) {
        return new LoadBin(Ratio.percent(percent), Time.hours(hours));
    }

    /**
     * At rated speed best efficiency is at 60 m³/h, the design flow: 100 and 75 % lie inside, 60 % beside, 40 % out.
     */
    @Test
    void the_hours_of_a_year_fall_into_the_region_of_their_flow() {
        PumpSet set = BestAtSixty.set(BestAtSixty.curve(0, 120));
        LoadProfile profile = LoadProfile.of(
                "by hand", List.of(bin(100, 1000), bin(75, 2000), bin(60, 500), bin(40, 300), bin(0, 100)), Basis.NONE);
        Duty design = new Duty(m3ph(60), Head.metres(31));
        StrategyComparison comparison = StrategyComparison.of(
                set,
                profile,
                new EnergyPrice(new Money(0.2, "EUR")),
                List.of(ControlLaw.constantSpeed(), ControlLaw.fixedSpeed(design)));
        RegionHours hours = RegionHours.of(set, comparison.laws().get(0), OperatingRegion.USUAL);
        assertEquals(3000, hours.hours().get(Zone.PREFERRED).toHours(), 1e-9);
        assertEquals(500, hours.hours().get(Zone.ALLOWABLE).toHours(), 1e-9);
        assertEquals(300, hours.hours().get(Zone.OUTSIDE).toHours(), 1e-9);
        assertEquals(100, hours.off().toHours(), 1e-9);
        assertEquals(3000.0 / 3800, hours.share(Zone.PREFERRED).value(), 1e-12);
        assertTrue(hours.notes().has(LimitProblem.OUTSIDE_ALLOWABLE_REGION));
        assertTrue(hours.notes().has(LimitProblem.REGION_ASSUMED));
    }
}
