package headrace.kernel.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A what-if in a saved page, opened from disk: no kernel and no server are there. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SavedWhatIfTest {
    private static final Path SEEN = Path.of("target", "screenshots");
    private static final String RIGHT = "\uE014";

    private static final String SAID = "[...document.querySelectorAll('.said')].filter(e => e.offsetHeight > 0)"
            + ".map(e => e.innerText).join('|')";

    /**
     * The law's head by hand: a quadratic law with half of 16 m at no flow asks at half of 52 m³/h for 8 m + 8 m · 0.5²
     * = 10 m, with a quarter for 4 m + 12 m · 0.5² = 7 m.
     */
    private static final String SCRIPT = """
            curve  = fit(readPumpTest('%s'))
            set    = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
            design = duty(52.m3ph, 16.m)
            whatIf(minimumHead: slider(25.percent, 50.percent, positions: 2, start: 25.percent),
                   flow: slider(26.m3ph, 52.m3ph, positions: 3, start: 26.m3ph), designDay: preset(flow: 52.m3ph)) { m, q ->
                law = quadratic(design, minimumHead: m)
                point = steadyState(set, law, q).point()
                [map: map(set, design, law, point), point: point] }
            """;

    @TempDir
    Path folder;

    private Browser browser;

    @BeforeEach
    void open() throws IOException {
        Browser.needed();
        Path test = Path.of("..", "demo-data", "pumps", "heron-65.csv")
                .toAbsolutePath()
                .normalize();
        Path script = Files.writeString(folder.resolve("moved.groovy"), SCRIPT.formatted(test));
        InstalledKernel.program(
                        folder,
                        "run",
                        script.toString(),
                        "--output",
                        folder.resolve("out").toString())
                .well();
        browser = new Browser(folder);
        browser.open(folder.resolve("out/moved.html").toUri().toString());
        browser.waitUntil("document.querySelector('.headrace-whatif.moves')");
    }

    @AfterEach
    void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private void waitFor(String text) {
        browser.waitUntil("(" + SAID + ").includes('" + text + "')");
    }

    private String picture() {
        return browser.text("[...document.querySelectorAll('.headrace-whatif img')]"
                + ".filter(e => e.getBoundingClientRect().width > 300).map(e => e.src).join('|')");
    }

    @Test
    void it_moves_by_keys_tabs_and_presets() {
        String before = picture();
        assertTrue(before.startsWith("data:image/svg+xml"), before);
        browser.script("document.querySelector('input[type=range]').focus();");
        browser.type(RIGHT);
        Browser.waitFor("another picture", () -> !picture().equals(before));
        browser.screenshot(SEEN.resolve("saved-1-map.png"));
        browser.script("document.querySelectorAll('[role=tab]')[1].click();");
        waitFor("26 m³/h at 10 m");
        assertEquals("true", browser.text("document.querySelectorAll('[role=tab]')[1].getAttribute('aria-selected')"));
        browser.script("[...document.querySelectorAll('button')].find(e => e.innerText === 'Design day').click();");
        waitFor("52 m³/h at 16 m");
        browser.screenshot(SEEN.resolve("saved-2-point.png"));
        browser.script(
                "[...document.querySelectorAll('button')].find(e => e.innerText === 'Back to the start').click();");
        waitFor("26 m³/h at 7 m");
        assertEquals(
                "25 %|26 m³/h",
                browser.text("[...document.querySelectorAll('output')].map(e => e.innerText).join('|')"));
    }

    @Test
    void it_asks_nothing_of_the_network() {
        assertEquals("0", browser.text("performance.getEntriesByType('resource').length"));
    }
}
