package headrace.commission;

import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Speed;
import java.util.Optional;

/**
 * What was read on site at one speed.
 *
 * @param speed the speed
 * @param shutOffHead the head against a closed valve, if it was read
 * @param closedPower the wire power against a closed valve, if it was read
 * @param dutyHead the head with the circuit open as at design, if it was read
 * @param dutyPower the wire power with the circuit open as at design, if it was read
 */
public record SiteReading(
        Speed speed,
        Optional<Head> shutOffHead,
        Optional<Power> closedPower,
        Optional<Head> dutyHead,
        Optional<Power> dutyPower) {
    /** Refuses with {@code NOTHING_ENTERED} a row without a reading, or one that no turning pump gives. */
    public SiteReading {
        boolean some =
                shutOffHead.isPresent() || closedPower.isPresent() || dutyHead.isPresent() || dutyPower.isPresent();
        boolean positive = shutOffHead.map(h -> h.metres() > 0).orElse(true)
                && dutyHead.map(h -> h.metres() > 0).orElse(true)
                && closedPower.map(p -> p.watts() > 0).orElse(true)
                && dutyPower.map(p -> p.watts() > 0).orElse(true);
        if (!some || !positive) {
            throw new Refusal(
                    CommissionProblem.NOTHING_ENTERED,
                    "Given readings at " + speed + (some ? " of which one is not above 0" : " without any value"),
                    "Of head and wire power against a closed valve and with the circuit open one at least must be there,"
                            + " above 0",
                    "Enter what was read, and leave out what was not");
        }
    }
}
