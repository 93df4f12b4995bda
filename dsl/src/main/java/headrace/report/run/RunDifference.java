package headrace.report.run;

import headrace.report.run.RunRecord.Kind;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What changed from one run to another, and what that moved.
 *
 * @param before the earlier run
 * @param after the later one
 * @param changes all that is not the same, in the order of the records
 */
public record RunDifference(RunRecord before, RunRecord after, List<Change> changes) {
    private static final Pattern NUMBER =
            Pattern.compile("([-+]?\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?)(.*)", Pattern.DOTALL);

    /** Keeps the changes from changing. */
    public RunDifference {
        changes = List.copyOf(changes);
    }

    /**
     * One thing that is not the same.
     *
     * @param kind what it is
     * @param what what it speaks of
     * @param before what it was, if it was there
     * @param after what it is, if it is there
     */
    public record Change(Kind kind, String what, Optional<String> before, Optional<String> after) {
        /** Returns by what share a number moved, where it is a number of the same unit in both. */
        public OptionalDouble moved() {
            if (before.isEmpty() || after.isEmpty()) {
                return OptionalDouble.empty();
            }
            Matcher one = NUMBER.matcher(before.get());
            Matcher other = NUMBER.matcher(after.get());
            if (!one.matches() || !other.matches() || !one.group(2).equals(other.group(2))) {
                return OptionalDouble.empty();
            }
            double was = Double.parseDouble(one.group(1));
            double is = Double.parseDouble(other.group(1));
            return was == 0 ? OptionalDouble.empty() : OptionalDouble.of(is / was - 1);
        }
    }

    /** Compares two runs. */
    public static RunDifference between(RunRecord before, RunRecord after) {
        List<Change> changes = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            Map<String, String> was = before.of(kind);
            Map<String, String> is = after.of(kind);
            Set<String> all = new LinkedHashSet<>(was.keySet());
            all.addAll(is.keySet());
            for (String what : all) {
                if (!Objects.equals(was.get(what), is.get(what))) {
                    changes.add(new Change(
                            kind, what, Optional.ofNullable(was.get(what)), Optional.ofNullable(is.get(what))));
                }
            }
        }
        return new RunDifference(before, after, changes);
    }

    /** Returns the changes of a kind. */
    public List<Change> of(Kind kind) {
        return changes.stream().filter(change -> change.kind == kind).toList();
    }

    /** Returns whether both runs are the same to the last bit that is recorded. */
    public boolean isNothing() {
        return changes.isEmpty();
    }

    @Override
    public String toString() {
        if (isNothing()) {
            return "'" + before.name() + "' and '" + after.name() + "' are the same";
        }
        return "from '" + before.name() + "' to '" + after.name() + "': "
                + of(Kind.INPUT).size() + " inputs, " + of(Kind.CHOICE).size() + " choices and "
                + of(Kind.RESULT).size() + " results changed";
    }
}
