package headrace.record;

import headrace.problem.Notes;

/** A result that says what it rests on and which limits it touched. */
public interface Traced {
    /** Returns the limits that were touched and the values that were assumed. */
    Notes notes();

    /** Returns the inputs and the choices that the result rests on. */
    Basis basis();
}
