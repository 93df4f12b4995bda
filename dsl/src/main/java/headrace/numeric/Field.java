package headrace.numeric;

/** A value at every point of a part of the plane, such as an efficiency over flow and speed. */
@FunctionalInterface
public interface Field {
    /** Returns the value at a point that the field covers. */
    double at(double x, double y);

    /** Returns whether the field has a value at a point. Never asked for a value elsewhere. */
    default boolean covers(double x, double y) {
        return true;
    }
}
