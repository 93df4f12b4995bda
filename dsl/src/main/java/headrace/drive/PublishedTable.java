package headrace.drive;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Reads a table of numbers that ships beside this class: lines of numbers with commas, comment lines with #. */
final class PublishedTable {
    private PublishedTable() {}

    static List<double[]> rows(String file) {
        try (InputStream stream = PublishedTable.class.getResourceAsStream(file);
                BufferedReader lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return lines.lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(PublishedTable::numbers)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("Cannot read the published table " + file, e);
        }
    }

    private static double[] numbers(String line) {
        return Arrays.stream(line.split(",")).mapToDouble(Double::parseDouble).toArray();
    }
}
