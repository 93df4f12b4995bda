package headrace.report;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Chart;
import headrace.chart.Layout;
import headrace.chart.Layout.Role;
import headrace.chart.paint.Box;
import headrace.report.Block.ChartBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The charts of results, as they are composed, for 200 pumps and duties made up from seeds. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ReportedLabelsTest {
    private static final int PUMPS = 200;
    /** Each pump's map is drawn, which has most labels; and of every fifth pump the other charts too. */
    private static final int EVERY = 5;

    private static final Set<Role> INSIDE = Set.of(Role.LABEL, Role.CONTOUR_LABEL, Role.KEY);
    private static final List<Chart> CHARTS = new ArrayList<>();

    @BeforeAll
    static void compose() {
        for (int seed = 0; seed < PUMPS; seed++) {
            SeededSet seeded = new SeededSet(seed);
            List<Object> results = new ArrayList<>(List.of(seeded.map()));
            if (seed % EVERY == 0) {
                results.addAll(List.of(seeded.curve, seeded.test, seeded.comparison()));
            }
            for (Object result : results) {
                Reports.of(result).orElseThrow().blocks().stream()
                        .filter(ChartBlock.class::isInstance)
                        .map(block -> ((ChartBlock) block).chart())
                        .forEach(CHARTS::add);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 800, 1600})
    void no_label_crosses_another_or_the_frame(int width) {
        assertTrue(CHARTS.size() > PUMPS);
        for (Chart chart : CHARTS) {
            Layout layout = chart.layout(width);
            Box page = new Box(0, 0, layout.width(), layout.height());
            List<Layout.Text> texts = layout.texts();
            for (int i = 0; i < texts.size(); i++) {
                Layout.Text text = texts.get(i);
                assertTrue(page.holds(text.box()), chart.title() + ": " + text);
                if (INSIDE.contains(text.role())) {
                    assertTrue(
                            layout.frames().stream().anyMatch(frame -> frame.holds(text.box())),
                            chart.title() + ": " + text);
                }
                for (int j = 0; j < i; j++) {
                    assertFalse(
                            text.box().crosses(texts.get(j).box()),
                            chart.title() + ": " + text + " and " + texts.get(j));
                }
            }
        }
    }
}
