package headrace.script.java;

import headrace.problem.Refusal;
import headrace.script.ScriptProblem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A choice by name as Java writes it: {@code minimumHead(percent(40))}, where a Groovy script writes
 * {@code minimumHead: 40.percent}. Choices stand behind the other arguments of a word.
 *
 * @param name its name
 * @param value what was chosen
 */
public record Choice(String name, Object value) {
    /** Makes a choice of a name that is itself a word, such as {@code choice("table", "Part loads")}. */
    public static Choice choice(String name, Object value) {
        return new Choice(name, value);
    }

    /** Makes a choice that takes several, such as {@code laws(fixedSpeed(design), constantHead(design))}. */
    public static Choice several(String name, Object first, Object second, Object... more) {
        List<Object> all = new ArrayList<>(Arrays.asList(first, second));
        all.addAll(Arrays.asList(more));
        return new Choice(name, all);
    }

    /**
     * Returns choices as a word takes them.
     *
     * @throws Refusal with {@code WRONG_ARGUMENTS} if one was made twice
     */
    public static Map<String, Object> map(Choice... choices) {
        Map<String, Object> all = new LinkedHashMap<>();
        for (Choice each : choices) {
            if (all.containsKey(each.name())) {
                throw new Refusal(
                        ScriptProblem.WRONG_ARGUMENTS,
                        "The choice " + each.name() + " was made twice",
                        "Each choice of a word is made once or not at all",
                        "Leave one of the two out");
            }
            all.put(each.name(), each.value());
        }
        return all;
    }
}
