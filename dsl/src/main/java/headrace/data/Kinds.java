package headrace.data;

import headrace.units.AbsolutePressure;
import headrace.units.Area;
import headrace.units.Density;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Frequency;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.KinematicViscosity;
import headrace.units.Length;
import headrace.units.Mass;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.TemperatureDifference;
import headrace.units.Time;
import headrace.units.Torque;
import headrace.units.Velocity;
import headrace.units.Viscosity;
import headrace.units.Volume;
import java.util.List;

/** Every kind of quantity, for saying what a wrong unit measures. */
final class Kinds {
    static final List<Kind<?>> ALL = List.of(
            Flow.KIND,
            MassFlow.KIND,
            Head.KIND,
            Length.KIND,
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
            Viscosity.KIND,
            KinematicViscosity.KIND,
            Mass.KIND,
            Time.KIND,
            FlowCoefficient.KIND);

    private Kinds() {}
}
