package headrace.energy.year;

import headrace.units.Energy;

/**
 * Where the energy from the wire goes in a year. The parts make up the whole.
 *
 * @param needed what the liquid takes up for the head that the circuit needs
 * @param throttled what it takes up beyond that, which valves throttle away
 * @param pump what the pump loses
 * @param motorAndDrive what motor and drive lose while it runs
 * @param standby what is taken while the pump stands still
 */
public record EnergyShares(Energy needed, Energy throttled, Energy pump, Energy motorAndDrive, Energy standby) {
    /** Returns the whole. */
    public Energy total() {
        return needed.plus(throttled).plus(pump).plus(motorAndDrive).plus(standby);
    }
}
