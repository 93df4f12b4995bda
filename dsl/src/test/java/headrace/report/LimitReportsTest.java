package headrace.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Chart;
import headrace.chart.Layout;
import headrace.circuit.SystemCurve;
import headrace.curve.HeadShape;
import headrace.curve.NpshCurve;
import headrace.curve.NpshPoint;
import headrace.curve.PumpCurve;
import headrace.operation.ParallelOperation;
import headrace.operation.SeriesOperation;
import headrace.operation.limit.PumpLimits;
import headrace.operation.limit.ReachableRegion;
import headrace.operation.suction.Atmosphere;
import headrace.operation.suction.NpshCheck;
import headrace.operation.suction.NpshOverReach;
import headrace.operation.suction.NpshRule;
import headrace.operation.suction.SuctionSide;
import headrace.pump.ParallelPumps;
import headrace.pump.PumpBranch;
import headrace.pump.SeriesPumps;
import headrace.report.Block.ChartBlock;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Ratio;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reports of limits, suction and several pumps, for pumps and duties made up from seeds. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LimitReportsTest {
    private static final int SEEDS = 15;
    private static final List<Shown> SHOWN = IntStream.range(0, SEEDS)
            .mapToObj(SeededSet::new)
            .flatMap(seeded -> results(seeded).stream())
            .map(result -> Reports.of(result).orElseThrow())
            .toList();

    private static List<Object> results(SeededSet seeded) {
        PumpCurve curve = PumpCurve.fit(seeded.test, HeadShape.NEVER_RISING);
        SystemCurve steep = SystemCurve.through(seeded.design);
        ReachableRegion reach = ReachableRegion.of(seeded.set);
        List<NpshPoint> readings = seeded.test.points().stream()
                .filter(point -> point.flow().si() > 0)
                .map(point -> new NpshPoint(
                        point.flow(),
                        Head.metres(2
                                + 2
                                        * square(point.flow()
                                                .over(seeded.design.flow())
                                                .value())),
                        point.speed()))
                .toList();
        SuctionSide suction = SuctionSide.closed(Atmosphere.SEA_LEVEL, GaugePressure.kilopascals(20), Length.metres(1));
        NpshCheck.Terms terms = new NpshCheck.Terms(
                suction, NpshCurve.of(seeded.test.withNpsh(readings)), NpshRule.USUAL, seeded.test.liquid());
        return List.of(
                PumpLimits.of(reach),
                NpshOverReach.of(reach, terms),
                ParallelOperation.of(
                        ParallelPumps.of(List.of(
                                PumpBranch.of(curve).named("P-1"),
                                PumpBranch.of(curve.atSpeed(Ratio.of(0.9))).named("P-2"),
                                PumpBranch.of(curve.atSpeed(Ratio.of(0.6))).named("P-3"))),
                        steep),
                SeriesOperation.of(SeriesPumps.of(List.of(curve)), steep));
    }

    private static double square(double x) {
        return x * x;
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 800, 1600})
    void no_label_crosses_another(int width) {
        List<Chart> charts = SHOWN.stream()
                .flatMap(shown -> shown.blocks().stream())
                .filter(ChartBlock.class::isInstance)
                .map(block -> ((ChartBlock) block).chart())
                .toList();
        assertEquals(4 * SEEDS, charts.size());
        for (Chart chart : charts) {
            List<Layout.Text> texts = chart.layout(width).texts();
            for (int i = 0; i < texts.size(); i++) {
                for (int j = 0; j < i; j++) {
                    assertFalse(
                            texts.get(i).box().crosses(texts.get(j).box()),
                            chart.title() + ": " + texts.get(i) + " and " + texts.get(j));
                }
            }
        }
    }

    @Test
    void what_was_assumed_and_what_is_closed_stands_beneath_the_result() {
        List<String> texts = SHOWN.stream().limit(4).map(Shown::toText).toList();
        assertTrue(texts.get(0).contains("[region-assumed]") && texts.get(0).contains("Torque over speed"));
        assertTrue(texts.get(1).contains("[npsh-margin-assumed]"));
        assertTrue(texts.get(2).contains("closed") && texts.get(2).contains("[dead-headed-pump]"));
        assertTrue(texts.get(3).contains("Pumps in series"));
    }
}
