package headrace.kernel.handler;

import headrace.kernel.comm.Comms;
import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.history.History;
import headrace.kernel.message.Event;
import headrace.kernel.message.Fault;
import headrace.kernel.message.Reply;
import headrace.kernel.message.Request;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Session;
import headrace.kernel.widget.Widgets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/**
 * Runs one cell and says how it ended.
 *
 * <p>Front ends see, in this order, the cell itself, what it prints and shows, and then its value or its fault; the
 * reply comes last. A cell that is one word behind or before a question mark, such as {@code ?fit}, is not run: the
 * explanation of the word is shown in the front end's pager.
 *
 * <p>Source: Jupyter messaging protocol 5.5, “Execute”.
 */
public final class ExecuteHandler implements Handler<Request.Execute> {
    private final Supplier<Session> session;

    private final History history;
    private final Comms comms;
    private final Widgets widgets;

    /**
     * Creates a handler that runs cells in this session.
     *
     * @param history keeps them for later sessions
     * @param comms what the cells open or tell goes out as caused by them
     * @param widgets makes what can be moved live
     */
    public ExecuteHandler(Supplier<Session> session, History history, Comms comms, Widgets widgets) {
        this.session = session;
        this.history = history;
        this.comms = comms;
        this.widgets = widgets;
    }

    @Override
    public Optional<Reply> handle(Request.Execute request, Publisher publisher) {
        Publisher heard = request.silent() ? publisher.silent() : publisher;
        comms.send(heard::publish);
        return Optional.of(WordInQuestion.of(request.code())
                .map(word -> explain(word, request, heard))
                .orElseGet(() -> run(request, heard)));
    }

    private Reply run(Request.Execute request, Publisher heard) {
        Session running = session.get();
        UnaryOperator<MimeBundle> live = request.silent() ? UnaryOperator.identity() : widgets::live;
        int count = running.count() + (request.storeHistory() ? 1 : 0);
        heard.publish(new Event.Input(request.code(), count));

        Publisher told = discreet(heard, live);
        Outcome outcome = running.run(request.code(), request.storeHistory(), told);
        if (request.storeHistory()) {
            history.keep(
                    count,
                    request.code(),
                    outcome instanceof Outcome.Value value ? value.bundle().text() : "");
        }

        if (outcome instanceof Outcome.Failed failed) {
            Fault fault = fault(failed.fault());
            heard.publish(new Event.Failure(fault));
            return new Reply.ExecuteFailed(count, fault);
        }
        if (outcome instanceof Outcome.Value value) {
            MimeBundle bundle = live.apply(value.bundle());
            if (bundle.moving().isPresent()) {
                heard.show(bundle, Optional.empty()); // some front ends look for controls only among what is shown
            } else {
                heard.publish(new Event.Result(bundle, count));
            }
        }
        return new Reply.Executed(count, expressions(request, running, told), Optional.empty());
    }

    /**
     * Lets the history know when the cell asks for something secret, makes live what it shows, and draws how far it is.
     */
    private Publisher discreet(Publisher heard, UnaryOperator<MimeBundle> live) {
        ProgressPlace place = new ProgressPlace(heard);
        return new Publisher() {
            @Override
            public void publish(Event event) {
                heard.publish(event);
            }

            @Override
            public void show(MimeBundle bundle, Optional<String> id) {
                heard.show(live.apply(bundle), id);
            }

            @Override
            public void update(MimeBundle bundle, String id) {
                heard.update(live.apply(bundle), id);
            }

            @Override
            public void progress(HowFar far) {
                place.draw(far);
            }

            @Override
            public void progressEnded() {
                place.empty();
            }

            @Override
            public void print(String text) {
                heard.print(text);
            }

            @Override
            public void printError(String text) {
                heard.printError(text);
            }

            @Override
            public Optional<String> ask(String prompt, boolean secret) {
                if (secret) {
                    history.secretAsked();
                }
                return heard.ask(prompt, secret);
            }
        };
    }

    private Reply explain(String word, Request.Execute request, Publisher heard) {
        Session asked = session.get();
        heard.publish(new Event.Input(request.code(), asked.count()));
        MimeBundle page = asked.inspect(word, word.length(), 1)
                .orElseGet(() -> MimeBundle.plain("There is no explanation of " + word + "."));
        return new Reply.Executed(asked.count(), Map.of(), Optional.of(page));
    }

    private static Map<String, Reply.Expression> expressions(
            Request.Execute request, Session session, Publisher heard) {
        Map<String, Reply.Expression> values = new LinkedHashMap<>();
        request.userExpressions().forEach((name, code) -> values.put(name, value(session.run(code, false, heard))));
        return values;
    }

    private static Reply.Expression value(Outcome outcome) {
        if (outcome instanceof Outcome.Value value) {
            return new Reply.Expression.Value(value.bundle());
        } else if (outcome instanceof Outcome.Failed failed) {
            return new Reply.Expression.Failed(fault(failed.fault()));
        }
        return new Reply.Expression.Value(MimeBundle.plain("null"));
    }

    private static Fault fault(headrace.kernel.session.Fault fault) {
        return new Fault(fault.name(), fault.message(), fault.lines());
    }
}
