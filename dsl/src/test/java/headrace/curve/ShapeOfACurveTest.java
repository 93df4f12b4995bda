package headrace.curve;

import static headrace.curve.CurveProblem.REPEATED_FLOWS;
import static headrace.curve.CurveProblem.SHAPE_HELD;
import static headrace.curve.Pumps.evenly;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.point;
import static headrace.curve.Pumps.points;
import static headrace.curve.Pumps.refusal;
import static headrace.curve.Pumps.test;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ShapeOfACurveTest {
    /** A head that rises by 0.5 m to its top at 20 m³/h. */
    private static PumpTest drooping() {
        Random random = new Random(12);
        return test(points(
                evenly(11, 0, 100),
                q -> 20 + 0.05 * q - 0.00125 * q * q + 0.03 * random.nextGaussian(),
                q -> 2000 + 50 * q));
    }

    private static PumpTest falling() {
        return test(points(evenly(11, 0, 100), q -> 32 - 0.01 * q - 0.0012 * q * q, q -> 3000 + 70 * q));
    }

    @ParameterizedTest
    @EnumSource(
            value = HeadShape.class,
            names = {"NEVER_RISING", "NEVER_RISING_AND_CONCAVE"})
    void is_held_at_a_thousand_points_and_says_so(HeadShape shape) {
        PumpCurve held = PumpCurve.fit(drooping(), shape);
        double before = held.headAt(Flow.ZERO).metres();
        for (int i = 1; i <= 1000; i++) {
            double head = held.headAt(m3ph(i / 10.0)).metres();
            assertTrue(head <= before + 1e-12);
            before = head;
        }
        assertTrue(held.droop().isEmpty());
        assertTrue(held.notes().has(SHAPE_HELD));
        assertTrue(held.notes().toString().contains("the head was held to be " + shape + ", which moved it"));
        assertTrue(PumpCurve.fit(drooping()).droop().isPresent());
    }

    @ParameterizedTest
    @EnumSource(HeadShape.class)
    void changes_nothing_where_the_points_have_it_already(HeadShape shape) {
        PumpCurve held = PumpCurve.fit(falling(), shape);
        PumpCurve free = PumpCurve.fit(falling());
        assertEquals(free.headFit().coefficients(), held.headFit().coefficients());
        assertEquals(free.notes(), held.notes());
        assertTrue(held.headFit().meanBandAt(m3ph(50), Ratio.percent(95)).isPresent());
    }

    /** Held curves scatter more than the free one, and have no band, since the shape is not what the points say. */
    @Test
    void leaves_a_residual_but_no_band_where_it_holds() {
        FittedCurve<Head> held =
                PumpCurve.fit(drooping(), HeadShape.NEVER_RISING).headFit();
        FittedCurve<Head> free = PumpCurve.fit(drooping()).headFit();
        assertTrue(held.residual().orElseThrow().compareTo(free.residual().orElseThrow()) > 0);
        assertEquals(11 - 2, held.degreesOfFreedom());
        assertTrue(held.meanBandAt(m3ph(50), Ratio.percent(95)).isEmpty());
        assertTrue(held.toString().endsWith(", no band"), held.toString());
        assertTrue(PumpCurve.fit(drooping(), HeadShape.NEVER_RISING).bands().isEmpty());
    }

    @Test
    void has_no_residual_with_few_points() {
        List<TestPoint> few = List.of(point(0, 10, 2000), point(20, 11, 2500), point(50, 9, 3000));
        PumpCurve held = PumpCurve.fit(test(few), HeadShape.NEVER_RISING);
        assertTrue(held.headFit().residual().isEmpty());
        assertTrue(held.notes().has(SHAPE_HELD));
    }

    @Test
    void of_a_table_is_drawn_through_every_point() {
        double[] flows = {0, 15, 30, 50, 70, 85, 100};
        double[] heads = {32, 31.8, 31, 28.9, 25.2, 21.4, 16.9};
        List<TestPoint> points = new ArrayList<>();
        for (int i = 0; i < flows.length; i++) {
            points.add(point(flows[i], heads[i], 3000 + 60 * flows[i]));
        }
        PumpCurve curve = PumpCurve.through(test(points));
        for (TestPoint point : points) {
            assertEquals(point.head().metres(), curve.headAt(point.flow()).metres(), 1e-12);
            assertEquals(
                    point.shaftPower().watts(), curve.shaftPowerAt(point.flow()).watts(), 1e-9);
        }
        assertTrue(curve.droop().isEmpty());
        assertTrue(curve.headFit().coefficients().isEmpty());
        assertTrue(curve.headFit().residual().isEmpty());
        assertEquals(
                "head through every point by monotone cubics, no residual, no band",
                curve.headFit().toString());
        assertTrue(curve.bands().isEmpty());
    }

    @Test
    void of_a_table_serves_every_question_as_a_fitted_one_does() {
        PumpCurve curve = PumpCurve.through(falling());
        PumpCurve fitted = PumpCurve.fit(falling());
        assertEquals(
                fitted.bestEfficiencyPoint().efficiency().value(),
                curve.bestEfficiencyPoint().efficiency().value(),
                1e-3);
        double best = curve.bestEfficiencyPoint().efficiency().value();
        for (int i = 0; i <= 1000; i++) {
            assertTrue(curve.efficiencyAt(m3ph(i / 10.0)).value() <= best + 1e-12);
        }
        Flow flow = curve.flowsAt(Head.metres(25)).get(0);
        assertEquals(25, curve.headAt(flow).metres(), 1e-10);
        Duty duty = new Duty(m3ph(40), Head.metres(12));
        assertEquals(12, curve.pointFor(duty).head().metres(), 1e-10);
        assertEquals(12, curve.atSpeed(curve.speedFor(duty)).headAt(m3ph(40)).metres(), 1e-10);
        CurvePoint beyond = curve.extendedTo(m3ph(105)).at(m3ph(104));
        assertFalse(beyond.tested());
        double slope = curve.headAt(m3ph(100)).metres() - beyond.head().metres();
        CurvePoint further = curve.extendedTo(m3ph(110)).at(m3ph(108));
        assertEquals(slope, beyond.head().metres() - further.head().metres(), 1e-9, "goes on straight");
    }

    @Test
    void of_a_table_is_refused_with_two_points_at_one_flow() {
        List<TestPoint> repeated = new ArrayList<>(falling().points());
        repeated.add(point(50, 28, 6500));
        refusal(REPEATED_FLOWS, () -> PumpCurve.through(test(repeated)));
    }

    @Test
    void that_is_concave_may_still_droop_and_one_that_never_rises_may_still_bend_upwards() {
        PumpCurve concave = PumpCurve.fit(drooping(), HeadShape.CONCAVE);
        assertTrue(concave.droop().isPresent());
        assertFalse(concave.notes().has(SHAPE_HELD));
        PumpTest bentUp = test(points(evenly(9, 0, 60), q -> 30 - 0.4 * q + 0.002 * q * q, q -> 4000 + 50 * q));
        PumpCurve falling = PumpCurve.fit(bentUp, HeadShape.NEVER_RISING);
        assertFalse(falling.notes().has(SHAPE_HELD));
        assertEquals(0.002 * 3600 * 3600, falling.headFit().coefficients().get(2), 1e-3);
        for (HeadShape shape : List.of(HeadShape.CONCAVE, HeadShape.NEVER_RISING_AND_CONCAVE)) {
            PumpCurve straight = PumpCurve.fit(bentUp, shape);
            assertTrue(straight.notes().has(SHAPE_HELD));
            double middle = straight.headAt(m3ph(30)).metres();
            double mean = 0.5
                    * (straight.headAt(m3ph(0)).metres()
                            + straight.headAt(m3ph(60)).metres());
            assertEquals(mean, middle, 1e-9);
        }
        assertEquals("never rising and concave", HeadShape.NEVER_RISING_AND_CONCAVE.toString());
    }

    /** The top held at no flow leaves c₀ + c₂·Q²: its scatter, worked out apart, and how often the free one's it is. */
    @Test
    void says_how_much_more_it_scatters() {
        PumpTest test = drooping();
        PumpCurve held = PumpCurve.fit(test, HeadShape.NEVER_RISING);
        double squares = 0;
        double freeSquares = 0;
        PumpCurve free = PumpCurve.fit(test);
        for (TestPoint point : test.points()) {
            squares +=
                    Math.pow(point.head().metres() - held.headAt(point.flow()).metres(), 2);
            freeSquares +=
                    Math.pow(point.head().metres() - free.headAt(point.flow()).metres(), 2);
        }
        assertEquals(
                Math.sqrt(squares / 9), held.headFit().residual().orElseThrow().metres(), 1e-10);
        String factor = Numbers.print(Math.sqrt(squares / freeSquares)) + " times as much scatter";
        assertTrue(held.notes().toString().contains(factor), held.notes().toString());
    }
}
