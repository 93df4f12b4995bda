package headrace.data.log;

import java.util.Arrays;

/** Rows as they come in: columns that grow. */
final class LogRows {
    private static final int LEAST = 1024;

    long[] seconds;
    int[] lines;
    final double[][] values;
    int count;

    LogRows(int columns, long expected) {
        int size = (int) Math.max(LEAST, Math.min(expected, 1 << 28));
        seconds = new long[size];
        lines = new int[size];
        values = new double[columns][size];
    }

    /** Makes room for one more row. */
    void room() {
        if (count == seconds.length) {
            int size = count + count / 2;
            seconds = Arrays.copyOf(seconds, size);
            lines = Arrays.copyOf(lines, size);
            for (int i = 0; i < values.length; i++) {
                values[i] = Arrays.copyOf(values[i], size);
            }
        }
    }
}
