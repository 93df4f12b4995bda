package headrace.economics.study;

import headrace.numeric.RandomStreams;
import java.util.Arrays;
import java.util.Map;

/** The drivers of a block of draws: as many as stay close to the processor while they are used. */
final class DriverBlock {
    static final int SIZE = 512;

    private static final double MIDDLE = 0.5;
    private static final int ROWS = Driver.values().length;

    private final double[][] values = new double[ROWS][SIZE];
    private final double[] uniform = new double[SIZE];
    private final double[] other = new double[SIZE];
    private final Spread[] spreads = new Spread[ROWS];
    private final double correlation;
    private final Uniforms uniforms;

    DriverBlock(Map<Driver, Spread> given, double correlation, Uniforms uniforms) {
        for (Driver driver : Driver.values()) {
            spreads[driver.ordinal()] = given.get(driver);
        }
        this.correlation = correlation;
        this.uniforms = uniforms;
    }

    /** Draws the drivers of a block. */
    void draw(int from, int count) {
        drawPrices(from, count);
        for (int row = 2; row < ROWS; row++) {
            fill(row, from, count, uniform);
            spreads[row].fill(uniform, values[row]);
        }
    }

    /** A last block that is not full is filled up with draws in the middle, which nobody looks at. */
    private void fill(int row, int from, int count, double[] into) {
        uniforms.fill(row, from, count, into);
        Arrays.fill(into, count, SIZE, MIDDLE);
    }

    double[] of(Driver driver) {
        return values[driver.ordinal()];
    }

    /**
     * Price and rise come from one pair of normal numbers, so that they can be correlated: {@code z₁} and {@code ρ·z₁ +
     * √(1−ρ²)·z₂}.
     */
    private void drawPrices(int from, int count) {
        fill(0, from, count, uniform);
        fill(1, from, count, other);
        double rest = Math.sqrt(1 - correlation * correlation);
        RandomStreams.makeNormal(uniform, other, SIZE);
        for (int i = 0; i < SIZE; i++) {
            other[i] = correlation * uniform[i] + rest * other[i];
        }
        spreads[0].fillFromNormal(uniform, values[0]);
        spreads[1].fillFromNormal(other, values[1]);
    }
}
