package headrace.kernel.headless.page;

import headrace.kernel.display.Html;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.display.TerminalText;
import headrace.kernel.notebook.CellOutput;
import headrace.kernel.notebook.Fields;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** What a cell left behind as part of a page: the richest form that is safe. */
final class OutputHtml {
    private static final List<String> BITMAPS = List.of("image/png", "image/jpeg");

    private static final Pattern BASE64 = Pattern.compile("[A-Za-z0-9+/]+=*");

    private OutputHtml() {}

    static String of(CellOutput output, BasisLines basis) {
        if (output instanceof CellOutput.Stream stream) {
            String kind = stream.name().equals("stderr") ? "printed warning" : "printed";
            return pre(kind, stream.text().stripTrailing());
        }
        if (output instanceof CellOutput.Failure failure) {
            return "<div class=\"failure\">" + "<p class=\"failure-name\">" + Html.escape(failure.name()) + "</p>"
                    + pre("", String.join("\n", failure.lines())) + "</div>\n";
        }
        MimeBundle bundle =
                output instanceof CellOutput.Result result ? result.bundle() : ((CellOutput.Shown) output).bundle();
        return "<div class=\"result\">" + richest(bundle, basis) + "</div>\n";
    }

    private static String richest(MimeBundle bundle, BasisLines basis) {
        return markup(bundle, basis)
                .or(() -> drawing(bundle))
                .or(() -> bitmap(bundle))
                .or(() -> text(bundle))
                .orElseGet(() -> pre("value", bundle.text()));
    }

    private static Optional<String> markup(MimeBundle bundle, BasisLines basis) {
        return Optional.ofNullable(bundle.forms().get("text/html")).flatMap(html -> SafeMarkup.html(html, basis));
    }

    private static Optional<String> drawing(MimeBundle bundle) {
        return Optional.ofNullable(bundle.forms().get("image/svg+xml"))
                .flatMap(SafeMarkup::svg)
                .map(svg -> "<figure>" + svg.picture(bundle.text()) + "</figure>");
    }

    private static Optional<String> bitmap(MimeBundle bundle) {
        return BITMAPS.stream()
                .filter(bundle.forms()::containsKey)
                .map(type -> bitmap(type, bundle))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private static Optional<String> bitmap(String type, MimeBundle bundle) {
        String base64 = bundle.forms().get(type).replaceAll("\\s", "");
        return BASE64.matcher(base64).matches()
                ? Optional.of("<figure><img src=\"data:" + type + ";base64," + base64 + "\" alt=\""
                        + Html.escape(bundle.text()) + "\"></figure>")
                : Optional.empty();
    }

    private static Optional<String> text(MimeBundle bundle) {
        return Optional.ofNullable(bundle.forms().get("text/markdown"))
                .map(text -> MarkdownText.of(text, Fields.NONE, "shown").html());
    }

    private static String pre(String kind, String text) {
        return "<pre class=\"" + kind + "\">" + Html.escape(TerminalText.withoutColours(text)) + "</pre>\n";
    }
}
