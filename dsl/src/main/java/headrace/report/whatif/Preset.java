package headrace.report.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Positions of controls under a name, to be taken at once.
 *
 * @param name what it is called
 * @param at the index of the position of each control, in order; {@link #STAYS} for one that stays where it is
 */
public record Preset(String name, List<Integer> at) {
    /** In place of a position: the control is not moved. */
    public static final int STAYS = -1;

    /** Keeps the positions from changing. */
    public Preset {
        at = List.copyOf(at);
    }

    /** Returns what stands on its button. */
    public String label() {
        return name.isEmpty() ? name : name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    /** Returns where all controls are once this is taken. */
    public List<Integer> from(List<Integer> now) {
        List<Integer> then = new ArrayList<>(now);
        for (int i = 0; i < at.size(); i++) {
            if (at.get(i) != STAYS) {
                then.set(i, at.get(i));
            }
        }
        return List.copyOf(then);
    }
}
