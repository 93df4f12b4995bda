package headrace.commission;

import headrace.estimate.Spread;
import headrace.units.Amount;
import headrace.units.Head;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Readings beside what was expected, as logarithms of their ratio, and how likely a pattern makes them.
 *
 * <p>Noise is independent; the errors of the head map and of the power map are each one for all readings.
 */
final class Evidence {
    private final List<Item> items;

    private Evidence(List<Item> items) {
        this.items = items;
    }

    /** Where a reading was taken. */
    enum Where {
        SHUT_OFF_HEAD("head, valve closed", true, true),
        CLOSED_POWER("wire power, valve closed", false, true),
        DUTY_HEAD("head, circuit open", true, false),
        DUTY_POWER("wire power, circuit open", false, false);

        final String words;
        final boolean head;
        final boolean closed;

        Where(String words, boolean head, boolean closed) {
            this.words = words;
            this.head = head;
            this.closed = closed;
        }
    }

    /** A reading with what was expected, and what would be if the circuit were closed. */
    record Item(SiteVerdict.Line line, Where where, double read, double expected, double ifClosed, double[] errors) {
        double log() {
            return Math.log(read / expected);
        }
    }

    static Evidence of(CommissioningSheet sheet, List<SiteReading> readings) {
        List<Item> items = new ArrayList<>();
        for (SiteReading reading : readings) {
            CommissioningSheet.Row row = sheet.rowAt(reading.speed());
            head(items, reading, Where.SHUT_OFF_HEAD, reading.shutOffHead(), row);
            power(items, reading, Where.CLOSED_POWER, reading.closedPower(), row);
            head(items, reading, Where.DUTY_HEAD, reading.dutyHead(), row);
            power(items, reading, Where.DUTY_POWER, reading.dutyPower(), row);
        }
        return new Evidence(items);
    }

    private static void head(
            List<Item> items, SiteReading at, Where where, Optional<Head> read, CommissioningSheet.Row row) {
        Spread<Head> expected = where.closed ? row.shutOffHead() : row.dutyHead();
        read.ifPresent(head -> items.add(
                item(at, where, head, expected, row.shutOffHead().value().si())));
    }

    private static void power(
            List<Item> items, SiteReading at, Where where, Optional<Power> read, CommissioningSheet.Row row) {
        Spread<Power> expected = where.closed ? row.closedPower() : row.dutyPower();
        read.ifPresent(power -> items.add(
                item(at, where, power, expected, row.closedPower().value().si())));
    }

    private static <Q extends Amount<Q>> Item item(
            SiteReading at, Where where, Q read, Spread<Q> expected, double ifClosed) {
        double value = expected.value().si();
        double[] errors = {expected.random().si() / value, expected.systematic().si() / value};
        boolean inside = Math.abs(read.si() - value) <= expected.expanded().si();
        SiteVerdict.Line line =
                new SiteVerdict.Line(at.speed(), where.words, read.toString(), expected.toString(), inside);
        return new Item(line, where, read.si(), value, ifClosed, errors);
    }

    List<Item> items() {
        return items;
    }

    /**
     * Returns twice the negative logarithm of the likelihood of the readings, up to a constant, and what of it is
     * misfit.
     *
     * @param means the expected logarithm of each ratio
     * @param loosePower the deviation of one more independent error of each power
     */
    double[] misfit(double[] means, double loosePower) {
        int n = items.size();
        double[][] c = new double[n][n];
        double[] r = new double[n];
        for (int i = 0; i < n; i++) {
            Item one = items.get(i);
            r[i] = one.log() - means[i];
            for (int j = 0; j <= i; j++) {
                Item two = items.get(j);
                c[i][j] = one.where.head == two.where.head ? one.errors[1] * two.errors[1] : 0;
                c[j][i] = c[i][j];
            }
            double own = one.errors[0] * one.errors[0] + LEAST * LEAST;
            c[i][i] += own + (one.where.head ? 0 : loosePower * loosePower);
        }
        return cholesky(c, r);
    }

    /** A reading is never trusted to more than half a per cent, so that a stated error of nothing divides by none. */
    private static final double LEAST = 0.005;

    /** Solves with the lower triangle of c, which it overwrites. */
    private static double[] cholesky(double[][] c, double[] r) {
        double logs = 0;
        double squares = 0;
        for (int i = 0; i < r.length; i++) {
            for (int j = 0; j < i; j++) {
                for (int k = 0; k < j; k++) {
                    c[i][j] -= c[i][k] * c[j][k];
                }
                c[i][j] /= c[j][j];
                c[i][i] -= c[i][j] * c[i][j];
                r[i] -= c[i][j] * r[j];
            }
            c[i][i] = Math.sqrt(c[i][i]);
            r[i] /= c[i][i];
            logs += 2 * Math.log(c[i][i]);
            squares += r[i] * r[i];
        }
        return new double[] {squares + logs, squares};
    }
}
