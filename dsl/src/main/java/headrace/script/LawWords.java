package headrace.script;

import headrace.circuit.Circuit;
import headrace.control.ControlLaw;
import headrace.control.LawLimits;
import headrace.control.LoopOperation;
import headrace.control.LoopState;
import headrace.control.TrimAndRespond;
import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Time;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Words for control laws beyond the usual ones: any exponent, a block of the user's own, and limits after a law. */
public final class LawWords implements Words {
    private static final String GENERAL =
            "A head that rises with a power of flow from the minimum head at no flow to the"
                    + " design head: 1 is a straight line, 2 the square, 2.2 the most.";
    private static final String GENERAL_EXAMPLE = "generalExponent(design, minimumHead: 30.percent, exponent: 1.6)";
    private static final String OWN =
            "A control law of your own: a block that answers each flow with a head or a speed."
                    + " It is tried from no flow to 120 % of design flow before it is taken.";
    private static final String OWN_EXAMPLE =
            "law('night', design: design) { now -> now.flow < 20.m3ph ? 5.m : 6.m + 10.m * (now.flow / design.flow) }";
    private static final String NEEDIEST =
            "The pump gives the least head at which every demand is met and no valve stands"
                    + " further open than chosen.";
    private static final String TRIM =
            "Trim and respond: the wanted head falls a little at every step and rises with the"
                    + " valves that stand nearly open.";
    private static final String TRIM_EXAMPLE = "trimAndRespond(design, minimumHead: 30.percent, ignored: 0)";
    private static final String SETTLE =
            "Where pump set, control law and circuit settle together: flow, head, speed and"
                    + " power of the pump, and how each branch stands.";
    private static final String LIMITED = "A control law with limits after it, beside those of the pump set.";
    private static final String LIMITED_EXAMPLE =
            "limited(constantHead(design), greatestPower: 3.kW, leastFlow: 12.m3ph)";

    @Override
    public String subject() {
        return "Circuit and control";
    }

    /** Makes the law with any exponent. */
    @Word(
            help = GENERAL,
            example = GENERAL_EXAMPLE,
            choices = {
                "minimumHead: head kept at no flow, as a share of the design head or as a head; always needed",
                "exponent: power of flow, 1 to 2.2; always needed"
            })
    public static ControlLaw generalExponent(Map<String, ?> given, Object design) {
        Duty duty = ControlWords.point(design, "generalExponent");
        Choices choices = Choices.of("generalExponent", given, "minimumHead", "exponent");
        return ControlLaw.generalExponent(
                duty, ControlWords.minimumHead("generalExponent", choices, duty), choices.number("exponent"));
    }

    /** Asks for what is missing. */
    @Word(help = GENERAL, example = GENERAL_EXAMPLE)
    public static ControlLaw generalExponent(Object design) {
        return generalExponent(Map.of(), design);
    }

    /** Makes a law of the user's own. */
    @Word(
            help = OWN,
            example = OWN_EXAMPLE,
            choices = {
                "design: the duty it is made for; without one it is tried only where it is used",
                "observes: a list of the branches whose head, flow and opening it sees as now.head('attic'); with 'clock' among"
                        + " them it sees the time as now.clock, with its hour, dayOfWeek and month"
            })
    public static ControlLaw law(Map<String, ?> given, Object name, Function<LoopState, ?> rule) {
        Choices choices = Choices.of("law", given, "design", "observes");
        String called = called(name);
        if (choices.has("observes")) {
            List<?> observed = choices.object("observes", List.class);
            List<String> branches = observed.stream().map(String::valueOf).toList();
            return ControlLaw.of(
                    called, Optional.ofNullable(choices.object("design", Duty.class, null)), branches, rule);
        }
        return choices.has("design")
                ? ControlLaw.of(called, choices.object("design", Duty.class), rule)
                : ControlLaw.of(called, rule);
    }

    /** Makes a law of the user's own. */
    @Word(help = OWN, example = "law('night') { now -> now.flow < 20.m3ph ? 5.m : 12.m }")
    public static ControlLaw law(Object name, Function<LoopState, ?> rule) {
        return ControlLaw.of(called(name), rule);
    }

    /** Makes the law of remote sensors. */
    @Word(
            help = "Sensors out in the circuit: the pump gives the least head at which each branch has what is wanted.",
            example = "remoteSensors(design, attic: 5.m)",
            choices = "anyBranch: the head wanted across the branch of that name")
    public static ControlLaw remoteSensors(Map<String, ?> wanted, Object design) {
        Map<String, Head> heads = new LinkedHashMap<>();
        wanted.forEach(
                (branch, head) -> heads.put(branch, Wanted.head(head, "the head wanted across '" + branch + "'")));
        return ControlLaw.remoteSensors(ControlWords.point(design, "remoteSensors"), heads);
    }

    /** Makes the law of the neediest valve. */
    @Word(help = NEEDIEST, example = "neediestValve(design)")
    public static ControlLaw neediestValve(Object design) {
        return neediestValve(Map.of(), design);
    }

