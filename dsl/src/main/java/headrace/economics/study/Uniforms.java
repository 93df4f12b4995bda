package headrace.economics.study;

import headrace.numeric.RandomStreams;

/** Numbers spread evenly from 0 to below 1, a row for each driver. */
interface Uniforms {
    /** Fills the beginning of an array with numbers of a row. */
    void fill(int row, int from, int count, double[] into);

    /** Returns the numbers that a seed stands for, a stream for each row. */
    static Uniforms ofSeed(long seed) {
        RandomStreams streams = RandomStreams.of(seed);
        return (row, from, count, into) -> streams.fillUniform(row, from, into, count);
    }

    /** Returns numbers that are given. */
    static Uniforms of(double[][] rows) {
        return (row, from, count, into) -> System.arraycopy(rows[row], from, into, 0, count);
    }
}
