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

/**
 * A what-if as a lecturer moves it: the widgets' own library in a browser, over a notebook server. Leaves what was seen
 * in {@code target/screenshots}.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class WidgetBrowserTest {
    private static final Path SEEN = Path.of("target", "screenshots");
    private static final Path FRONT_END = Path.of("src", "test", "widget-front-end", "made", "served");
    private static final String RIGHT = "\uE014";
    private static final String LEFT = "\uE012";

    private static final String SLIDERS = "document.querySelectorAll('.noUi-handle')";
    private static final String SEEN_TEXTS = "[...document.querySelectorAll('pre')].filter(e => e.offsetHeight > 0)"
            + ".map(e => e.innerText).join('|')";
    private static final String READOUTS =
            "[...document.querySelectorAll('.widget-readout')].map(e => e.innerText).join('|')";
    private static final String BARS =
            "[...document.querySelectorAll('.widget-label')].map(e => e.innerText).join('|')";
    private static final String CHARTS = "[...document.querySelectorAll('.headrace-drawn svg')]"
            + ".filter(e => e.getBoundingClientRect().width > 300)";

    private static final String PUMP = """
            curve  = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
            set    = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
            design = duty(52.m3ph, 16.m)
            """;

    @TempDir
    Path folder;

    private NotebookServer server;
    private Browser browser;
    private String kernel;

    @BeforeEach
    void open() throws IOException {
        NotebookServer.needed();
        Browser.needed();
        Outside.needsMade("src/test/widget-front-end/build", FRONT_END.resolve("front-end.js"));
        InstalledKernel installed = InstalledKernel.below(Files.createDirectory(folder.resolve("prefix")));
        server = new NotebookServer(
                Path.of("..").toAbsolutePath().normalize(),
                installed,
                folder.resolve("server.log"),
                "--NotebookApp.extra_static_paths=['" + FRONT_END.toAbsolutePath() + "']",
                "--NotebookApp.disable_check_xsrf=True");
        browser = new Browser(folder);
        browser.open(server.staticAddress("front-end.html"));
        kernel = asked("frontEnd.start('headrace')");
    }

    @AfterEach
    void close() {
        if (browser != null) {
            browser.screenshot(SEEN.resolve("widget-last.png"));
            browser.close();
        }
        if (server != null) {
            server.close();
        }
    }

    /** Returns what the front end promises. */
    private String asked(String promise) {
        browser.script("window.kept = undefined; (" + promise + ").then(value => { window.kept = String(value); })"
                + ".catch(error => { window.kept = 'failed: ' + error; });");
        browser.waitUntil("window.kept !== undefined");
        String kept = browser.text("window.kept");
        assertTrue(!kept.startsWith("failed: "), kept);
        return kept;
    }

    private String run(String code) {
        String id = asked("frontEnd.run(`" + code.replace("\\", "\\\\").replace("$", "\\$") + "`)");
        assertEquals("", browser.text("frontEnd.errors.join('; ')"));
        return id;
    }

    /** Presses a key on a slider. */
    private void slide(int slider, String keys) {
        browser.script(SLIDERS + "[" + slider + "].focus();");
        browser.type(keys);
    }

    private void waitFor(String expression, String text) {
        browser.waitUntil("(" + expression + ").includes('" + text + "')");
    }

    private void press(String label) {
        browser.script(
                "[...document.querySelectorAll('button')].find(e => e.innerText.trim() === '" + label + "').click();");
    }

    /**
     * The law's head by hand: at 44 % of 16 m and 32 of 52 m³/h it is 7.04 m + 8.96 m · (32/52)² = 10.43 m, at 12 m³/h
     * it is 7.04 m + 8.96 m · (12/52)² = 7.517 m.
     */
    @Test
    void a_pump_walks_down_its_control_curve_and_is_found_there_when_the_page_is_loaded_anew() {
        run(PUMP);
        String widget = run("""
                whatIf(minimumHead: slider(20.percent, 60.percent, positions: 11),
                       flow: slider(10.m3ph, 52.m3ph, positions: 22), night: preset(flow: 12.m3ph)) { m, q ->
                    law = quadratic(design, minimumHead: m)
                    point = steadyState(set, law, q).point()
                    [map: map(set, design, law, point), point: point] }
                """);
        browser.waitUntil(SLIDERS + ".length === 2 && " + CHARTS + ".length === 1");
        String drawn = browser.text(CHARTS + "[0].outerHTML");
        slide(0, RIGHT);
        waitFor(READOUTS, "44 %");
        browser.waitUntil(CHARTS + "[0].outerHTML.length !== " + drawn.length());
        browser.screenshot(SEEN.resolve("widget-1-map.png"));
        browser.click(".lm-TabBar-tab:nth-child(2)");
        waitFor(SEEN_TEXTS, "32 m³/h at 10.43 m");
        press("Night");
        waitFor(SEEN_TEXTS, "12 m³/h at 7.517 m");
        waitFor(READOUTS, "12 m³/h");
        browser.screenshot(SEEN.resolve("widget-2-point.png"));

        String saved = asked("frontEnd.saved().then(JSON.stringify)");
        assertTrue(saved.contains("\"selected_index\":1"), saved);
        assertTrue(saved.contains("7.517 m"), "a notebook keeps where it was left");

        browser.open(server.staticAddress("front-end.html"));
        asked("frontEnd.comeBack('" + kernel + "', '" + widget + "')");
        waitFor(SEEN_TEXTS, "12 m³/h at 7.517 m");
        waitFor(READOUTS, "44 %");
        slide(1, RIGHT);
        slide(1, LEFT + LEFT);
        waitFor(READOUTS, "10 m³/h");
        press("Back to the start");
        waitFor(READOUTS, "40 %");
        assertEquals("", browser.text("frontEnd.errors.join('; ')"));
        asked("frontEnd.end()");
    }

    @Test
    void choices_switches_rows_pictures_bars_and_refusals_are_drawn() {
        run(PUMP);
        run("""
                import java.awt.image.BufferedImage
                whatIf(share: [30.percent, 40.percent, 90.percent], drawn: false, slow: false) { m, own, slow ->
                    if (slow) { 40.times { headrace.work.Work.progress('a slow calculation', it, 40); sleep 40 } }
                    law = quadratic(design, minimumHead: m)
                    steady = steadyState(set, law, (m > 80.percent ? 200 : 26).m3ph)
                    own ? [new BufferedImage(320, 200, BufferedImage.TYPE_INT_RGB)] : [curve, steady] }
                """);
        browser.waitUntil(CHARTS + ".length === 2");
        waitFor(SEEN_TEXTS, "26 m³/h");
        browser.screenshot(SEEN.resolve("widget-3-row.png"));
        tick(1);
        waitFor(BARS, "a slow calculation");
        browser.screenshot(SEEN.resolve("widget-4-bar.png"));
        browser.waitUntil("!(" + BARS + ").includes('a slow calculation')");
        tick(1);
        tick(0);
        browser.waitUntil("[...document.querySelectorAll('img.widget-image')].some(e => e.naturalWidth === 320)");
        browser.screenshot(SEEN.resolve("widget-5-picture.png"));
        choose(2);
        waitFor(SEEN_TEXTS, "[duty-out-of-range]");
        browser.waitUntil("![...document.querySelectorAll('img.widget-image')].some(e => e.offsetHeight > 0)");
        browser.screenshot(SEEN.resolve("widget-6-refused.png"));
        press("Back to the start");
        browser.waitUntil(CHARTS + ".length === 2");
        assertEquals("", browser.text("frontEnd.errors.join('; ')"));
        asked("frontEnd.end()");
    }

    private void tick(int box) {
        browser.script("document.querySelectorAll('input[type=checkbox]')[" + box + "].click();");
    }

    private void choose(int option) {
        browser.script("const list = document.querySelector('select'); list.selectedIndex = " + option
                + "; list.dispatchEvent(new Event('change', {bubbles: true}));");
    }
}
