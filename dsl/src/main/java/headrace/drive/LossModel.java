package headrace.drive;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import java.util.List;

/**
 * A named way to say what motor and drive lose at part load and at reduced speed.
 *
 * <p>The model decides whether a minimum head passes a part-load rule; so it has a name, the name is in every result,
 * and results of two models can be put side by side.
 */
public interface LossModel {
    /** Returns its name, such as {@code separate}. */
    String name();

    /** Returns its formula and source in a sentence. */
    String statement();

    /**
     * Returns whether the efficiency follows load and speed; a model that keeps it constant says nothing of part load.
     */
    boolean followsLoad();

    /** Returns whether losses that are declared for a drive at several points are used; else its reference loss is. */
    default boolean usesDeclaredLosses() {
        return false;
    }

    /** Returns what is to be said of the model whatever the load, such as how well it fits its points. */
    default Notes notes() {
        return Notes.NONE;
    }

    /** Returns the losses of a motor with a drive. */
    LossCurve withDrive(Motor motor, Drive drive);

    /** Returns the losses of the same motor on the mains. */
    LossCurve onMains(Motor motor);

    /** Returns the models that ship with this package, the one to use first at the front. */
    static List<LossModel> all() {
        return List.of(SeparateLosses.ASSUMED, new CombinedLosses(), new ConstantEfficiency(), new HandbookLosses());
    }

    /** Returns the models of those that are put beside each other where nobody chose: they follow load and speed. */
    static List<LossModel> compared() {
        return List.of(SeparateLosses.ASSUMED, new CombinedLosses());
    }

    /**
     * Returns the model of a name.
     *
     * @throws Refusal with {@code UNKNOWN_LOSS_MODEL} if there is none
     */
    static LossModel named(String name) {
        return all().stream()
                .filter(model -> model.name().equals(name.strip()))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        DriveProblem.UNKNOWN_LOSS_MODEL,
                        "Asked for the loss model '" + name + "'",
                        "There are "
                                + String.join(
                                        ", ",
                                        all().stream().map(LossModel::name).toList()),
                        "Use one of these names"));
    }
}
