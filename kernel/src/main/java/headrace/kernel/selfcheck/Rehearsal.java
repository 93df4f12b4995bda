package headrace.kernel.selfcheck;

import headrace.kernel.wire.ConnectionFile;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/** A first visit to a kernel: some cells and questions as most notebooks begin, and the end. */
public final class Rehearsal {
    /** The last cell, which is to fail. */
    static final String MISTAKE = "throw new IllegalStateException('rehearsed')";

    private Rehearsal() {}

    static final String PUMP_TEST = """
            # name: Rehearsal
            # speed: 1450 rpm
            # source: invented, on H = 20 m - 0.001 m/(m3/h)2 Q2 and P = 1 kW + 0.03 kW/(m3/h) Q
            flow [m3/h], head [m], shaft power [kW]
            0, 20.0, 1.0
            20, 19.6, 1.6
            40, 18.4, 2.2
            60, 16.4, 2.8
            80, 13.6, 3.4
            """;

    /** Cells as most notebooks begin: arithmetic, words, a curve with its chart, a mistake. */
    public static List<String> cells() {
        return List.of(
                "1 + 1",
                "println 'rehearsed'; [1, 2].collect { it * 2 }",
                "def twice(x) { 2 * x }\ntwice(21)",
                "flow = 52.m3ph\nflow * 2",
                "file = File.createTempFile('rehearsal', '.csv')\nfile.text = '''" + PUMP_TEST + "'''",
                "curve = fit(readPumpTest(file.path))\ncurve",
                "file.delete()\nsystemCurve(duty(52.m3ph, 16.m))",
                "for (int i = 0; i < 3; i++) { println i }",
                MISTAKE);
    }

    /** The same for a kernel of Java cells. */
    public static List<String> javaCells() {
        return List.of(
                "1 + 1",
                "System.out.println(\"rehearsed\");\nvar list = List.of(1, 2).stream().map(x -> x * 2).toList();\nlist",
                "int twice(int x) { return 2 * x; }\ntwice(21)",
                "var flow = m3ph(52);\nflow.times(2)",
                "record Coil(Flow flow) {}\nnew Coil(flow)",
                "var design = duty(flow, m(16));\nvar law = quadratic(design, minimumHead(percent(35)));\nlaw",
                "for (int i = 0; i < 3; i++) { System.out.println(i); }",
                "nonsense",
                "throw new IllegalStateException(\"rehearsed\");");
    }

    /**
     * Starts a kernel, visits it and ends it.
     *
     * @param command the command that starts it, with {@code {connection_file}} where the file is to stand
     * @param cells what is run in it
     * @return whether it answered everything and ended well
     */
    public static boolean play(List<String> command, List<String> cells) throws IOException, InterruptedException {
        try (Visited kernel = Visited.start(command)) {
            boolean answered = visit(kernel.connection(), cells, kernel::isAlive);
            return kernel.ends() && answered;
        }
    }

    private static boolean visit(ConnectionFile file, List<String> cells, BooleanSupplier alive) {
        try (Visitor visitor = new Visitor(file, alive)) {
            boolean answered = visitor.ask("kernel_info_request", Map.of()) && visitor.beats();
            for (String cell : cells) {
                answered &= answered && visitor.ask("execute_request", Map.of("code", cell));
            }
            for (String type : List.of("complete", "inspect", "is_complete", "history", "comm_info", "shutdown")) {
                answered &= answered && visitor.ask(type + "_request", Map.of("code", "flow.to"));
            }
            return answered;
        }
    }
}
