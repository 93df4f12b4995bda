package headrace.energy.load;

import headrace.problem.Refusal;
import headrace.record.Basis;
import java.time.LocalDateTime;
import java.util.Arrays;

/** A typical day for each month: twelve times twenty-four loads, laid over every day of a year without a leap day. */
public final class MonthHourLoad {
    private static final int MONTHS = 12;
    private static final int HOURS = 24;

    /** Any year without a leap day: its days of the week are not used. */
    private static final LocalDateTime START = LocalDateTime.of(2025, 1, 1, 0, 0);

    private MonthHourLoad() {}

    /**
     * Returns the year of twelve typical days.
     *
     * @param name what it is called
     * @param shares the share of design load, twelve rows from January on with 24 hours each
     * @param basis where they come from
     * @throws Refusal with {@code IMPOSSIBLE_YEAR}, and as {@link HourlyLoad#of}
     */
    public static HourlyLoad of(String name, double[][] shares, Basis basis) {
        if (shares.length != MONTHS || Arrays.stream(shares).anyMatch(row -> row.length != HOURS)) {
            throw new Refusal(
                    LoadProblem.IMPOSSIBLE_YEAR,
                    "Asked for the year '" + name + "' from " + shares.length + " typical days",
                    "There are twelve, from January on, of 24 hours each",
                    "Give every month its 24 loads");
        }
        double[] year = new double[HourlyLoad.YEARS.get(0)];
        for (int i = 0; i < year.length; i++) {
            LocalDateTime at = START.plusHours(i);
            year[i] = shares[at.getMonthValue() - 1][at.getHour()];
        }
        return HourlyLoad.of(name, START, year, basis.with("one typical day for every day of a month"));
    }
}
