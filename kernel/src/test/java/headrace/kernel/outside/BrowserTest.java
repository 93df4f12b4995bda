package headrace.kernel.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The kernel as an engineer meets it, in a notebook in a browser. Leaves what was seen in {@code target/screenshots}.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class BrowserTest {
    private static final Path SEEN = Path.of("target", "screenshots");
    private static final String TAB = "\uE004";
    private static final String SHIFT = "\uE008";
    private static final String ESCAPE = "\uE00C";

    private static final String IDLE = "Jupyter.notebook && Jupyter.notebook.kernel"
            + " && Jupyter.notebook.kernel.is_connected()"
            + " && document.querySelector('#kernel_indicator_icon.kernel_idle_icon')";

    private static final String ALL_RAN =
            "Jupyter.notebook.get_cells()" + ".every(c => c.cell_type !== 'code' || c.input_prompt_number > 0)";

    private static final String CHART = "[...document.querySelectorAll('.output_area svg, .output_area img')]"
            + ".some(e => e.getBoundingClientRect().width > 300 && e.getBoundingClientRect().height > 150)";

    private static final String LAST_OUTPUT = "[...document.querySelectorAll('.output')].pop().innerText";

    @TempDir
    Path folder;

    private Browser browser;

    @Test
    void a_notebook_runs_draws_completes_explains_stops_and_starts_anew_in_a_browser() throws IOException {
        NotebookServer.needed();
        Browser.needed();
        copy(Path.of("..", "notebooks"), folder.resolve("project/notebooks"));
        copy(Path.of("..", "demo-data"), folder.resolve("project/demo-data"));
        InstalledKernel kernel = InstalledKernel.below(Files.createDirectory(folder.resolve("prefix")));
        try (NotebookServer server =
                        new NotebookServer(folder.resolve("project"), kernel, folder.resolve("server.log"));
                Browser opened = new Browser(folder)) {
            browser = opened;
            browser.open(server.address("notebooks/first-pump.ipynb"));
            browser.waitUntil(IDLE);
            runAll();
            complete();
            explain();
            move();
            interrupt();
            restart();
        }
    }

    private void runAll() {
        browser.script("Jupyter.notebook.clear_all_output(); Jupyter.notebook.execute_all_cells();");
        browser.waitUntil(ALL_RAN);
        browser.waitUntil(CHART);
        assertEquals("0", browser.text("document.querySelectorAll('.output_error').length"));
        browser.script("[...document.querySelectorAll('.output_area svg, .output_area img')]"
                + ".find(e => e.getBoundingClientRect().width > 300).scrollIntoView();");
        browser.screenshot(SEEN.resolve("1-run-all.png"));
    }

    private void complete() {
        newCell("curve.head");
        browser.type(TAB);
        browser.waitUntil("document.querySelector('#complete, .completions')");
        assertTrue(browser.text("document.querySelector('#complete, .completions').innerText")
                .contains("headAt"));
        browser.screenshot(SEEN.resolve("2-tab.png"));
        browser.type(ESCAPE);
    }

    private void explain() {
        newCell("fit");
        browser.type(SHIFT + TAB);
        browser.waitUntil("document.querySelector('#tooltip').offsetHeight > 20"
                + " && getComputedStyle(document.querySelector('#tooltip')).opacity === '1'");
        assertTrue(browser.text("document.querySelector('#tooltip').innerText").contains("fit("));
        browser.screenshot(SEEN.resolve("3-shift-tab.png"));
        browser.type(ESCAPE);
    }

    /** This front end has no widgets: it moves what was computed ahead. */
    private void move() {
        newCell("whatIf(share: 20.percent..60.percent, warm: false) { s, w -> \"at $s, warm $w\" }");
        run();
        browser.waitUntil(LAST_OUTPUT + ".includes('at 40 %, warm false')");
        browser.script("const output = [...document.querySelectorAll('.output')].pop();"
                + "const slider = output.querySelector('input[type=range]'); slider.value = 0;"
                + "slider.dispatchEvent(new Event('input')); output.querySelector('input[type=checkbox]').click();");
        browser.waitUntil(LAST_OUTPUT + ".includes('at 20 %, warm true')");
        browser.screenshot(SEEN.resolve("5-what-if.png"));
    }

    private void interrupt() {
        newCell("println 'begun'; while (true) {}");
        run();
        browser.waitUntil(LAST_OUTPUT + ".includes('begun')");
        browser.click("#int_interrupt button, button[data-jupyter-action=\"jupyter-notebook:interrupt-kernel\"]");
        browser.waitUntil("[...document.querySelectorAll('.output')].pop().querySelector('.output_error')");
        browser.waitUntil(IDLE);
        browser.screenshot(SEEN.resolve("4-interrupt.png"));
    }

    private void restart() {
        browser.click("button[data-jupyter-action=\"jupyter-notebook:confirm-restart-kernel\"]");
        browser.click(".modal.in .btn-danger");
        browser.waitUntil("!document.querySelector('.modal.in')");
        browser.waitUntil(IDLE);
        newCell("binding.hasVariable('curve') ? 'remembered' : 'forgotten'");
        run();
        browser.waitUntil(LAST_OUTPUT + ".includes('forgotten')");
        browser.screenshot(SEEN.resolve("5-restart.png"));
    }

    /** Adds a cell at the end and puts the cursor behind its text. */
    private void newCell(String code) {
        browser.script("const n = Jupyter.notebook; n.insert_cell_at_bottom('code');"
                + "const last = n.get_cells().length - 1; n.select(last); n.get_cell(last).set_text("
                + new com.google.gson.Gson().toJson(code) + ");"
                + "n.edit_mode(); const e = n.get_cell(last).code_mirror; e.focus(); e.execCommand('goDocEnd');"
                + "document.querySelector('#notebook').scrollTop = 1e6; n.get_cell(last).element[0].scrollIntoView();");
    }

    private void run() {
        browser.script("Jupyter.notebook.get_selected_cell().execute();");
    }

    private static void copy(Path from, Path to) throws IOException {
        List<Path> all;
        try (Stream<Path> found = Files.walk(from)) {
            all = found.toList();
        }
        for (Path path : all) {
            Path copied = to.resolve(from.relativize(path).toString());
            if (Files.isDirectory(path)) {
                Files.createDirectories(copied);
            } else {
                Files.copy(path, copied);
            }
        }
    }
}
