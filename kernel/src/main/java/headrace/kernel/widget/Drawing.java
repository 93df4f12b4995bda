package headrace.kernel.widget;

import headrace.kernel.display.Display;
import headrace.kernel.display.HowFar;
import headrace.kernel.display.Html;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Fault;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.report.whatif.Frame;
import headrace.report.whatif.WhatIf;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;

/**
 * What is drawn of a what-if: how far a slow calculation is, the picture, and what is said beside it. Each has its
 * place, in which it is drawn anew; so nothing flickers.
 */
final class Drawing {
    private static final int MOST_PRINTED = 20_000;

    private final Supplier<Session> session;
    private final Widget aside = html("");
    private final Widget picture;
    private final Widget said;

    /** Creates the drawing of this frame; the session draws others. */
    Drawing(Frame begin, Supplier<Session> session) {
        this.session = session;
        Drawn first = Drawn.of(begin, "");
        picture = html(first.picture());
        said = html(first.said());
    }

    /** Returns its places, from top to bottom. */
    List<Widget> widgets() {
        return List.of(aside, picture, said);
    }

    /**
     * Draws what is at these positions, or what went wrong there.
     *
     * @return whether nothing went wrong
     */
    boolean draw(WhatIf whatIf, List<Integer> positions) {
        Heard heard = new Heard();
        AtomicReference<Drawn> drawn = new AtomicReference<>();
        aside.change("value", "");
        Optional<Fault> fault =
                session.get().aside(() -> drawn.set(Drawn.of(whatIf.at(positions), heard.printed())), heard);
        Drawn now = fault.map(Drawn::of).orElseGet(drawn::get);
        picture.change("value", now.picture());
        said.change("value", now.said());
        return fault.isEmpty();
    }

    private static Widget html(String value) {
        return new Widget(Kind.HTML, Map.of("value", value, "layout", new Widget(Kind.LAYOUT, Map.of())));
    }

    /** A frame as markup. */
    private record Drawn(String picture, String said) {
        private static final String STYLE =
                "<style>.headrace-drawn svg{max-width:100%;height:auto;display:block}</style>";

        static Drawn of(Frame frame, String printed) {
            String picture = frame.chart()
                    .map(chart -> "<div class=\"headrace-drawn\">" + STYLE + Display.svg(chart) + "</div>")
                    .orElse("");
            return new Drawn(picture, text(printed + frame.text()));
        }

        static Drawn of(Fault fault) {
            return new Drawn("", text(String.join("\n", fault.lines())));
        }

        static String text(String text) {
            return "<pre style=\"overflow-x:auto;font-size:.88em;line-height:1.4;margin:.4em 0\">" + Html.escape(text)
                    + "</pre>";
        }
    }

    /** Shows how far the calculation is, and keeps what it prints for the drawing. */
    private final class Heard implements Output {
        private final StringBuilder printed = new StringBuilder();

        synchronized String printed() {
            return printed.toString();
        }

        @Override
        public synchronized void print(String text) {
            printed.append(text, 0, Math.min(text.length(), MOST_PRINTED - printed.length()));
        }

        @Override
        public void printError(String text) {
            print(text);
        }

        @Override
        public void show(MimeBundle bundle, Optional<String> id) {
            String plain = bundle.text().isEmpty() ? "" : Drawn.text(bundle.text());
            aside.change("value", bundle.forms().getOrDefault("text/html", plain));
        }

        @Override
        public void update(MimeBundle bundle, String id) {
            show(bundle, Optional.of(id));
        }

        @Override
        public void clear(boolean wait) {
            aside.change("value", "");
        }

        @Override
        public void progress(HowFar far) {
            aside.change("value", far.html());
        }

        @Override
        public void progressEnded() {
            aside.change("value", "");
        }

        @Override
        public Optional<String> ask(String prompt, boolean secret) {
            return Optional.empty();
        }
    }
}
