package headrace.economics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.circuit.part.pipe.Pipe;
import headrace.economics.tariff.Bill;
import headrace.economics.tariff.PowerSeries;
import headrace.economics.tariff.Tariff;
import headrace.liquid.Liquid;
import headrace.units.Density;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Money;
import headrace.units.Power;
import headrace.units.Temperature;
import headrace.units.Time;
import headrace.units.Volume;
import java.util.Arrays;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples of public bodies, from head to money. Their water is of 1000 kg/m³. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PublishedExamplesTest {
    private static final Density WATER = Density.kilogramsPerCubicMetre(1000);

    /**
     * Hydraulic Institute, Europump and US DOE, Pump Life Cycle Costs, DOE/GO-102001-1190, 2001 (inputs from memory):
     * 80 m³/h at 71.7 m and 75.1 %, motor of 90 %: 23.1 kW, 6000 h at 0.08 $ 11 088 $; trimmed, 42.0 m and 72.1 %: 14.0
     * kW, 6720 $.
     */
    @ParameterizedTest
    @CsvSource({"71.7, 75.1, 23.1, 11088", "42.0, 72.1, 14.0, 6720"})
    void the_energy_of_the_control_valve_follows_from_its_head(
            double head, double efficiency, double input, double cost) {
        Power shaft = hydraulic(Flow.cubicMetresPerHour(80), Head.metres(head)).over(0.01 * efficiency);
        Power wire = shaft.over(0.90);
        assertEquals(input, wire.toKilowatts(), 0.15);
        Energy year = Power.kilowatts(input).times(Time.hours(6000));
        assertEquals(cost, price(0.08).of(year).amount(), 1e-6);
    }

    /**
     * US DOE, Pumping Systems Tip Sheet 7, 2006 (numbers from memory): 3000 gpm at 165 ft and 80 %: 156.25 hp; at 125
     * ft 118.4 hp; 8000 h at a motor of 94 %: 240 490 kWh. The tip sheet's 3960 stands for 3954 at 1000 kg/m³, 0.15 %
     * apart.
     */
    @Test
    void a_trimmed_impeller_saves_what_the_tip_sheet_says() {
        Flow flow = Flow.usGallonsPerMinute(3000);
        Power full = hydraulic(flow, Head.feet(165)).over(0.80);
        Power trimmed = hydraulic(flow, Head.feet(125)).over(0.80);
        assertEquals(156.25, full.toHorsepower(), 0.0016 * 156);
        assertEquals(118.4, trimmed.toHorsepower(), 0.0016 * 118);
        Energy saved = full.minus(trimmed).over(0.94).times(Time.hours(8000));
        assertEquals(240_490, saved.toKilowattHours(), 0.0025 * 240_490);
    }

    /**
     * US DOE, Pumping Systems Tip Sheet 9 (from memory, unconfirmed): 600 gpm through 1000 ft of clean steel, 8760 h at
     * 0.05 $ and 70 %, printed in steps of 5 $ (half a step is allowed). The inside diameters of schedule 40 are those
     * of ASME B36.10M: 6.065, 7.981, 10.020 and 11.938 in.
     */
    @ParameterizedTest
    @CsvSource({"6.065, 1690", "7.981, 425", "10.020, 140", "11.938, 60"})
    void the_cost_of_a_pipe_size_is_within_five_per_cent_of_the_tip_sheet(double inches, double dollars) {
        Pipe pipe = Pipe.of("main", Length.inches(inches), Length.feet(0.00015), Length.feet(1000));
        Flow flow = Flow.usGallonsPerMinute(600);
        Liquid water = Liquid.water(Temperature.fahrenheit(60));
        double metres = pipe.in(water).headMetres(flow.si());
        Power wire = Head.metres(metres).pressureOf(water).times(flow).over(0.70);
        double cost = price(0.05).of(wire.times(Time.hours(8760))).amount();
        assertEquals(dollars, cost, 0.05 * dollars + 2.5);
    }

    /** US DOE sourcebook (from memory): 100 hp of 746 W at 95 %, 8760 h, 0.05 $: 34 394 $. */
    @Test
    void a_motor_at_full_load_all_year_costs_what_the_sourcebook_says() {
        double[] watts = new double[8760];
        Arrays.fill(watts, 100 * 746 / 0.95);
        PowerSeries powers = PowerSeries.of("motor", 2025, watts, Liquid.water(Temperature.celsius(20)));
        Bill bill = Tariff.flat(price(0.05)).bill(powers);
        assertEquals(34_394.5, bill.total().amount(), 0.5);
    }

    /**
     * Training slides of energy audits, BEE/UNEP type (read in a copy): 68 m³/h at 47 m and 60 %: 8.7, 14.5 and 16.1
     * kW; at 76 m and 50 %: 14, 28 and 31 kW; 14.9 kW over 8760 h are 130 524 kWh.
     */
    @Test
    void an_oversized_pump_takes_what_the_slides_say() {
        Flow flow = Flow.cubicMetresPerHour(68);
        Power right = hydraulic(flow, Head.metres(47));
        Power oversized = hydraulic(flow, Head.metres(76));
        assertEquals(8.7, right.toKilowatts(), 0.05);
        assertEquals(14.5, right.toKilowatts() / 0.6, 0.05);
        assertEquals(16.1, right.toKilowatts() / 0.6 / 0.9, 0.05);
        assertEquals(14, oversized.toKilowatts(), 0.1);
        assertEquals(31, oversized.toKilowatts() / 0.5 / 0.9, 0.5);
        assertEquals(130_524, Power.kilowatts(14.9).times(Time.hours(8760)).toKilowattHours(), 1e-6);
    }

    /**
     * MIL-HDBK-1133, page 27 (read): run hours are gallons over 60 times gpm, energy is motor capacity times run hours
     * over motor efficiency. Here 1 200 000 gal at 200 gpm are 100 h; 15 kW at 90 % take 1666.7 kWh.
     */
    @Test
    void the_estimate_of_the_handbook_is_power_over_efficiency_times_run_hours() {
        Time hours = Volume.usGallons(1_200_000).over(Flow.usGallonsPerMinute(200));
        assertEquals(100, hours.toHours(), 1e-9);
        Energy energy = Power.kilowatts(15).over(0.90).times(hours);
        assertEquals(1666.667, energy.toKilowattHours(), 1e-3);
    }

    private static Power hydraulic(Flow flow, Head head) {
        return head.pressureOf(WATER).times(flow);
    }

    private static EnergyPrice price(double dollars) {
        return new EnergyPrice(new Money(dollars, "USD"));
    }
}
