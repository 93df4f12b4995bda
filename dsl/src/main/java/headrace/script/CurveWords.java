package headrace.script;

import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;

/** Words about pump tests and the curves fitted to them. */
public final class CurveWords implements Words {
    @Override
    public String subject() {
        return "Pump curves";
    }

    /** Fits a curve to a test. */
    @Word(
            help = "Fits head and shaft power to the points of a pump test, brought to the speed of the test; the"
                    + " efficiency follows from both.",
            example = "curve = fit(readPumpTest('demo-data/pumps/heron-65.csv'))")
    public static PumpCurve fit(Object test) {
        return PumpCurve.fit(Wanted.object(PumpTest.class, test, "the test that fit is given"));
    }
}
