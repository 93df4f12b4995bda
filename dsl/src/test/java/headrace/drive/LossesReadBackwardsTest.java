package headrace.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** From wire power back to the shaft, and how the losses grow. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LossesReadBackwardsTest {
    private static final Power RATED = Power.kilowatts(7.5);

    private static List<DriveTrain> trains() {
        List<DriveTrain> all = new ArrayList<>();
        Motor motor = Motor.ofClass(RATED, 3, 4);
        Drive magnetised = Drive.reference(RATED).withMagnetisingCurrent(Ratio.percent(45));
        for (LossModel model : LossModel.all()) {
            all.add(DriveTrain.of(motor, Drive.reference(RATED), model));
            all.add(DriveTrain.of(motor, magnetised, model).withCableLoss(Ratio.percent(2)));
            all.add(DriveTrain.onMains(motor, model));
        }
        return all;
    }

    @Test
    void wire_power_goes_back_to_the_power_at_the_shaft_for_every_model() {
        for (DriveTrain train : trains()) {
            double[] inputs = new double[800];
            double[] speeds = new double[800];
            double[] shafts = new double[800];
            for (int i = 0; i < 800; i++) {
                speeds[i] = 0.4 + 0.6 * (i % 37) / 37;
                inputs[i] = train.inputWatts(shaft(i), speeds[i]);
            }
            train.fillShafts(inputs, speeds, shafts, 800);
            for (int i = 0; i < 800; i++) {
                assertEquals(shaft(i), shafts[i], 1e-9 * shaft(i), train::toString);
                assertEquals(shaft(i), train.shaftWatts(inputs[i], speeds[i]), 1e-9 * shaft(i), train::toString);
            }
        }
    }

    private static double shaft(int i) {
        return 60 + 8.0 * i;
    }

    @Test
    void wire_power_below_the_losses_without_load_belongs_to_no_shaft_power() {
        DriveTrain train = trains().get(0);
        double[] found = {0.5 * train.inputWatts(0, 0.8)};
        assertEquals(Double.NEGATIVE_INFINITY, train.shaftWatts(found[0], 0.8));
        train.fillShafts(found, new double[] {0.8}, found, 1);
        assertEquals(Double.NEGATIVE_INFINITY, found[0]);
    }

    /** Motor: 300·t² + 80·t²·s + 120·s^1.5 + 60·s^2.5, with t = P/(5500 W·s). */
    @Test
    void slopes_of_known_losses_are_those_worked_by_hand() {
        MotorTerms terms = new MotorTerms(5500, new MotorTerms.Watts(0, 300, 120, 60, 80), 1.5, 2.5);
        LossSlopes slopes = LossSlopes.of(new double[] {2200});
        terms.fillSlopes(1 / (5500 * 0.8), 0.8, slopes, 1);
        double t = 0.5;
        assertEquals(2 * t * (300 + 80 * 0.8) / (5500 * 0.8), slopes.perShaft()[0], 1e-15);
        double byTorque = (-2 * 300 / 0.8 - 80) * t * t; // t² goes with 1/s²: −2/s of it, and once again +s for stray
        double bySpeed = 1.5 * 120 * Math.sqrt(0.8) + 2.5 * 60 * Math.pow(0.8, 1.5);
        assertEquals(byTorque + bySpeed, slopes.perSpeed()[0], 1e-10);
    }

    @Test
    void slopes_agree_with_differences_for_every_model() {
        for (DriveTrain train : trains()) {
            double cable = 1 + train.cableLoss().value();
            LossSlopes slopes = LossSlopes.of(new double[] {3000});
            train.fillSlopes(0.77, slopes, 1);
            double perShaft = (train.inputWatts(3000.1, 0.77) - train.inputWatts(2999.9, 0.77)) / 0.2 / cable - 1;
            double perSpeed = (train.inputWatts(3000, 0.77001) - train.inputWatts(3000, 0.76999)) / 0.00002 / cable;
            assertEquals(perShaft, slopes.perShaft()[0], 1e-7, train::toString);
            assertEquals(perSpeed, slopes.perSpeed()[0], 1e-5 * (1 + Math.abs(perSpeed)), train::toString);
        }
    }
}
