package headrace.script;

import groovy.lang.Closure;
import groovy.lang.Range;
import headrace.problem.Refusal;
import headrace.report.whatif.Control;
import headrace.report.whatif.Preset;
import headrace.report.whatif.WhatIf;
import headrace.units.Quantity;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Words that move a calculation by controls. */
public final class WhatIfWords implements Words {
    private static final String HELP =
            "A calculation that is moved by controls: a range becomes a slider, a list a choice, true or false a"
                    + " switch. The block takes their values in the same order; its last value is drawn: a map of results"
                    + " behind tabs, a list of results side by side. Up to four controls. In Java the function takes the"
                    + " one value, or all of them as a list.";
    private static final String EXAMPLE = "whatIf(minimumHead: 20.percent..60.percent, flow: 13.m3ph..52.m3ph)"
            + " { m, q -> steadyState(set, quadratic(design, minimumHead: m), q) }";
    private static final String VARIED =
            Word.ANY_NAME + ": a range, a list, true or false, or a slider, in the order of the"
                    + " block; or a preset, which becomes a button";
    private static final int[] POSITIONS = {41, 11, 5, 3};

    @Override
    public String subject() {
        return "What if";
    }

    /**
     * Moves a calculation by controls.
     *
     * @param varied each thing that is varied, with its range, list, switch or slider
     * @param calculation takes their values in the same order
     */
    @Word(help = HELP, example = EXAMPLE, choices = VARIED)
    public static WhatIf whatIf(Map<String, ?> varied, Closure<?> calculation) {
        return whatIf(varied, values -> calculation.call(values.toArray()));
    }

    private static WhatIf whatIf(Map<String, ?> varied, Function<List<Object>, Object> calculation) {
        Map<String, Object> moved = new LinkedHashMap<>(varied);
        moved.values().removeIf(Positions.class::isInstance);
        int positions = POSITIONS[Math.max(0, Math.min(POSITIONS.length, moved.size()) - 1)];
        Map<String, Control> controls = new LinkedHashMap<>();
        moved.forEach((name, over) -> controls.put(name, control(spoken(name), over, positions)));
        WhatIf whatIf = WhatIf.of(List.copyOf(controls.values()), calculation);
        List<Preset> presets = new ArrayList<>();
        varied.forEach((name, over) -> {
            if (over instanceof Positions named) {
                presets.add(preset(spoken(name), named, controls));
            }
        });
        return whatIf.withPresets(presets);
    }

    /** Names positions that a button takes at once. */
    @Word(
            help =
                    "Positions of controls for whatIf, taken at once by a button of that name; a control that is not named"
                            + " stays where it is.",
            example = "whatIf(load: 20.percent..100.percent, night: preset(load: 30.percent)) { l -> \"load $l\" }",
            choices = Word.ANY_NAME + ": a position of the control of that name; the nearest of a slider")
    public static Positions preset(Map<String, ?> at) {
        return new Positions(at);
    }

    /** Makes a range for a slider. */
    @Word(
            help = "A slider for whatIf, from one value to another, with its number of positions and its start.",
            example = "slider(20.percent, 60.percent, positions: 9, start: 35.percent)",
            choices = {
                "positions: how many positions, both ends counted; what suits the number of controls unless chosen",
                "start: where it begins, at the nearest position; in the middle unless chosen"
            })
    public static Slider slider(Map<String, ?> given, Object from, Object to) {
        Choices choices = Choices.of("slider", given, "positions", "start");
        return new Slider(from, to, choices.whole("positions", 0), given.get("start"));
    }

    /** Makes a range for a slider. */
    @Word(help = "A slider for whatIf, from one value to another.", example = "slider(20.percent, 60.percent)")
    public static Slider slider(Object from, Object to) {
        return slider(Map.of(), from, to);
    }

    /**
     * A slider that has no name yet.
     *
     * @param from one end
     * @param to the other
     * @param positions how many positions; 0 for what suits
     * @param start where it begins; null for the middle
     */
    public record Slider(Object from, Object to, int positions, Object start) {
        @Override
        public String toString() {
            return "slider from " + from + " to " + to + (positions == 0 ? "" : ", " + positions + " positions")
                    + (start == null ? "" : ", begins at " + start);
        }
    }

    /**
     * Positions that have no controls yet.
     *
     * @param at the value of each control that is moved, by its name in the script
     */
    public record Positions(Map<String, ?> at) {
        /** Keeps the positions from changing. */
        public Positions {
            at = Collections.unmodifiableMap(new LinkedHashMap<>(at));
        }

        @Override
        public String toString() {
            List<String> named = at.entrySet().stream()
                    .map(each -> spoken(each.getKey()) + " at " + each.getValue())
                    .toList();
            return "preset: " + String.join(", ", named);
        }
    }

