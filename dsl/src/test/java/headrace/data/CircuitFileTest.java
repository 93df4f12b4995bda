package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.Closing;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.coil.Coil;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.valve.BypassValve;
import headrace.circuit.part.valve.CheckValve;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.liquid.Liquid;
import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Pressure;
import headrace.units.Temperature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CircuitFileTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(12));

    private static final String HEAD = """
            # name: two coils
            # source: invented by hand
            # pump draws from: suction
            # pump delivers into: header
            """;

    private static final String COLUMNS =
            "branch, from, to, flow [m3/h], loss [kPa], loss at [m3/h], pipe, length [m], k [-], valve [Kv]\n";

    private static final String ROWS = """
            plant, end, suction, , 40, 9, , , ,
            main, header, tee, , , , steel 50, 24, 4,
            near, tee, end, 4, 22, , steel 32, 6, 8, 6.3
            far, tee, end, 5, 25, , steel 40, 30, 12, 10
            """;

    @TempDir
    private Path folder;

    private Circuit read(String text) throws IOException {
        return CircuitFile.read(Files.writeString(folder.resolve("loop.csv"), text), WATER);
    }

    private Refusal refused(Problem problem, String text, int line, int column) {
        Refusal refusal = assertThrows(Refusal.class, () -> read(text));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        Place place = refusal.place().orElseThrow();
        assertEquals(line + ":" + column, place.line() + ":" + place.column(), refusal.getMessage());
        assertTrue(place.file().endsWith("loop.csv"), place.file());
        return refusal;
    }

    private Refusal refused(Problem problem, String row, int column) {
        return refused(problem, HEAD + COLUMNS + ROWS + row + "\n", 10, column);
    }

    @Test
    void each_row_is_a_branch_with_the_parts_of_its_cells() throws IOException {
        Circuit circuit = read(HEAD + COLUMNS + ROWS);
        assertEquals("header", circuit.discharge());
        assertEquals("suction", circuit.suction());
        assertEquals(9, circuit.designFlow().toCubicMetresPerHour(), 1e-12);
        Branch far = circuit.branch("far");
        Pipe pipe = (Pipe) far.parts().get(0);
        assertEquals(41.9, pipe.bore().inside().toMillimetres(), 1e-9);
        assertEquals(30, pipe.length().metres(), 0);
        assertEquals(12, pipe.fittings().get(0).loss().constantAt(pipe.bore().inside()), 0);
        Coil coil = (Coil) far.parts().get(1);
        assertEquals("25 kPa at 5 m³/h", coil.design().toString());
        assertEquals(10, ((ControlValve) far.parts().get(2)).open().kv(), 0);
        assertEquals(1, circuit.branch("plant").parts().size());
        assertTrue(circuit.branch("main").design().isEmpty());
    }

    @Test
    void valves_that_open_on_pressure_keep_a_least_flow_or_close_off_are_read() throws IOException {
        Circuit circuit = read(HEAD + """
                branch, from, to, flow [m3/h], loss [kPa], valve [Kv], check [Kv], bypass [Kv], opens at [kPa], least flow [m3/h], close-off [kPa]
                plant, end, suction, , , , 30, , 3, ,
                room, header, end, 4, 22, 6.3, , , , , 90
                short cut, header, end, , , , , 10, 120, ,
                keep, header, end, , , 8, , , , 3,
                """);
        assertEquals(
                new CheckValve("check valve of plant", Pressure.kilopascals(3), FlowCoefficient.kv(30)),
                circuit.branch("plant").parts().get(0));
        assertEquals(
                new BypassValve("bypass valve of short cut", Pressure.kilopascals(120), FlowCoefficient.kv(10)),
                circuit.branch("short cut").parts().get(0));
        assertEquals(
                new MinimumFlowValve("minimum-flow valve of keep", Flow.cubicMetresPerHour(3), FlowCoefficient.kv(8)),
                circuit.branch("keep").parts().get(0));
        assertEquals(3, circuit.branch("keep").design().orElseThrow().toCubicMetresPerHour(), 1e-12);
        assertEquals(
                90,
                ((ControlValve) circuit.branch("room").parts().get(1))
                        .closeOff()
                        .orElseThrow()
                        .toKilopascals(),
                1e-9);
    }

    @Test
    void a_valve_that_opens_on_pressure_says_at_which_and_all_coefficients_are_in_one_unit() {
        String columns = "branch, from, to, flow [m3/h], valve [Kv], check [Kv], bypass [Kv], opens at [kPa]\n";
        String room = "room, header, suction, 4, 6.3, , ,\n";
        refused(DataProblem.CONTRADICTING_STATEMENTS, HEAD + columns + room + "a, header, suction, , , 9, ,\n", 7, 25);
        refused(DataProblem.CONTRADICTING_STATEMENTS, HEAD + columns + room + "a, header, suction, , , , , 9\n", 7, 29);
        refused(
                DataProblem.CONTRADICTING_STATEMENTS,
                HEAD + columns + room + "a, header, suction, , , 9, 9, 9\n",
                7,
                28);
        refused(PartProblem.MIXED_FLOW_COEFFICIENTS, HEAD + columns.replace("check [Kv]", "check [Cv]") + room, 5, 44);
    }

    @Test
    void a_circuit_rests_on_its_file() throws IOException {
        assertEquals(
                "loop.csv", read(HEAD + COLUMNS + ROWS).basis().inputs().get(0).name());
    }

    @Test
    void decimal_commas_are_read_when_said() throws IOException {
        String text = (HEAD + COLUMNS + ROWS).replace(',', ';').replace("6.3", "6,3");
        Path file = Files.writeString(folder.resolve("comma.csv"), text);
        Circuit circuit = CircuitFile.read(file, WATER, NumberStyle.DECIMAL_COMMA);
        assertEquals(
                6.3,
                ((ControlValve) circuit.branch("near").parts().get(2)).open().kv(),
                0);
    }

    @Test
    void what_a_part_cannot_be_is_refused_at_its_row_with_its_name() {
        Refusal zero = refused(PartProblem.IMPOSSIBLE_PART, "third, tee, end, 0, 25, , steel 40, 30, 12, 10", 1);
        assertTrue(zero.getMessage().contains("third"), zero.getMessage());
        refused(DataProblem.VALUE_NOT_POSSIBLE, "third, tee, end, 5, 25, , steel 40, -30, 12, 10", 37);
        refused(PartProblem.UNKNOWN_PIPE_SIZE, "third, tee, end, 5, 25, , steel 45, 30, 12, 10", 27);
        refused(DataProblem.VALUE_NOT_POSSIBLE, "third, tee, end, 5, 25, , clay 100, 30, 12, 10", 27);
        refused(DataProblem.NOT_A_NUMBER, "third, tee, end, five, 25, , steel 40, 30, 12, 10", 18);
        refused(CircuitProblem.IMPOSSIBLE_CIRCUIT_BRANCH, "third, tee, tee, 5, 25, , steel 40, 30, 12, 10", 1);
    }

    @Test
    void cells_that_need_each_other_are_refused_at_the_one_that_stands_alone() {
        refused(DataProblem.CONTRADICTING_STATEMENTS, "third, tee, end, , 25, , , , ,", 20);
        refused(DataProblem.CONTRADICTING_STATEMENTS, "third, tee, end, 5, , , steel 40, , ,", 25);
        refused(DataProblem.CONTRADICTING_STATEMENTS, "third, tee, end, 5, , , , 12, ,", 27);
        refused(DataProblem.CONTRADICTING_STATEMENTS, "far, tee, end, 5, , , steel 40, 12, ,", 1);
    }

    @Test
    void kv_and_cv_side_by_side_are_refused_at_the_second_head() {
        String columns = COLUMNS.strip() + ", balancing [Cv]\n";
        Refusal refusal = refused(PartProblem.MIXED_FLOW_COEFFICIENTS, HEAD + columns, 5, columns.indexOf("bal") + 1);
        assertTrue(refusal.getMessage().contains("1.156"), refusal.getMessage());
    }

    @Test
    void what_does_not_hang_together_is_refused_with_the_file() {
        refused(CircuitProblem.UNCONNECTED_CIRCUIT, HEAD + COLUMNS + ROWS.replace("main, header", "main, heder"), 9, 0);
        refused(DataProblem.MISSING_HEAD_LINE, COLUMNS + ROWS, 5, 0);
        refused(DataProblem.TOO_FEW_ROWS, HEAD + COLUMNS, 5, 0);
        refused(DataProblem.WRONG_UNIT, HEAD + COLUMNS.replace("branch", "branch [m]"), 5, 1);
    }

    @Test
    void the_demo_circuit_stands_at_its_design_flows() {
        Circuit circuit = CircuitFile.read(Path.of("..", "demo-data", "circuits", "otterbank-wings.csv"), WATER);
        assertEquals(18, circuit.terminals().size());
        assertEquals(79, circuit.designFlow().toCubicMetresPerHour(), 1e-9);
        assertEquals(List.of(), circuit.solve(Closing.head(Head.metres(30))).starvedBranches());
    }
}
