package headrace.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class DriveTrainTest {
    private static final Motor MOTOR = Motor.ofClass(Power.kilowatts(5.5), 3, 4);
    private static final Drive DRIVE = Drive.reference(Power.kilowatts(5.5));
    private static final double MOTOR_LOSS = 5500 * (1 / 0.896 - 1);

    static Stream<DriveTrain> trains() {
        return LossModel.all().stream()
                .flatMap(model -> Stream.of(DriveTrain.of(MOTOR, DRIVE, model), DriveTrain.onMains(MOTOR, model)));
    }

    @ParameterizedTest
    @MethodSource("trains")
    void closes_its_sum_of_losses_at_every_load_and_speed(DriveTrain train) {
        for (int load = 0; load <= 120; load += 3) {
            for (int speed = 1; speed <= 110; speed += 4) {
                double watts = 55.0 * load;
                Losses losses = train.lossesAt(Power.watts(watts), Ratio.percent(speed));
                double sum = watts;
                for (Losses.Part part : losses.parts()) {
                    assertTrue(part.power().watts() >= 0, part.name());
                    sum += part.power().watts();
                }
                assertEquals(sum, losses.input().watts(), 1e-12 * sum);
                assertEquals(sum, train.inputWatts(watts, speed / 100.0), 1e-12 * sum);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("trains")
    void takes_more_from_the_wire_for_more_at_the_shaft(DriveTrain train) {
        for (double speed : new double[] {0.25, 0.6, 1}) {
            double before = train.inputWatts(0, speed);
            for (int load = 1; load <= 150; load++) {
                double now = train.inputWatts(55.0 * load, speed);
                assertTrue(now > before);
                before = now;
            }
        }
    }

    @Test
    void gives_the_efficiency_of_the_motor_at_full_load_on_the_mains() {
        for (LossModel model : LossModel.all()) {
            double input = DriveTrain.onMains(MOTOR, model).inputWatts(5500, 1);
            assertEquals(0.896, 5500 / input, 1e-12, model.name());
        }
    }

    /** Hand calculation: half torque at half speed, 1375 W at the shaft. */
    @Test
    void loses_in_separate_parts_what_a_hand_calculation_gives() {
        Losses losses =
                DriveTrain.of(MOTOR, DRIVE, SeparateLosses.ASSUMED).lossesAt(Power.watts(1375), Ratio.percent(50));
        double[] expected = {
            MOTOR_LOSS * 0.55 * (0.2 + 0.8 * 0.25),
            MOTOR_LOSS * 0.2 * 0.3535533905932738,
            MOTOR_LOSS * 0.1 * 0.1767766952966369,
            MOTOR_LOSS * 0.15 * 0.25 * 0.5,
            477 * (0.4 + 0.2 * 0.5 + 0.28 * 0.25 + 0.12 * 0.5 * 0.5 / 0.9)
        };
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], losses.parts().get(i).power().watts(), 1e-9);
        }
        assertEquals(expected[4], losses.of(Losses.Place.DRIVE).watts(), 1e-9);
        assertEquals(0, losses.of(Losses.Place.MOTOR_AND_DRIVE).watts());
    }

    /** EU 2019/1781 Annex I Table 6: 5.5 kW loses 0.477 kW at 90 % frequency and 100 % torque current. */
    @Test
    void loses_the_reference_loss_of_the_drive_at_its_reference_point() {
        Losses losses =
                DriveTrain.of(MOTOR, DRIVE, SeparateLosses.ASSUMED).lossesAt(Power.watts(4950), Ratio.percent(90));
        assertEquals(477, losses.of(Losses.Place.DRIVE).watts(), 1e-9);
    }

    /** EU 2019/1781 Annex I Table 6, every row: the motor's kW and the kW that its drive loses at 90 and 100 %. */
    @ParameterizedTest(name = "{0} kW")
    @CsvSource({
        "0.12, 0.100", "0.18, 0.104", "0.25, 0.109", "0.37, 0.117", "0.55, 0.129", "0.75, 0.142", "1.1, 0.163",
                "1.5, 0.188",
        "2.2, 0.237", "3, 0.299", "4, 0.374", "5.5, 0.477", "7.5, 0.581", "11, 0.781", "15, 1.01", "18.5, 1.21",
        "22, 1.41", "30, 1.86", "37, 2.25", "45, 2.70", "55, 3.24", "75, 4.35", "90, 5.17", "110, 5.55",
        "132, 6.65", "160, 8.02", "200, 10.0", "250, 12.4", "315, 15.6", "355, 17.5", "400, 19.8", "500, 24.7",
        "560, 27.6", "630, 31.1", "710, 35.0", "800, 39.4", "900, 44.3", "1000, 49.3"
    })
    void a_reference_drive_loses_what_the_table_says(double rated, double lost) {
        assertEquals(
                lost, Drive.reference(Power.kilowatts(rated)).referenceLoss().toKilowatts(), 1e-12);
    }

    /** EU 2019/1781 Annex I Table 6: 14.4 kVA loses at most 0.585750 kW as IE2; between two ratings the higher loss. */
    @Test
    void takes_drive_losses_from_the_table_and_the_higher_ones_between_two_ratings() {
        assertEquals(585.75, Drive.ie2(Power.kilowatts(11)).referenceLoss().watts(), 1e-9);
        assertEquals(100, Drive.reference(Power.kilowatts(0.12)).referenceLoss().watts(), 1e-9);
        assertEquals(581, Drive.reference(Power.kilowatts(6)).referenceLoss().watts(), 1e-9);
        assertEquals(
                49_300, Drive.reference(Power.kilowatts(1000)).referenceLoss().watts(), 1e-9);
        refused(DriveProblem.RATING_OUTSIDE_TABLE, () -> Drive.reference(Power.kilowatts(0.11)));
        refused(DriveProblem.RATING_OUTSIDE_TABLE, () -> Drive.reference(Power.kilowatts(1001)));
        refused(DriveProblem.RATING_OUTSIDE_TABLE, () -> Drive.reference(Power.kilowatts(-1)));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> Drive.declared(Power.kilowatts(5), Power.ZERO));
    }

    /** A drive twice as large sees half the torque current. */
    @Test
    void counts_torque_current_against_the_rating_of_the_drive() {
        Drive larger = Drive.declared(Power.kilowatts(11), Power.watts(781));
        Losses losses =
                DriveTrain.of(MOTOR, larger, SeparateLosses.ASSUMED).lossesAt(Power.watts(4950), Ratio.percent(90));
        assertEquals(781 * (0.4 + 0.16 + 0.07), losses.of(Losses.Place.DRIVE).watts(), 1e-9);
    }

    @Test
    void still_loses_in_the_drive_when_the_shaft_takes_next_to_nothing() {
        DriveTrain train = DriveTrain.of(MOTOR, DRIVE, SeparateLosses.ASSUMED);
        double drive = train.lossesAt(Power.ZERO, Ratio.percent(0.01))
                .of(Losses.Place.DRIVE)
                .watts();
        assertEquals(0.4 * 477, drive, 1e-9);
    }

    /** 10 CFR 431 Subpart Y Appendix A, 2016 procedure: y and z, from memory. */
    @ParameterizedTest(name = "y({0}) = {1}")
    @CsvSource({"1, 1", "0.75, 0.825688", "0.5, 0.679575", "0.25, 0.603925"})
    void follows_the_part_load_factor_of_the_procedure_on_the_mains(double load, double factor) {
        double watts = 5500 * load;
        double loss = DriveTrain.onMains(MOTOR, new CombinedLosses()).inputWatts(watts, 1) - watts;
        assertEquals(factor, loss / MOTOR_LOSS, 5e-7);
    }

    @ParameterizedTest(name = "{0} hp: z(1) = {1}")
    @CsvSource({"5, 1.5610", "5.01, 1.7405", "20, 1.7405", "50, 1.7502", "60, 2.2557"})
    void follows_the_combined_factor_of_the_size_of_motor(double horsepower, double factor) {
        Motor motor = Motor.premiumEnclosed(Power.horsepower(horsepower), 4);
        Losses losses = DriveTrain.of(motor, DRIVE, new CombinedLosses()).lossesAt(motor.rated(), Ratio.percent(100));
        assertEquals(factor, losses.total().over(motor.fullLoadLoss()).value(), 1e-9);
        assertEquals(1, losses.parts().size());
        assertEquals(0, losses.of(Losses.Place.MOTOR).watts());
    }

    /** Worked case of the same procedure: 20 hp, 93.0 %, 16.630302 hp at 100 % flow. */
    @ParameterizedTest(name = "{0} of design flow: {1} hp")
    @CsvSource({"0.25, 1.4236", "0.5, 4.1693", "0.75, 9.7424", "1, 19.1140"})
    void gives_the_input_powers_of_the_variable_load_case(double flow, double inputHorsepower) {
        Motor motor = Motor.premiumEnclosed(Power.horsepower(20), 4);
        Power shaft = Power.horsepower((0.8 * flow * flow * flow + 0.2 * flow) * 16.630302);
        Losses losses = DriveTrain.of(motor, DRIVE, new CombinedLosses()).lossesAt(shaft, Ratio.of(flow));
        assertEquals(inputHorsepower, losses.input().toHorsepower(), 5e-5);
    }

    @Test
    void says_by_how_much_the_motor_is_overloaded() {
        DriveTrain train = DriveTrain.of(MOTOR, DRIVE, SeparateLosses.ASSUMED);
        Notes notes = train.lossesAt(Power.kilowatts(6), Ratio.percent(100)).notes();
        assertTrue(notes.has(DriveProblem.MOTOR_OVERLOAD));
        assertEquals(
                "The load takes 6 kW at 100 % speed, the motor gives 5.5 kW there",
                notes.list().stream()
                        .filter(note -> note.problem() == DriveProblem.MOTOR_OVERLOAD)
                        .findFirst()
                        .orElseThrow()
                        .text());
        assertTrue(train.lossesAt(Power.kilowatts(3), Ratio.percent(50)).notes().has(DriveProblem.MOTOR_OVERLOAD));
        assertTrue(
                train.lossesAt(Power.kilowatts(5.5), Ratio.percent(100)).notes().isEmpty());
    }

    @Test
    void says_when_a_load_lies_outside_the_loss_model() {
        DriveTrain separate = DriveTrain.of(MOTOR, DRIVE, SeparateLosses.ASSUMED);
        DriveTrain combined = separate.with(new CombinedLosses());
        assertTrue(outside(separate, 6.2, 100));
        assertTrue(outside(separate, 4, 105));
        assertFalse(outside(separate, 6, 100));
        assertTrue(outside(combined, 0.2, 30));
        assertFalse(outside(combined, 0.3, 30));
        assertTrue(outside(combined, 6.2, 100));
        assertTrue(outside(combined.bypassed(), 0.5, 100));
        double atEnd = combined.inputWatts(275, 0.3) - 275;
        assertEquals(atEnd, combined.inputWatts(50, 0.3) - 50, 1e-9);
    }

    @Test
    void says_when_the_motor_is_of_a_size_that_the_combined_model_does_not_cover() {
        DriveTrain small = DriveTrain.of(Motor.ofClass(Power.kilowatts(0.55), 3, 4), DRIVE, new CombinedLosses());
        assertTrue(
                small.lossesAt(Power.watts(300), Ratio.percent(80)).notes().has(DriveProblem.MOTOR_SIZE_OUTSIDE_MODEL));
    }

    @Test
    void says_when_the_drive_is_smaller_than_the_load() {
        DriveTrain train = DriveTrain.of(MOTOR, Drive.reference(Power.kilowatts(4)), SeparateLosses.ASSUMED);
        assertTrue(
                train.lossesAt(Power.kilowatts(5), Ratio.percent(100)).notes().has(DriveProblem.DRIVE_OVERLOAD));
        assertFalse(
                train.lossesAt(Power.kilowatts(3.9), Ratio.percent(100)).notes().has(DriveProblem.DRIVE_OVERLOAD));
    }

    @Test
    void says_what_it_rests_on() {
        List<String> choices =
                DriveTrain.of(MOTOR, DRIVE, SeparateLosses.ASSUMED).basis().choices();
        assertTrue(choices.stream().anyMatch(choice -> choice.contains("EU 2019/1781 Annex I,")));
        assertTrue(choices.stream().anyMatch(choice -> choice.contains("Table 6")));
        assertTrue(choices.stream().anyMatch(choice -> choice.startsWith("loss model 'separate'")));
    }

    @Test
    void is_refused_for_a_load_that_cannot_be() {
        DriveTrain train = DriveTrain.of(MOTOR, DRIVE, SeparateLosses.ASSUMED);
        refused(DriveProblem.IMPOSSIBLE_LOAD, () -> train.lossesAt(Power.watts(-1), Ratio.percent(50)));
        refused(DriveProblem.IMPOSSIBLE_LOAD, () -> train.lossesAt(Power.watts(1), Ratio.ZERO));
    }

    @Test
    void takes_a_loss_model_by_name_and_names_those_that_exist() {
        for (LossModel model : LossModel.all()) {
            assertEquals(model, LossModel.named(model.name()));
        }
        Refusal refusal = refused(DriveProblem.UNKNOWN_LOSS_MODEL, () -> LossModel.named("seperate"));
        assertTrue(refusal.getMessage().contains("separate, combined, constant efficiency"));
    }

    @Test
    void refuses_shares_that_do_not_add_up() {
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> new MotorShares(0.5, 0.2, 0.2, 0.1, 0.1));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> new MotorShares(0.9, 0.2, 0.2, 0.1, -0.2));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> new MotorShares(0.5, Double.NaN, 0.2, 0.2, 0.1));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> new DriveShape(0, 0.5, 0.4, 0.1));
        refused(DriveProblem.IMPOSSIBLE_LOSSES, () -> new DriveShape(0.4, 0.5, 0.4, 0.1));
    }

    private static boolean outside(DriveTrain train, double kilowatts, double percentSpeed) {
        return train.lossesAt(Power.kilowatts(kilowatts), Ratio.percent(percentSpeed))
                .notes()
                .has(DriveProblem.PART_LOAD_OUTSIDE_MODEL);
    }

    private static Refusal refused(DriveProblem problem, Runnable asking) {
        Refusal refusal = assertThrows(Refusal.class, asking::run);
        assertEquals(problem, refusal.problem());
        return refusal;
    }
}
