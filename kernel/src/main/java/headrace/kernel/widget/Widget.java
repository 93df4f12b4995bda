package headrace.kernel.widget;

import headrace.kernel.comm.Comms;
import headrace.kernel.comm.Half;
import headrace.kernel.comm.Pair;
import headrace.kernel.message.Comm;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Something in a front end that is drawn from a state, which both sides may change. May be used by any thread.
 *
 * <p>A state holds text, numbers, booleans, bytes, other widgets, and lists of these.
 */
final class Widget implements Half {
    private static final String TARGET = "jupyter.widget";

    /**
     * More than a packet on a machine's own network holds. Notebook servers leave it to TCP when to send, and that
     * holds small packets back until the one before is acknowledged, 40 ms on Linux (RFC 896): longer than a drawing
     * takes.
     */
    private static final int PACKET = 66_000;

    private static final Map<String, Object> VERSION = Map.of("version", "2.1.0");

    /** Decides about what a front end wants to change. */
    interface Moved {
        /** Notices a change that has arrived and will be heard when its turn comes. */
        void notices(Comm.Data message);

        /** Returns whether such a change may be. */
        boolean allows(Map<?, ?> change);

        /** Hears of a change after it was made or refused. */
        void hears(Comm.Data message);
    }

    private final Map<String, Object> state;
    private Moved moved;
    private Runnable pressed = () -> {};
    private volatile Home home;
    private volatile Pair pair;

    /** Creates a widget that no front end has yet. */
    Widget(Kind kind, Map<String, ?> own) {
        state = kind.state();
        state.putAll(own);
    }

    /** Lets this decide about what a front end moves; without, nothing can be moved. */
    Widget moves(Moved by) {
        moved = by;
        return this;
    }

    /** Does this when a front end's button is pressed. */
    Widget presses(Runnable job) {
        pressed = job;
        return this;
    }

    /**
     * Where widgets live while they are open.
     *
     * @param comms carry them to every front end
     * @param opened hears of each that was opened
     * @param ended hears of each that was closed
     */
    record Home(Comms comms, Consumer<Widget> opened, Consumer<Widget> ended) {}

    /** Opens those that it is made of and then itself in every front end. */
    void open(Home where) {
        home = where;
        openParts(parts());
        Written all = written();
        pair = where.comms()
                .open(TARGET, Map.of("state", all.state(), "buffer_paths", all.paths()), VERSION, all.buffers(), this);
        where.opened().accept(this);
    }

    private void openParts(Stream<Widget> parts) {
        parts.filter(part -> part.pair == null).forEach(part -> part.open(home));
    }

    /** Closes it and all that it is made of in every front end. */
    void close() {
        Pair closed = pair;
        if (closed != null && closed.isOpen()) {
            closed.close();
            home.ended().accept(this);
            closeParts();
        }
    }

    void closeParts() {
        parts().forEach(Widget::close);
    }

    String id() {
        return pair.id();
    }

    /** Returns the state as it is now. */
    synchronized Written written() {
        return Written.of(state);
    }

    synchronized Object state(String name) {
        return state.get(name);
    }

    /** Changes a part of the state, here and in every front end; what it is newly made of is opened before. */
    void change(String name, Object value) {
        change(name, value, Map.of());
    }

    /** Changes a text for somebody who waits for it: a message that fills a packet is not held back on its way. */
    void changeAtOnce(String name, String value) {
        String filling = " ".repeat(Math.max(0, PACKET - value.length()));
        change(name, value, Map.of("filling", filling));
    }

    private void change(String name, Object value, Map<String, Object> metadata) {
        if (home != null) {
            openParts(widgets(value));
        }
        Written change;
        synchronized (this) {
            if (value.equals(state.put(name, value))) {
                return;
            }
            change = Written.of(Map.of(name, value));
        }
        if (pair != null) {
            pair.send(change.message("update"), metadata, change.buffers());
        }
    }

    @Override
    public void notices(Comm.Data message) {
        if (moved != null && isUpdate(message)) {
            moved.notices(message);
        }
    }

    @Override
    public void hears(Pair own, Comm.Data message) {
        Object method = message.data().get("method");
        if (isUpdate(message)) {
            update(own, message);
        } else if ("request_state".equals(method)) {
            Written all = written();
            own.send(all.message("update"), Map.of(), all.buffers());
        } else if ("custom".equals(method)
                && message.data().get("content") instanceof Map<?, ?> content
                && "click".equals(content.get("event"))) {
            pressed.run();
        }
    }

    @Override
    public void ended(Comm.Close message) {
        home.ended().accept(this);
    }

    private void update(Pair own, Comm.Data message) {
        if (moved == null) {
            return;
        }
        if (message.data().get("state") instanceof Map<?, ?> change && moved.allows(change)) {
            Map<String, Object> made = new LinkedHashMap<>();
            synchronized (this) {
                change.forEach((name, value) -> {
                    if (state.containsKey(name)) {
                        made.put((String) name, value);
                    }
                });
                state.putAll(made);
            }
            // so that another front end follows; the one that moved it knows its own echo
            own.send(Written.of(made).message("echo_update"));
        }
        moved.hears(message);
    }

    private static boolean isUpdate(Comm.Data message) {
        return "update".equals(message.data().get("method"));
    }

    private synchronized Stream<Widget> parts() {
        return state.values().stream().flatMap(Widget::widgets).distinct().toList().stream();
    }

    private static Stream<Widget> widgets(Object value) {
        return (value instanceof List<?> several ? several.stream() : Stream.of(value))
                .filter(Widget.class::isInstance)
                .map(Widget.class::cast);
    }
}
