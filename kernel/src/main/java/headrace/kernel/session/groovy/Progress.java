package headrace.kernel.session.groovy;

import headrace.kernel.display.Html;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Output;
import headrace.work.Watcher;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Shows how far the calculations of one cell have come, in one place that is drawn anew a few times a second and
 * emptied at the end. A calculation that is quick shows nothing.
 */
final class Progress implements Watcher {
    private static final long QUIET_NANOS = 400_000_000L;
    private static final long BETWEEN_NANOS = 250_000_000L;
    private static final int BAR = 30;

    private final BooleanSupplier stopped;
    private final Output output;
    private final String id;
    private final long begun = System.nanoTime();
    private long drawn = begun + QUIET_NANOS - BETWEEN_NANOS;
    private boolean shown;

    /**
     * Creates the display of one cell.
     *
     * @param stopped whether the user asked to stop
     * @param id the name under which it is drawn anew
     */
    Progress(BooleanSupplier stopped, Output output, String id) {
        this.stopped = stopped;
        this.output = output;
        this.id = id;
    }

    @Override
    public boolean stopped() {
        return stopped.getAsBoolean();
    }

    @Override
    public synchronized void progress(String what, double share) {
        long now = System.nanoTime();
        if (now - drawn >= BETWEEN_NANOS) {
            drawn = now;
            draw(bar(what, Math.max(0, Math.min(1, share))));
        }
    }

    /** Empties the place, if anything was ever shown there. */
    synchronized void clear() {
        if (shown) {
            output.update(new MimeBundle(Map.of("text/plain", "", "text/html", "")), id);
        }
    }

    private void draw(MimeBundle bar) {
        if (shown) {
            output.update(bar, id);
        } else {
            shown = true;
            output.show(bar, Optional.of(id));
        }
    }

    /** Returns the bar as text and as HTML. */
    static MimeBundle bar(String what, double share) {
        int percent = (int) Math.floor(share * 100);
        int filled = (int) Math.floor(share * BAR);
        String text = what + " [" + "#".repeat(filled) + ".".repeat(BAR - filled) + "] " + percent + " %";
        String html = "<p>" + Html.escape(what) + " <progress max=\"100\" value=\"" + percent + "\"></progress> "
                + percent + " %</p>";
        return new MimeBundle(Map.of("text/plain", text, "text/html", html));
    }
}
