package headrace.kernel.headless.page;

import headrace.kernel.display.Html;
import headrace.kernel.display.WhatIfHtml;
import headrace.kernel.headless.page.MarkdownText.Section;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;

/**
 * The page of a run: one file that holds everything it shows and loads nothing. It runs nothing but the one script of
 * our own that moves a what-if, which its policy knows by its digest. Every text that comes from the notebook, its
 * results or a file's name is escaped.
 */
public final class Page {
    /** Stands in each page, so that a later run knows that it may replace the file. */
    public static final String MARK = "headrace-result";

    private static final String POLICY =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private static final int DEEPEST_LISTED = 3;

    private static final double WORTH_A_WORD = 0.1;

    private final PageFacts facts;
    private final List<Section> sections = new ArrayList<>();
    private final BasisLines basis = new BasisLines();
    private final StringBuilder body = new StringBuilder();
    private String title = "";

    private Page(PageFacts facts) {
        this.facts = facts;
    }

    /** Returns the page of an executed notebook as HTML. */
    public static String of(Notebook executed, PageFacts facts) {
        Page page = new Page(facts);
        List<Cell> cells = executed.cells();
        for (int i = 0; i < cells.size(); i++) {
            page.add(cells.get(i), i);
        }
        return page.html();
    }

    private void add(Cell cell, int index) {
        if (cell instanceof Cell.Markdown text) {
            addText(text, index);
        } else if (cell instanceof Cell.Code code && !code.source().isBlank()) {
            addCode(code);
        } else if (cell instanceof Cell.Raw raw && !raw.source().isBlank()) {
            body.append("<pre class=\"raw\">").append(Html.escape(raw.source())).append("</pre>\n");
        }
    }

    private void addText(Cell.Markdown cell, int index) {
        try {
            MarkdownText text = MarkdownText.of(cell.source(), cell.attachments(), "part-" + (index + 1));
            if (title.isEmpty() && !text.sections().isEmpty()) {
                title = text.sections().get(0).text();
                if (body.isEmpty()) {
                    text.withoutLeadingHeading();
                }
            }
            body.append("<section class=\"text\">\n").append(text.html()).append("</section>\n");
            sections.addAll(text.sections());
        } catch (StackOverflowError e) {
            // Thousands of nested quotes or lists are no text that somebody wrote; they show as they stand.
            body.append("<pre class=\"raw\">")
                    .append(Html.escape(cell.source()))
                    .append("</pre>\n");
        }
    }

    private void addCode(Cell.Code cell) {
        boolean ran = cell.count() > 0;
        body.append(ran ? "<section class=\"cell\">\n" : "<section class=\"cell not-run\">\n");
        body.append("<details class=\"code\" open><summary>");
        body.append(ran ? "Script, cell " + cell.count() + took(cell) : "Script, not run")
                .append("</summary>");
        body.append("<pre><code>").append(GroovyColours.html(cell.source())).append("</code></pre></details>\n");
        cell.outputs().forEach(output -> body.append(OutputHtml.of(output, basis)));
        body.append("</section>\n");
    }

    /** Says how long a cell took, where that is known and worth a word. */
    private static String took(Cell.Code cell) {
        Fields times = cell.metadata().fields("execution");
        try {
            Instant begun = Instant.parse(times.text("iopub.execute_input").orElse(""));
            Instant ended = Instant.parse(times.text("shell.execute_reply").orElse(""));
            double seconds = Duration.between(begun, ended).toMillis() / 1000.0;
            return seconds < WORTH_A_WORD ? "" : String.format(Locale.ROOT, " · %.1f s", seconds);
        } catch (DateTimeParseException unknown) {
            return "";
        }
    }

    private String html() {
        String file = Html.escape(facts.file());
        String shownTitle = title.isEmpty() ? file : Html.escape(title);
        Edition edition = facts.edition();
        return """
                <!doctype html>
                <html lang="en">
                <head>
                <meta charset="utf-8">
                <meta http-equiv="Content-Security-Policy" content="%s">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <meta name="generator" content="Headrace %s">
                <meta name="%s" content="page">
                <title>%s</title>
                <style>
                %s</style>
                </head>
                <body>
                <header>
                <p class="line">%s · %s</p>
                <h1>%s</h1>
                %s</header>
                %s<main>
                %s</main>
                %s%s</body>
                </html>
                """.formatted(
                        moves() ? POLICY + "; script-src '" + digest(WhatIfHtml.script()) + "'" : POLICY,
                        Html.escape(edition.headrace()),
                        MARK,
                        shownTitle,
                        moves() ? style() + WhatIfHtml.style() : style(),
                        file,
                        DAY.format(edition.day()),
                        shownTitle,
                        state(),
                        contents(),
                        body,
                        footer(file),
                        moves() ? "<script>" + WhatIfHtml.script() + "</script>\n" : "");
    }

    private boolean moves() {
        return body.indexOf("class=\"" + WhatIfHtml.MARK + "\"") >= 0;
    }

    private static String digest(String script) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
            return "sha256-" + Base64.getEncoder().encodeToString(hash);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every JDK has SHA-256", e);
        }
    }

    private String state() {
        return facts.incomplete()
                .map(why -> "<p class=\"incomplete\"><strong>Not complete.</strong> " + Html.escape(why) + "</p>\n")
                .orElse("");
    }

    private String contents() {
        StringBuilder list = new StringBuilder();
        for (Section section : sections) {
            if (section.level() <= DEEPEST_LISTED && !section.text().isEmpty()) {
                list.append("<li class=\"level-%d\"><a href=\"#%s\">%s</a></li>\n"
                        .formatted(section.level(), section.anchor(), Html.escape(section.text())));
            }
        }
        return list.isEmpty()
                ? ""
                : "<nav aria-label=\"Contents\">\n<p class=\"line\">Contents</p>\n<ol>\n" + list + "</ol>\n</nav>\n";
    }

    private String footer(String file) {
        Edition edition = facts.edition();
        return """
                <footer>
                %s<h2>About this page</h2>
                <p>These are engineering estimates from the tests, data and assumptions named above, not certified
                ratings. Decisions about plant are made by licensed practice and by the code that applies locally; rotating
                and live equipment is worked on only by those who may.</p>
                <dl>
                <dt>Script</dt><dd>%s<br><span class="hash">SHA-256 %s</span></dd>
                <dt>Made with</dt><dd>Headrace %s, JDK %s, Groovy %s</dd>
                </dl>
                </footer>
                """.formatted(
                        restsOn(),
                        file,
                        Html.escape(facts.sha256()),
                        Html.escape(edition.headrace()),
                        Html.escape(edition.jdk()),
                        Html.escape(edition.groovy()));
    }

    private String restsOn() {
        List<String> all = basis.all();
        return all.isEmpty() ? "" : "<h2>What the results rest on</h2>\n" + SafeMarkup.list(all);
    }

    private static String style() {
        try (InputStream in = Page.class.getResourceAsStream("page.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
