package headrace.kernel.handler;

import headrace.kernel.history.History;
import headrace.kernel.history.PastCell;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.message.Request.HistoryChoice;
import headrace.kernel.session.Session;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/** Gives earlier cells, of this session and of those before it, each under the number of its session. */
public final class HistoryHandler implements Handler<Request.History> {
    private final Supplier<Session> session;
    private final History history;

    /**
     * Creates a handler that asks this session.
     *
     * @param history has the cells of the sessions before it
     */
    public HistoryHandler(Supplier<Session> session, History history) {
        this.session = session;
        this.history = history;
    }

    @Override
    public Optional<Reply> handle(Request.History request, Publisher publisher) {
        List<PastCell> all = new ArrayList<>(history.earlier());
        int running = history.session();
        session.get()
                .history()
                .forEach(entry -> all.add(new PastCell(running, entry.count(), entry.code(), entry.result())));
        List<Reply.Past> chosen = chosen(all, running, request.choice()).stream()
                .map(cell -> new Reply.Past(cell.session(), cell.count(), cell.code(), cell.result()))
                .toList();
        return Optional.of(new Reply.History(request.output(), chosen));
    }

    private static List<PastCell> chosen(List<PastCell> all, int running, HistoryChoice choice) {
        if (choice instanceof HistoryChoice.Tail tail) {
            return last(all, tail.n());
        } else if (choice instanceof HistoryChoice.Range range) {
            return between(all, running, range);
        }
        return matching(all, (HistoryChoice.Search) choice);
    }

    private static List<PastCell> between(List<PastCell> all, int running, HistoryChoice.Range range) {
        int wanted = numbered(all, running, range.session());
        int stop = range.stop().orElse(Integer.MAX_VALUE);
        return all.stream()
                .filter(cell -> cell.session() == wanted && cell.count() >= range.start() && cell.count() < stop)
                .toList();
    }

    /** Returns the number of a session, which may be told as 0 for the running one, -1 for the one before and so on. */
    private static int numbered(List<PastCell> all, int running, int told) {
        if (told > 0) {
            return told;
        }
        List<Integer> earlier = all.stream()
                .map(PastCell::session)
                .filter(each -> each < running)
                .distinct()
                .sorted()
                .toList();
        int place = earlier.size() + told;
        return told == 0 ? running : place < 0 ? 0 : earlier.get(place);
    }

    private static List<PastCell> matching(List<PastCell> all, HistoryChoice.Search search) {
        Predicate<String> fits = glob(search.pattern()).asMatchPredicate();
        List<PastCell> found =
                all.stream().filter(cell -> fits.test(cell.code())).toList();
        if (search.unique()) {
            found = latestOfEach(found);
        }
        return last(found, search.n().orElse(Integer.MAX_VALUE));
    }

    private static List<PastCell> latestOfEach(List<PastCell> found) {
        Map<String, PastCell> byCode = new LinkedHashMap<>();
        for (PastCell cell : found) {
            byCode.remove(cell.code());
            byCode.put(cell.code(), cell);
        }
        return List.copyOf(byCode.values());
    }

    private static List<PastCell> last(List<PastCell> cells, int n) {
        if (n <= 0) {
            return Collections.emptyList();
        }
        return cells.subList(Math.max(0, cells.size() - n), cells.size());
    }

    private static Pattern glob(String pattern) {
        StringBuilder regex = new StringBuilder();
        for (char c : pattern.replaceAll("\\*+", "*").toCharArray()) {
            regex.append(c == '*' ? ".*" : c == '?' ? "." : Pattern.quote(String.valueOf(c)));
        }
        return Pattern.compile(regex.toString(), Pattern.DOTALL);
    }
}
