package headrace.kernel.headless.page;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What the results of a page rest on, each thing once. A result that is computed from another rests on all that the
 * other does; on a page it names only what it adds, and the foot names everything.
 */
final class BasisLines {
    private final Set<String> all = new LinkedHashSet<>();

    /** Takes the basis of one result, and returns what no earlier result has named. */
    List<String> added(List<String> basis) {
        List<String> fresh = new ArrayList<>();
        for (String line : basis) {
            if (all.add(line)) {
                fresh.add(line);
            }
        }
        return fresh;
    }

    /** Returns everything that any result has named, in order. */
    List<String> all() {
        return List.copyOf(all);
    }
}
