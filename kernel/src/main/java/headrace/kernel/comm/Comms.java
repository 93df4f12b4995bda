package headrace.kernel.comm;

import headrace.kernel.message.Comm;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/**
 * All objects of the kernel that have a twin in a front end, opened from either side. May be used by any thread.
 *
 * <p>What is sent has as its cause the request that is being carried out, or else the latest one: a front end matches
 * by it what it hears with what it asked.
 *
 * <p>Source: Jupyter messaging protocol 5.5, “Custom Messages”.
 */
public final class Comms {
    private final Map<String, Target> targets = new ConcurrentHashMap<>();
    private final Map<String, Pair> open = new ConcurrentHashMap<>();
    private volatile Consumer<Comm> way = message -> {};

    /** Creates comms without any target. */
    public Comms() {}

    /** Lets a front end open pairs of this name, in place of an earlier target of that name. */
    public void register(String name, Target target) {
        targets.put(name, target);
    }

    /**
     * Opens a pair with every front end that knows the target.
     *
     * @param target the name under which the front end knows what to make
     * @param data what the front end is told of this half
     * @param metadata what is said of the message that opens
     * @param buffers what goes with it as bytes
     * @param half hears what the twin says
     */
    public Pair open(
            String target, Map<String, Object> data, Map<String, Object> metadata, List<byte[]> buffers, Half half) {
        Pair pair = new Pair(UUID.randomUUID().toString(), target, this);
        pair.lead(half);
        open.put(pair.id(), pair);
        tell(new Comm.Open(pair.id(), target, data, metadata, buffers));
        return pair;
    }

    /** Returns the open pairs of one target, or (if that is empty) of all: the target by the identity. */
    public Map<String, String> of(String target) {
        Map<String, String> found = new TreeMap<>();
        open.values().stream()
                .filter(pair -> target.isEmpty() || pair.target().equals(target))
                .forEach(pair -> found.put(pair.id(), pair.target()));
        return found;
    }

    /** Sends this way from now on: as caused by the request that is being carried out. */
    public void send(Consumer<Comm> caused) {
        way = caused;
    }

    /**
     * Takes a message of a front end. What is opened under a name that is not known here is closed at once, and
     * messages of a pair that is not open have no effect.
     */
    public void receive(Comm message) {
        if (message instanceof Comm.Open opening) {
            opened(opening);
        } else if (message instanceof Comm.Data data) {
            Pair pair = open.get(data.id());
            if (pair != null) {
                pair.hear(data);
            }
        } else if (message instanceof Comm.Close close) {
            Pair pair = open.remove(close.id());
            if (pair != null) {
                pair.end(close);
            }
        }
    }

    /** Notices a message that will be taken when its turn comes. */
    public void notice(Comm message) {
        if (message instanceof Comm.Data data) {
            Pair pair = open.get(data.id());
            if (pair != null) {
                pair.notice(data);
            }
        }
    }

    private void opened(Comm.Open opening) {
        if (open.containsKey(opening.id())) {
            return; // to close what another opened would take it from those who use it
        }
        Target target = targets.get(opening.target());
        if (target == null) {
            tell(new Comm.Close(opening.id(), Map.of()));
            return;
        }
        Pair pair = new Pair(opening.id(), opening.target(), this);
        open.put(pair.id(), pair);
        try {
            pair.lead(target.opened(pair, opening));
        } catch (RuntimeException | Error refused) {
            pair.close();
            throw refused;
        }
    }

    boolean knows(Pair pair) {
        return open.get(pair.id()) == pair;
    }

    boolean forget(Pair pair) {
        return open.remove(pair.id(), pair);
    }

    void tell(Comm message) {
        way.accept(message);
    }
}
