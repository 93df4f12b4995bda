package headrace.economics.study;

import headrace.units.Money;

/**
 * What a driver does to the present value, read off the same draws: the mean of the draws in which it is lowest and of
 * those in which it is highest.
 *
 * @param driver the driver
 * @param tenth the value below which it lies in a tenth of the draws, in the unit of the driver
 * @param ninetieth the value above which it lies in a tenth of the draws
 * @param atLow the mean present value of the tenth with the lowest values
 * @param atHigh the mean present value of the tenth with the highest values
 */
public record DriverRank(Driver driver, double tenth, double ninetieth, Money atLow, Money atHigh) {
    /** Returns by how much the two means differ. */
    public Money swing() {
        Money difference = atHigh.minus(atLow);
        return difference.amount() < 0 ? difference.times(-1) : difference;
    }

    @Override
    public String toString() {
        return driver.words() + ": " + atLow + " to " + atHigh;
    }
}
