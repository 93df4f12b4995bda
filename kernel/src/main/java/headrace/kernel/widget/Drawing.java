package headrace.kernel.widget;

import headrace.kernel.display.Drawn;
import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Fault;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.report.whatif.Frame;
import headrace.report.whatif.WhatIf;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;

/**
 * What is drawn of a what-if: the parts of its frame, what the calculation prints and shows on its way, or in place of
 * all that why there is nothing to draw. Each has its place, in which it is drawn anew; so nothing flickers.
 */
final class Drawing {
    private static final int MOST_PRINTED = 20_000;
    private static final int MOST_SHOWN = 8;
    private static final String SHOWN = "flex";
    private static final String HIDDEN = "none";

    private final Supplier<Session> session;
    private final Bar progress = new Bar();
    private final Widget trouble = Texts.html("");
    private final Widget place;
    private final Widget layoutOfPlace;
    private final Widget aside = Texts.html("");
    private Parts parts;

    /** Creates the drawing of this frame; the session draws others. */
    Drawing(Frame begin, Supplier<Session> session) {
        this.session = session;
        parts = Parts.of(begin);
        layoutOfPlace = new Widget(Kind.LAYOUT, Map.of("width", "100%", "display", SHOWN));
        place = new Widget(Kind.COLUMN, Map.of("children", List.of(parts.root()), "layout", layoutOfPlace));
    }

    /** Returns its places, from top to bottom. */
    List<Widget> widgets() {
        return List.of(trouble, place, aside);
    }

    /** Returns the place of how far a slow calculation is. */
    Bar progress() {
        return progress;
    }

    /**
     * Draws what is at these positions, or what went wrong there.
     *
     * @return whether nothing went wrong
     */
    boolean draw(WhatIf whatIf, List<Integer> positions) {
        Heard heard = new Heard();
        AtomicReference<Frame> frame = new AtomicReference<>();
        Optional<Fault> fault = session.get()
                .aside(
                        () -> {
                            frame.set(whatIf.at(positions));
                            show(frame.get());
                        },
                        heard);
        fault.ifPresent(failed -> trouble(String.join("\n", failed.lines())));
        aside.change("value", heard.markup());
        return fault.isEmpty();
    }

    private void show(Frame frame) {
        if (frame.arrangement() == Frame.Arrangement.REFUSED) {
            trouble(Drawn.of(frame).get(0).text());
            return;
        }
        if (!parts.show(frame)) {
            Parts before = parts;
            parts = Parts.of(frame);
            place.change("children", List.of(parts.root()));
            before.root().close();
        }
        trouble.change("value", "");
        layoutOfPlace.change("display", SHOWN);
    }

    private void trouble(String text) {
        layoutOfPlace.change("display", HIDDEN);
        trouble.change("value", Texts.said(text));
    }

    /** Shows how far the calculation is, and keeps what it prints and shows. */
    private final class Heard implements Output {
        private final StringBuilder printed = new StringBuilder();
        private final Map<String, String> shown = new LinkedHashMap<>();

        synchronized String markup() {
            return String.join("", shown.values()) + (printed.isEmpty() ? "" : Texts.said(printed.toString()));
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
        public synchronized void show(MimeBundle bundle, Optional<String> id) {
            String plain = bundle.text().isEmpty() ? "" : Texts.said(bundle.text());
            String place = id.orElse("\n" + shown.size());
            if (shown.size() < MOST_SHOWN || shown.containsKey(place)) {
                shown.put(place, bundle.forms().getOrDefault("text/html", plain));
            }
        }

        @Override
        public void update(MimeBundle bundle, String id) {
            show(bundle, Optional.of(id));
        }

        @Override
        public synchronized void clear(boolean wait) {
            shown.clear();
        }

        @Override
        public void progress(HowFar far) {
            progress.show(far);
        }

        @Override
        public void progressEnded() {
            progress.clear();
        }

        @Override
        public Optional<String> ask(String prompt, boolean secret) {
            return Optional.empty();
        }
    }
}
