package headrace.kernel.server;

import headrace.kernel.message.Question;
import headrace.kernel.message.Request;
import headrace.kernel.wire.Author;
import headrace.kernel.wire.Incoming;
import headrace.kernel.wire.Outgoing;
import headrace.work.Stopped;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.locks.ReentrantLock;

/** Asks users for lines, one question at a time, and takes no answer to an earlier question for one to this. */
final class Questions {
    private final Courier courier;
    private final Author author;
    private final ReentrantLock turn = new ReentrantLock();
    private volatile Pending pending;

    private record Pending(String id, List<byte[]> route, CompletableFuture<String> answer) {}

    Questions(Courier courier, Author author) {
        this.courier = courier;
        this.author = author;
    }

    /** Asks the user whose front end sent a request, and waits for the answer or for an interruption. */
    String ask(Incoming request, Question question) {
        try {
            turn.lockInterruptibly();
            try {
                Outgoing written = author.question(request, question);
                Pending asked = new Pending(written.id(), request.route(), new CompletableFuture<>());
                pending = asked;
                courier.send(Channel.STDIN, written);
                return asked.answer().get();
            } finally {
                pending = null;
                turn.unlock();
            }
        } catch (InterruptedException | ExecutionException stopped) {
            throw new Stopped();
        }
    }

    /**
     * Takes an answer; one to which there is no question, which comes from elsewhere, or which names an earlier
     * question is dropped. Many front ends name none of ours.
     */
    void answer(Incoming message, Request.Answer answer) {
        Pending asked = pending;
        boolean names = author.wrote(message.cause());
        if (asked != null
                && same(asked.route(), message.route())
                && (!names || message.cause().equals(asked.id()))) {
            asked.answer().complete(answer.value());
        }
    }

    /** Lets whoever waits for an answer stop waiting. */
    void cancel() {
        Pending asked = pending;
        if (asked != null) {
            asked.answer().completeExceptionally(new Stopped());
        }
    }

    private static boolean same(List<byte[]> route, List<byte[]> other) {
        return Arrays.deepEquals(route.toArray(), other.toArray());
    }
}
