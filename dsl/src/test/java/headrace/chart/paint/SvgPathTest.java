package headrace.chart.paint;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SvgPathTest {
    /** Half a hundredth of rounding for each of two numbers, and a hundredth where a mirrored point is left out. */
    private static final double ROUNDING = 0.0251;

    @Test
    void writes_steps_in_hundredths() {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(10.004, 20);
        path.lineTo(12.5, 20);
        path.lineTo(12.5, 19.25);
        path.lineTo(12.25, 19.75);
        path.closePath();
        assertEquals("M10 20h2.5v-.75l-.25 .5z", written(path));
    }

    @Test
    void reads_back_as_the_letters_it_was_written_from() {
        assertSame(Typeface.REGULAR.outline("Quadratic & 0368 ³é@g", 13, 7.3, 21.9));
        assertSame(Typeface.SEMIBOLD.outline("Scheduled, 50 %", 15.7, 0, 0));
        assertSame(new Path2D.Double(new Ellipse2D.Double(3.3, 4.4, 5.5, 6.6)));
    }

    private static void assertSame(Path2D path) {
        List<double[]> expected = new ArrayList<>();
        double[] c = new double[6];
        for (PathIterator it = path.getPathIterator(null); !it.isDone(); it.next()) {
            int kind = it.currentSegment(c);
            int count = kind == PathIterator.SEG_CUBICTO ? 6 : kind == PathIterator.SEG_QUADTO ? 4 : 2;
            if (kind != PathIterator.SEG_CLOSE) {
                expected.add(java.util.Arrays.copyOf(c, count));
            }
        }
        List<double[]> read = read(written(path));
        assertEquals(expected.size(), read.size());
        for (int i = 0; i < read.size(); i++) {
            assertEquals(expected.get(i).length, read.get(i).length);
            for (int k = 0; k < read.get(i).length; k++) {
                assertEquals(expected.get(i)[k], read.get(i)[k], ROUNDING);
            }
        }
    }

    /** Reads path data as SVG 1.1, section 8.3 says, as far as the writer uses it. */
    private static List<double[]> read(String data) {
        List<double[]> steps = new ArrayList<>();
        double[] at = {0, 0};
        double[] begun = {0, 0};
        double[] control = {0, 0};
        Matcher commands = Pattern.compile("([Mlhvqtcz])([^Mlhvqtcz]*)").matcher(data);
        while (commands.find()) {
            double[] n = Pattern.compile("-?[0-9]*\\.?[0-9]+")
                    .matcher(commands.group(2))
                    .results()
                    .mapToDouble(match -> Double.parseDouble(match.group()))
                    .toArray();
            double[] step = switch (commands.group(1)) {
                case "M" -> n;
                case "h" -> new double[] {at[0] + n[0], at[1]};
                case "v" -> new double[] {at[0], at[1] + n[0]};
                case "t" -> new double[] {2 * at[0] - control[0], 2 * at[1] - control[1], at[0] + n[0], at[1] + n[1]};
                case "z" -> new double[0];
                default -> absolute(n, at);
            };
            boolean curve = "qt".contains(commands.group(1));
            at = step.length == 0 ? begun : new double[] {step[step.length - 2], step[step.length - 1]};
            control = curve ? new double[] {step[0], step[1]} : at;
            begun = commands.group(1).equals("M") ? at : begun;
            if (step.length > 0) {
                steps.add(step);
            }
        }
        return steps;
    }

    private static double[] absolute(double[] steps, double[] at) {
        double[] points = new double[steps.length];
        for (int i = 0; i < steps.length; i++) {
            points[i] = at[i % 2] + steps[i];
        }
        return points;
    }

    private static String written(Path2D path) {
        StringBuilder out = new StringBuilder();
        new SvgPath(out).append(path);
        return out.toString();
    }
}
