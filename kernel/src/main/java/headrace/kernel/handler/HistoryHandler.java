package headrace.kernel.handler;

import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.message.Request.HistoryChoice;
import headrace.kernel.session.HistoryEntry;
import headrace.kernel.session.Session;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/** Gives earlier cells. There is one session, number 1, which the protocol also calls 0, the running one. */
public final class HistoryHandler implements Handler<Request.History> {
    private static final int RUNNING = 1;

    private final Supplier<Session> session;

    /** Creates a handler that asks this session. */
    public HistoryHandler(Supplier<Session> session) {
        this.session = session;
    }

    @Override
    public Optional<Reply> handle(Request.History request, Publisher publisher) {
        List<HistoryEntry> all = session.get().history();
        List<Reply.Past> chosen = chosen(all, request.choice()).stream()
                .map(entry -> new Reply.Past(RUNNING, entry.count(), entry.code(), entry.result()))
                .toList();
        return Optional.of(new Reply.History(request.output(), chosen));
    }

    private static List<HistoryEntry> chosen(List<HistoryEntry> all, HistoryChoice choice) {
        if (choice instanceof HistoryChoice.Tail tail) {
            return last(all, tail.n());
        } else if (choice instanceof HistoryChoice.Range range) {
            return between(all, range);
        }
        return matching(all, (HistoryChoice.Search) choice);
    }

    private static List<HistoryEntry> between(List<HistoryEntry> all, HistoryChoice.Range range) {
        boolean running = range.session() == 0 || range.session() == RUNNING;
        int stop = range.stop().orElse(Integer.MAX_VALUE);
        return all.stream()
                .filter(entry -> running && entry.count() >= range.start() && entry.count() < stop)
                .toList();
    }

    private static List<HistoryEntry> matching(List<HistoryEntry> all, HistoryChoice.Search search) {
        Predicate<String> fits = glob(search.pattern()).asMatchPredicate();
        List<HistoryEntry> found =
                all.stream().filter(entry -> fits.test(entry.code())).toList();
        if (search.unique()) {
            found = latestOfEach(found);
        }
        return last(found, search.n().orElse(Integer.MAX_VALUE));
    }

    private static List<HistoryEntry> latestOfEach(List<HistoryEntry> found) {
        Map<String, HistoryEntry> byCode = new LinkedHashMap<>();
        for (HistoryEntry entry : found) {
            byCode.remove(entry.code());
            byCode.put(entry.code(), entry);
        }
        return List.copyOf(byCode.values());
    }

    private static List<HistoryEntry> last(List<HistoryEntry> entries, int n) {
        if (n <= 0) {
            return Collections.emptyList();
        }
        return entries.subList(Math.max(0, entries.size() - n), entries.size());
    }

    private static Pattern glob(String pattern) {
        StringBuilder regex = new StringBuilder();
        for (char c : pattern.replaceAll("\\*+", "*").toCharArray()) {
            regex.append(c == '*' ? ".*" : c == '?' ? "." : Pattern.quote(String.valueOf(c)));
        }
        return Pattern.compile(regex.toString(), Pattern.DOTALL);
    }
}
