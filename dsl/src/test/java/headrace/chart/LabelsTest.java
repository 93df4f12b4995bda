package headrace.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Layout.Role;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.paint.Box;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LabelsTest {
    private static final int CHARTS = 200;
    private static final Map<List<Integer>, Layout> LAYOUTS = new HashMap<>();
    private static final Set<Role> IN_THE_FRAME = Set.of(Role.LABEL, Role.CONTOUR_LABEL, Role.KEY);

    @ParameterizedTest
    @ValueSource(ints = {400, 800, 1600})
    void never_cross_one_another_nor_the_frame_nor_the_page(int width) {
        for (int seed = 0; seed < CHARTS; seed++) {
            Layout layout = layout(seed, width);
            Box page = new Box(0, 0, layout.width(), layout.height());
            List<Layout.Text> texts = layout.texts();
            for (int i = 0; i < texts.size(); i++) {
                Layout.Text text = texts.get(i);
                assertTrue(page.holds(text.box()), seed + ": " + text);
                assertFramed(layout, text, seed);
                for (int j = 0; j < i; j++) {
                    assertFalse(text.box().crosses(texts.get(j).box()), seed + ": " + text + " and " + texts.get(j));
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 800, 1600})
    void stand_at_their_mark_or_in_the_legend_every_one(int width) {
        for (int seed = 0; seed < CHARTS; seed++) {
            PumpLikeChart pump = new PumpLikeChart(seed);
            Layout layout = layout(seed, width);
            Set<String> placed = layout.texts().stream()
                    .filter(text -> IN_THE_FRAME.contains(text.role()))
                    .map(Layout.Text::text)
                    .collect(Collectors.toSet());
            String legend = layout.texts().stream()
                    .filter(text -> text.role() == Role.LEGEND)
                    .map(Layout.Text::text)
                    .collect(Collectors.joining(" "));
            assertTrue(pump.labels().size() >= 17, "five speeds, five islands, four points, three lines, one area");
            for (String label : pump.labels()) {
                assertTrue(placed.contains(label) || legend.contains(label), seed + ": " + label);
            }
        }
    }

    /** Held so that the test above cannot pass by sending everything to the legend. */
    @Test
    void stand_at_their_mark_mostly() {
        int labels = 0;
        int placed = 0;
        for (int seed = 0; seed < CHARTS; seed++) {
            PumpLikeChart pump = new PumpLikeChart(seed);
            placed += (int) layout(seed, 800).texts().stream()
                    .filter(text -> text.role() == Role.LABEL || text.role() == Role.CONTOUR_LABEL)
                    .count();
            labels += pump.labels().size();
        }
        assertTrue(placed > 0.7 * labels, placed + " of " + labels);
    }

    @Test
    void that_only_a_colour_would_tell_apart_have_a_number_at_the_mark_and_in_the_legend() {
        int numbered = 0;
        for (int seed = 0; seed < CHARTS; seed++) {
            Layout layout = layout(seed, 400);
            for (Layout.Text key : layout.texts()) {
                if (key.role() == Role.KEY) {
                    numbered++;
                    assertEquals(
                            1,
                            layout.texts().stream()
                                    .filter(text -> text.role() == Role.LEGEND)
                                    .filter(text -> text.text().equals(key.text()))
                                    .count());
                }
            }
        }
        assertTrue(numbered > 0);
    }

    /** Seven lines of one look in a fan that opens from nothing: in a small panel some have no room for a name. */
    @ParameterizedTest
    @ValueSource(ints = {400, 640, 800, 1200, 1600})
    void of_lines_of_one_look_stand_at_them_or_the_legend_says_which_is_bare(int width) {
        for (int lines : new int[] {2, 3, 5, 7}) {
            Layout layout = fan(lines).layout(width);
            Set<String> standing = layout.texts().stream()
                    .filter(text -> IN_THE_FRAME.contains(text.role()))
                    .map(Layout.Text::text)
                    .collect(Collectors.toSet());
            String legend = layout.texts().stream()
                    .filter(text -> text.role() == Role.LEGEND)
                    .map(Layout.Text::text)
                    .collect(Collectors.joining("|"));
            for (int i = 1; i <= lines; i++) {
                String name = "line of " + i;
                assertTrue(
                        standing.contains(name)
                                || legend.matches(".*\\b\\d+\\|" + name + "\\b.*")
                                || legend.contains(name + " (without a label)"),
                        width + ": " + name + " in " + legend);
            }
        }
    }

    private static Chart fan(int lines) {
        List<Mark> marks = IntStream.rangeClosed(1, lines)
                .<Mark>mapToObj(i -> Line.through(new double[] {0, 10.0 * i}, new double[] {0, 0.02 * i * i * i})
                        .in(Ink.VERMILION)
                        .labelled("line of " + i))
                .toList();
        return Chart.titled("A fan")
                .across(Axis.of("Flow", "m³/h"))
                .panel(Axis.of("Head", "m"), List.of(Line.through(new double[] {0, 70}, new double[] {20, 10})))
                .panel(Axis.of("Power", "kW"), marks)
                .build();
    }

    /** Each chart is laid out once for all tests. */
    private static Layout layout(int seed, int width) {
        return LAYOUTS.computeIfAbsent(
                List.of(seed, width), key -> new PumpLikeChart(seed).chart().layout(width));
    }

    private static void assertFramed(Layout layout, Layout.Text text, int seed) {
        boolean within = layout.frames().stream().anyMatch(frame -> frame.holds(text.box()));
        boolean clear = layout.frames().stream().noneMatch(frame -> frame.crosses(text.box()));
        assertTrue(IN_THE_FRAME.contains(text.role()) ? within : clear, seed + ": " + text);
    }
}