    /** Makes the law of the neediest valve. */
    @Word(
            help = NEEDIEST,
            example = "neediestValve(design, opening: 90.percent)",
            choices = "opening: how far the neediest valve may stand open; 95 % unless chosen")
    public static ControlLaw neediestValve(Map<String, ?> given, Object design) {
        Choices choices = Choices.of("neediestValve", given, "opening");
        return ControlLaw.neediestValve(
                ControlWords.point(design, "neediestValve"), choices.ratio("opening", Ratio.percent(95)));
    }

    /** Makes the law of trim and respond. */
    @Word(
            help = TRIM,
            example = TRIM_EXAMPLE,
            choices = {
                "minimumHead: the lowest head that is wanted, as a share of the design head or as a head; always needed",
                "opening: a valve requests beyond this stroke; 95 % unless chosen",
                "ignored: how many requests are ignored; 2 unless chosen",
                "trim: how far the head falls at each step, as a share of its span; 2 % unless chosen",
                "respond: how far it rises for each request; 3 % unless chosen",
                "most: how far it rises at most in a step; 7 % unless chosen",
                "every: the time between two steps; 5 min unless chosen"
            })
    public static ControlLaw trimAndRespond(Map<String, ?> given, Object design) {
        Choices choices = Choices.of(
                "trimAndRespond", given, "minimumHead", "opening", "ignored", "trim", "respond", "most", "every");
        Duty duty = ControlWords.point(design, "trimAndRespond");
        TrimAndRespond.Steps steps = TrimAndRespond.Steps.USUAL;
        TrimAndRespond.Requests requests = TrimAndRespond.Requests.USUAL;
        return new TrimAndRespond(
                duty,
                duty.head().times(ControlWords.minimumHead("trimAndRespond", choices, duty)),
                new TrimAndRespond.Steps(
                        choices.ratio("trim", steps.trim()),
                        choices.ratio("respond", steps.respond()),
                        choices.ratio("most", steps.most())),
                new TrimAndRespond.Requests(
                        choices.ratio("opening", requests.opening()), choices.whole("ignored", requests.ignored())),
                choices.quantity("every", Time.KIND, Time.minutes(5)));
    }

    /** Asks for what is missing. */
    @Word(help = TRIM, example = TRIM_EXAMPLE)
    public static ControlLaw trimAndRespond(Object design) {
        return trimAndRespond(Map.of(), design);
    }

    /** Lets pump, law and circuit settle. */
    @Word(help = SETTLE, example = "settle(set, quadratic(design, minimumHead: 35.percent), loop)")
    public static LoopOperation settle(Object set, Object law, Object circuit) {
        return settle(Map.of(), set, law, circuit);
    }

    /** Lets pump, law and circuit settle. */
    @Word(
            help = SETTLE,
            example = "settle(set, neediestValve(design), loop, load: 60.percent, demands: [attic: 0.m3ph])",
            choices = {
                "load: the share of its design flow that is asked of each branch; all of it unless chosen",
                "demands: the flow of single branches by their names",
                "at: the time on the clock, such as '2026-03-02 22:00', for a law that observes it"
            })
    public static LoopOperation settle(Map<String, ?> given, Object set, Object law, Object circuit) {
        Circuit loop = Wanted.object(Circuit.class, circuit, "the circuit of settle");
        Choices choices = Choices.of("settle", given, "load", "demands", "at");
        ControlLaw chosen = Wanted.object(ControlLaw.class, law, "the law of settle");
        return LoopOperation.of(
                choices.has("at") ? chosen.at(time(choices.text("at"))) : chosen,
                ControlWords.set(set, "settle"),
                loop,
                CircuitWords.demands(loop, choices));
    }

    private static LocalDateTime time(String text) {
        try {
            return LocalDateTime.parse(text.strip().replace(' ', 'T'));
        } catch (DateTimeParseException notATime) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "'" + text + "' was given for the choice at: of settle",
                    "A time is a date and a time of day",
                    "Write it as '2026-03-02 22:00'");
        }
    }

    /** Puts limits after a law. */
    @Word(
            help = LIMITED,
            example = LIMITED_EXAMPLE,
            choices = {
                "leastSpeed: speed below which it does not go",
                "greatestSpeed: speed above which it does not go",
                "greatestPower: wire power above which it does not go",
                "leastFlow: flow that the pump keeps moving; a bypass takes what the circuit does not",
                "greatestFlow: flow that the pump moves at most"
            })
    public static ControlLaw limited(Map<String, ?> given, Object law) {
        Choices choices = Choices.of(
                "limited", given, "leastSpeed", "greatestSpeed", "greatestPower", "leastFlow", "greatestFlow");
        return Wanted.object(ControlLaw.class, law, "the law of limited")
                .within(new LawLimits(
                        chosen(choices, "leastSpeed", Speed.KIND),
                        chosen(choices, "greatestSpeed", Speed.KIND),
                        chosen(choices, "greatestPower", Power.KIND),
                        chosen(choices, "leastFlow", Flow.KIND),
                        chosen(choices, "greatestFlow", Flow.KIND)));
    }

    private static <Q extends Quantity<Q>> Optional<Q> chosen(Choices choices, String name, Kind<Q> kind) {
        return choices.has(name) ? Optional.of(choices.quantity(name, kind)) : Optional.empty();
    }

    private static String called(Object name) {
        return Wanted.object(CharSequence.class, name, "the name of a law").toString();
    }
}
