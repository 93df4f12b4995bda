package headrace.estimate;

import headrace.estimate.RootSearch.At;

/** Reads a map backwards for a block of draws. */
interface DrawnFlows {
    /** Solves the first draws of the block. */
    void solve(int count);

    /** Returns the flows in m³/s; infinite where a draw fell off the map, minus below and plus above it. */
    double[] flows();

    /** Returns the heads in m. */
    double[] heads();

    /** Returns how many draws of the last block can mean another flow too. */
    int twoFlows();

    /** Returns the way that serves a method and a map. */
    static DrawnFlows of(FlowEstimate estimate, At at, DrawnInputs inputs) {
        PowerMap map = estimate.estimator().map();
        if (map instanceof ThroughLosses set
                && (estimate.method() == Method.POWER_AND_SPEED || estimate.method() == Method.TORQUE_AND_SPEED)) {
            return new DrawnThroughLosses(set, at, inputs, estimate.method() == Method.TORQUE_AND_SPEED);
        }
        return new DrawnSingly(estimate, at, inputs);
    }
}
