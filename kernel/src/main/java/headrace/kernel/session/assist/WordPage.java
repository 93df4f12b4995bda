package headrace.kernel.session.assist;

import headrace.kernel.display.Html;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.source.JavaForm;
import headrace.script.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** All that there is to say about a word: how it is called, what it does, its choices, and an example. */
final class WordPage {
    /** So wide are the narrowest windows that show such a text. */
    private static final int COLUMNS = 76;

    private final Vocabulary.Entry word;
    private final String example;
    private final List<String> choices;

    /**
     * Creates the page.
     *
     * @param java whether it is written for Java cells
     */
    WordPage(Vocabulary.Entry word, boolean java) {
        this.word = word;
        example = java ? JavaForm.of(word.example()) : word.example();
        choices = java
                ? word.choices().stream()
                        .map(choice -> choice.replaceFirst("^(\\w+):", "$1(…):"))
                        .toList()
                : word.choices();
    }

    MimeBundle bundle() {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put("text/plain", text());
        forms.put("text/html", html());
        forms.put("text/markdown", markdown());
        return new MimeBundle(forms);
    }

    private String text() {
        List<String> lines = new ArrayList<>(word.signatures());
        lines.add("    " + word.help());
        choices.forEach(choice -> lines.add("    " + choice));
        lines.add("    Example: " + example);
        return lines.stream().map(WordPage::wrapped).collect(Collectors.joining("\n"));
    }

    /** Returns a line in lines that are narrow enough, the later ones further in. */
    static String wrapped(String line) {
        String indent = line.substring(0, line.length() - line.stripLeading().length());
        StringBuilder all = new StringBuilder();
        String rest = line;
        String further = indent + "    ";
        while (rest.length() > COLUMNS) {
            int end = rest.lastIndexOf(' ', COLUMNS);
            if (end <= further.length()) {
                break; // one long word stays one
            }
            all.append(rest, 0, end).append('\n');
            rest = further + rest.substring(end + 1);
        }
        return all.append(rest).toString();
    }

    private String html() {
        StringBuilder html = new StringBuilder("<div class=\"headrace\">");
        word.signatures()
                .forEach(each ->
                        html.append("<p><code>").append(Html.escape(each)).append("</code></p>"));
        html.append("<p>").append(Html.escape(word.help())).append("</p>");
        if (!choices.isEmpty()) {
            html.append("<ul>");
            choices.forEach(
                    each -> html.append("<li>").append(Html.escape(each)).append("</li>"));
            html.append("</ul>");
        }
        return html.append("<p>Example: <code>")
                .append(Html.escape(example))
                .append("</code></p></div>")
                .toString();
    }

    private String markdown() {
        StringBuilder text = new StringBuilder();
        word.signatures().forEach(each -> text.append("    ").append(each).append('\n'));
        text.append('\n').append(word.help()).append("\n\n");
        choices.forEach(each -> text.append("- ").append(each).append('\n'));
        return text.append("\nExample:\n\n    ").append(example).append('\n').toString();
    }
}
