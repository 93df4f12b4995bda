package headrace.kernel.cli;

import headrace.kernel.headless.TerminalView;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Where the program prints, as the script that started it found that: a terminal of some width, or a file. */
final class StandardOutput {
    private static final int USUAL_COLUMNS = 80;

    private StandardOutput() {}

    static TerminalView view() {
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        int columns = Integer.getInteger("headrace.columns", 0);
        return new TerminalView(out, Boolean.getBoolean("headrace.colour"), columns > 0 ? columns : USUAL_COLUMNS);
    }
}