    private static Preset preset(String name, Positions named, Map<String, Control> controls) {
        List<String> names = List.copyOf(controls.keySet());
        Integer[] at = new Integer[names.size()];
        Arrays.fill(at, Preset.STAYS);
        named.at().forEach((control, value) -> {
            int number = names.indexOf(control);
            if (number < 0) {
                throw new Refusal(
                        ScriptProblem.UNKNOWN_CHOICE,
                        "The preset '" + name + "' of whatIf names '" + control + "'",
                        "There are the controls " + String.join(", ", names),
                        "Name one of these, with the position that it takes");
            }
            at[number] = controls.get(control).indexOf(value);
        });
        return new Preset(name, List.of(at));
    }

    /** Returns a name of a script as it is spoken: {@code minimumHead} is minimum head. */
    private static String spoken(String name) {
        return Pattern.compile("(?<=\\p{Lower})(?=\\p{Upper}\\p{Lower})|(?<=\\p{Lower}{2})(?=\\p{Upper})")
                .splitAsStream(name)
                .map(word -> word.matches("\\p{Upper}\\p{Lower}*") ? word.toLowerCase(Locale.ROOT) : word)
                .collect(Collectors.joining(" "));
    }

    private static Control control(String name, Object over, int positions) {
        if (over instanceof Slider slider) {
            return slider(name, slider, slider.positions() == 0 ? positions : slider.positions());
        }
        if (over instanceof Boolean start) {
            return Control.onOff(name, start);
        }
        if (over instanceof Range<?> range
                && range.getFrom() instanceof Integer from
                && range.getTo() instanceof Integer to) {
            List<Object> whole = range.size() <= positions ? new ArrayList<>(range) : whole(from, to, positions);
            return new Control(name, Control.Form.SLIDER, whole, whole.size() / 2);
        }
        if (over instanceof Range<?> range) {
            return slider(name, new Slider(range.getFrom(), range.getTo(), 0, null), positions);
        }
        if (over instanceof List<?> list) {
            return Control.choice(name, list);
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                Described.value(over) + " was given as what '" + name + "' of whatIf goes over",
                "It goes over a range such as 20.percent..60.percent, a list, true or false, or a slider",
                "Give one of these");
    }

    /** Returns so many of the whole numbers from one to another, as evenly as they lie: a block may count by them. */
    private static List<Object> whole(int from, int to, int positions) {
        double step = ((double) to - from) / (positions - 1);
        return IntStream.range(0, positions)
                .mapToObj(i -> (Object) (int) Math.round(from + i * step))
                .toList();
    }

    private static Control slider(String name, Slider slider, int positions) {
        if (slider.from() instanceof Number from && slider.to() instanceof Number to) {
            Object middle = (from.doubleValue() + to.doubleValue()) / 2;
            if (!((slider.start() == null ? middle : slider.start()) instanceof Number start)) {
                throw new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        Described.value(slider.start()) + " was given as the start of the slider '" + name + "'",
                        "It goes from " + from + " to " + to + ", which are numbers",
                        "Give a number between them");
            }
            return numbers(name, slider, start.doubleValue(), positions);
        }
        if (slider.from() instanceof Quantity<?> from) {
            return quantities(name, from, slider, positions);
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                Described.value(slider.from()) + " was given as the end of the slider '" + name + "'",
                "A slider goes over numbers or quantities",
                "Give two numbers, or two quantities of one kind such as 20.percent and 60.percent");
    }

    /** Whole ends have whole numbers between them where the steps are whole, and no more positions than that. */
    private static Control numbers(String name, Slider slider, double start, int positions) {
        double from = ((Number) slider.from()).doubleValue();
        double to = ((Number) slider.to()).doubleValue();
        boolean whole = slider.from() instanceof Integer && slider.to() instanceof Integer;
        int most = whole && slider.positions() == 0 ? (int) Math.min(positions, Math.abs(to - from) + 1) : positions;
        Control control = Control.slider(name, from, to, most, start);
        return whole && (to - from) % (most - 1) == 0
                ? new Control(name, Control.Form.SLIDER, whole((int) from, (int) to, most), control.start())
                : control;
    }

    private static <Q extends Quantity<Q>> Control quantities(
            String name, Quantity<Q> from, Slider slider, int positions) {
        String place = "the end of the slider '" + name + "'";
        Q low = Wanted.quantity(from.kind(), from, place);
        Q high = Wanted.quantity(from.kind(), slider.to(), place);
        Q start = slider.start() == null
                ? from.kind().make().apply((low.si() + high.si()) / 2)
                : Wanted.quantity(from.kind(), slider.start(), "the start of the slider '" + name + "'");
        return Control.slider(name, low, high, positions, start);
    }
}
