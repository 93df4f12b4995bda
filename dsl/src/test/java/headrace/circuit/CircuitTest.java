package headrace.circuit;

import static headrace.circuit.LitreLoop.litres;
import static headrace.circuit.LitreLoop.twoBranches;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.LitreLoop.Loss;
import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.Part;
import headrace.circuit.part.Passage;
import headrace.circuit.solve.LinkState;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** All expected numbers are hand calculations. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CircuitTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(20));

    @Test
    void each_branch_says_its_flow_its_head_its_opening_and_what_it_misses() {
        // far open: 10 = (1 + q)² + q², q = (√19 − 1)/2; available q²; near throttled to 1 L/s
        CircuitSolution solution = twoBranches().solve(Closing.head(Head.metres(10)));
        double q = (Math.sqrt(19) - 1) / 2;
        BranchState far = solution.branch("far");
        BranchState near = solution.branch("near");
        assertEquals(q, far.flow().toLitresPerSecond(), 1e-9);
        assertEquals(q * q, far.available().metres(), 1e-8);
        assertEquals(1, far.opening().orElseThrow().value(), 1e-8);
        assertEquals(9 - q * q, far.missing().metres(), 1e-8);
        assertEquals(q / 3, far.delivered().value(), 1e-9);
        assertEquals(1, near.flow().toLitresPerSecond(), 1e-12);
        assertEquals(Math.sqrt(1 / (q * q - 1)), near.opening().orElseThrow().value(), 1e-8);
        assertEquals(0, near.missing().metres());
        assertEquals(List.of("far"), solution.starvedBranches());
        assertTrue(solution.notes().has(CircuitProblem.STARVED_BRANCH));
    }

    @Test
    void the_neediest_valve_settles_the_least_head_that_feeds_all() {
        // main 4² = 16 m; far 4.5 m of coil and 4.5 m of valve, at share 0.9 4.5/0.81
        CircuitSolution solution = twoBranches().solve(Closing.neediestValve(Ratio.percent(90)));
        assertEquals(16 + 4.5 + 4.5 / 0.81, solution.head().metres(), 1e-8);
        assertEquals(0.9, solution.branch("far").opening().orElseThrow().value(), 1e-8);
        assertEquals(List.of(), solution.starvedBranches());
    }

    @Test
    void a_sensor_across_a_branch_settles_the_head_at_the_pump() {
        CircuitSolution solution = twoBranches().solve(Closing.sensors(Map.of("far", Head.metres(12))));
        assertEquals(16 + 12, solution.head().metres(), 1e-8);
        assertEquals(12, solution.headAt("header").metres(), 1e-8);
    }

    @Test
    void a_terminal_that_is_asked_for_nothing_is_out_of_use_and_named() {
        Circuit circuit = twoBranches();
        CircuitSolution solution = circuit.solve(circuit.designDemands().without("far"), Closing.head(Head.metres(10)));
        assertEquals(List.of("far"), solution.removedBranches());
        assertEquals(1, solution.flow().toLitresPerSecond(), 1e-12);
    }

    @Test
    void names_and_order_of_branches_change_nothing() {
        Circuit circuit = twoBranches();
        List<Branch> turned = List.of(
                circuit.branch("far").named("c"),
                circuit.branch("main").named("b"),
                circuit.branch("near").named("a"));
        CircuitSolution solution = new Circuit(WATER, "supply", "return", turned).solve(Closing.head(Head.metres(10)));
        CircuitSolution first = circuit.solve(Closing.head(Head.metres(10)));
        assertEquals(
                first.branch("far").flow().si(), solution.branch("c").flow().si(), 1e-15);
        assertEquals(first.flow().si(), solution.flow().si(), 1e-15);
    }

    @Test
    void a_branch_that_hangs_on_nothing_is_refused_by_name() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> Circuit.of(
                        WATER,
                        "supply",
                        "return",
                        Branch.of("main", "supply", "return", new Loss("pipe", 1)),
                        Branch.of("stray", "heder", "nowhere", new Loss("pipe", 1))));
        assertEquals(CircuitProblem.UNCONNECTED_CIRCUIT, refusal.problem());
        assertTrue(refusal.getMessage().contains("'stray'"), refusal.getMessage());
    }

    @Test
    void a_circuit_without_a_way_back_is_refused() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> Circuit.of(WATER, "supply", "return", Branch.of("main", "supply", "end", new Loss("pipe", 1))));
        assertTrue(refusal.getMessage().contains("without a way"), refusal.getMessage());
    }

    @Test
    void two_branches_of_one_name_are_refused() {
        Branch main = Branch.of("main", "supply", "return", new Loss("pipe", 1));
        assertEquals(
                CircuitProblem.DOUBLE_BRANCH,
                assertThrows(Refusal.class, () -> Circuit.of(WATER, "supply", "return", main, main))
                        .problem());
    }

    @Test
    void a_demand_of_no_terminal_is_refused_with_the_nearest_name() {
        Circuit circuit = twoBranches();
        Refusal refusal =
                assertThrows(Refusal.class, () -> circuit.designDemands().with("fra", litres(1)));
        assertEquals(CircuitProblem.UNKNOWN_BRANCH, refusal.problem());
        assertTrue(refusal.getMessage().contains("The nearest is far"), refusal.getMessage());
    }

    @Test
    void a_pump_that_another_holds_shut_is_named() {
        // a booster of 2 m at no flow between two junctions that the header keeps 5 m apart the other way round
        Part booster = new Part() {
            @Override
            public String name() {
                return "booster";
            }

            @Override
            public Passage passage() {
                return Passage.FORWARD;
            }

            @Override
            public LinkLaw in(Liquid liquid) {
                return new LinkLaw() {
                    @Override
                    public double headMetres(double q) {
                        return -2 + 1e6 * q * q;
                    }

                    @Override
                    public double slope(double q) {
                        return 2e6 * q;
                    }
                };
            }
        };
        CircuitSolution solution = Circuit.of(
                        WATER,
                        "supply",
                        "return",
                        Branch.of("load", "supply", "return", new Loss("pipe", 5)),
                        Branch.of("return pump", "return", "supply", booster))
                .solve(Closing.head(Head.metres(5)));
        assertEquals(LinkState.SHUT, solution.branch("return pump").state());
        assertEquals(0, solution.branch("return pump").flow().si());
        assertTrue(solution.notes().has(CircuitProblem.PUMPS_FIGHTING));
    }
}
