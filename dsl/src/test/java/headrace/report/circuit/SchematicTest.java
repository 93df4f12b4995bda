package headrace.report.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Chart;
import headrace.chart.Layout;
import headrace.chart.Layout.Text;
import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.Closing;
import headrace.circuit.part.Drop;
import headrace.circuit.part.Part;
import headrace.circuit.part.PlantResistance;
import headrace.circuit.part.coil.Coil;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.pipe.PipeSeries;
import headrace.circuit.part.valve.BypassValve;
import headrace.circuit.part.valve.Characteristic;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.InstalledCharacteristic;
import headrace.circuit.shape.Tap;
import headrace.circuit.shape.TwoPipe;
import headrace.liquid.Liquid;
import headrace.report.Block;
import headrace.report.Reports;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SchematicTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(12));

    private static Part pipe(double metres) {
        return Pipe.of("pipe", PipeSeries.STEEL.size(100), Length.metres(metres));
    }

    private static Part[] served(double flow) {
        return new Part[] {
            Coil.of("coil", Drop.of(Flow.cubicMetresPerHour(flow), Pressure.kilopascals(25))),
            ControlValve.of("valve", FlowCoefficient.kv(1.6 * flow))
        };
    }

    private static Tap tap(String name, double flow) {
        return Tap.of(name, Flow.cubicMetresPerHour(flow), served(flow)).on(pipe(20));
    }

    private static final Part PLANT =
            PlantResistance.of("chiller", Drop.of(Flow.cubicMetresPerHour(20), Pressure.kilopascals(40)));

    private static Circuit direct(int count) {
        List<Tap> taps = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            taps.add(tap("branch " + (i + 1) + (i % 3 == 0 ? " with a name that takes its room" : ""), 2 + i % 4));
        }
        return TwoPipe.directReturn(WATER, List.of(PLANT), taps);
    }

    private static Circuit ring() {
        return Circuit.of(
                WATER,
                "supply",
                "return",
                Branch.of("feed west", "supply", "west", pipe(40)),
                Branch.of("feed east", "supply", "east", pipe(60)),
                Branch.of("link", "west", "east", pipe(30)),
                Branch.terminal("coil west", "west", "back", Flow.cubicMetresPerHour(6), served(6)),
                Branch.terminal("coil east", "east", "back", Flow.cubicMetresPerHour(9), served(9)),
                Branch.of("home", "back", "return", pipe(50)),
                Branch.of("second home", "back", "return", pipe(50)),
                Branch.of(
                        "bypass",
                        "supply",
                        "return",
                        new BypassValve("bypass valve", Pressure.kilopascals(70), FlowCoefficient.kv(10))));
    }

    /** A tree of mains with terminals and cross links between random junctions, the same for a seed. */
    private static Circuit random(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int junctions = 2 + random.nextInt(12);
        List<Branch> branches = new ArrayList<>();
        for (int i = 1; i < junctions; i++) {
            branches.add(Branch.of("main " + i, "s" + random.nextInt(i), "s" + i, pipe(10)));
            branches.add(Branch.of("back " + i, "r" + i, "r" + random.nextInt(i), pipe(10)));
        }
        for (int i = 0; i < junctions + random.nextInt(6); i++) {
            double flow = 1 + random.nextInt(9);
            String from = "s" + random.nextInt(junctions);
            String to = "r" + random.nextInt(junctions);
            branches.add(Branch.terminal("terminal " + i, from, to, Flow.cubicMetresPerHour(flow), served(flow)));
        }
        for (int i = 0; i < random.nextInt(4) && junctions > 3; i++) {
            String side = random.nextBoolean() ? "s" : "r";
            branches.add(Branch.of("link " + i, side + i, side + (i + 2), pipe(10)));
        }
        return new Circuit(WATER, "s0", "r0", branches);
    }

    private static void clear(Chart chart) {
        for (int width : new int[] {400, 560, 800, 1200, 1600}) {
            Layout layout = chart.layout(width);
            List<Text> texts = layout.texts();
            for (int i = 0; i < texts.size(); i++) {
                Text one = texts.get(i);
                assertTrue(
                        one.box().x() >= 0
                                && one.box().right() <= layout.width()
                                && one.box().bottom() <= layout.height(),
                        () -> "'" + one.text() + "' leaves the page of " + width);
                for (Text other : texts.subList(0, i)) {
                    assertFalse(
                            one.box().grown(-0.5).crosses(other.box().grown(-0.5)),
                            () -> "'" + one.text() + "' on '" + other.text() + "' at " + width);
                }
            }
        }
    }

    @Test
    void no_lettering_meets_another_at_any_width_in_the_usual_shapes() {
        List<Tap> taps = List.of(tap("near", 4), tap("middle", 5), tap("far", 6));
        for (Circuit circuit : List.of(
                direct(1),
                direct(5),
                direct(30),
                TwoPipe.reverseReturn(WATER, List.of(PLANT), taps, List.of(pipe(40))),
                ring())) {
            clear(Schematic.of(circuit).orElseThrow());
            clear(Schematic.of(circuit.solve(Closing.head(Head.metres(9)))).orElseThrow());
        }
    }

    @Test
    void no_lettering_meets_another_in_two_hundred_random_trees_and_meshes() {
        for (long seed = 0; seed < 200; seed++) {
            Circuit circuit = random(seed);
            clear(Schematic.of(circuit).orElseThrow());
        }
    }

    @Test
    void every_branch_across_is_named_once_and_each_main_has_its_flow_and_head() {
        Circuit circuit = direct(4);
        var solution = circuit.solve(Closing.head(Head.metres(20)));
        Chart chart = Schematic.of(solution).orElseThrow();
        List<String> texts = chart.layout(1600).texts().stream().map(Text::text).toList();
        for (Branch terminal : circuit.terminals()) {
            assertEquals(1, texts.stream().filter(terminal.name()::equals).count(), terminal.name());
            String main = solution.branch("main to " + terminal.name()).flow().toString();
            assertTrue(texts.contains(main), main);
            assertTrue(
                    texts.contains(solution.headAt(terminal.name() + ", supply").toString()));
        }
        assertTrue(texts.contains("pump, plant"));
    }

    @Test
    void what_gets_too_little_says_so_beside_what_it_asks_for() {
        var solution = direct(4).solve(Closing.head(Head.metres(3)));
        assertFalse(solution.starvedBranches().isEmpty());
        String starved = solution.starvedBranches().get(0);
        String flow = solution.branch(starved).flow() + " of "
                + solution.branch(starved).demand().orElseThrow();
        String words = Schematic.of(solution).orElseThrow().altText();
        assertTrue(words.contains(flow), words);
    }

    @Test
    void a_main_that_closes_a_loop_says_where_it_leads() {
        String words = Schematic.of(ring()).orElseThrow().altText();
        assertTrue(words.contains("link: from west to east"), words);
        assertTrue(words.contains("second home: from back to return"), words);
    }

    @Test
    void a_circuit_that_is_too_big_for_a_drawing_shows_its_table() {
        assertEquals(Optional.empty(), Schematic.of(direct(Schematic.MOST_ROWS + 1)));
        Shown shown = Reports.of(direct(Schematic.MOST_ROWS + 1)).orElseThrow();
        assertTrue(shown.blocks().stream().noneMatch(Block.ChartBlock.class::isInstance));
        assertTrue(shown.blocks().stream().anyMatch(Block.TableBlock.class::isInstance));
    }

    @Test
    void a_circuit_and_how_it_stands_show_a_drawing_and_a_table() {
        Circuit circuit = direct(3);
        for (Object result : List.of(circuit, circuit.solve(Closing.head(Head.metres(9))))) {
            Shown shown = Reports.of(result).orElseThrow();
            assertTrue(shown.blocks().stream().anyMatch(Block.ChartBlock.class::isInstance));
            assertTrue(shown.blocks().stream().anyMatch(Block.TableBlock.class::isInstance));
        }
    }

    /** By hand at an authority of 0.25 and half of the stroke: κ = 50^−0.5, q = 1/√(0.75 + 0.25·50) = 27.47 %. */
    @Test
    void an_installed_characteristic_shows_its_chart() {
        var installed = new InstalledCharacteristic(Characteristic.equalPercentage(50), Ratio.percent(25));
        Shown shown = Reports.of(installed).orElseThrow();
        String facts = shown.blocks().toString();
        assertTrue(facts.contains("27.47 %"), facts);
        assertTrue(shown.blocks().stream().anyMatch(Block.ChartBlock.class::isInstance));
    }
}
