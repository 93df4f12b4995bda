package headrace.economics.study;

import headrace.economics.EconomicsProblem;
import headrace.energy.Baseline;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * A payback whose drivers are not known exactly.
 *
 * <dl>
 *   <dt>Units
 *   <dd>One currency; each driver in its own unit.
 *   <dt>Limits
 *   <dd>Drivers are drawn independently but for the price of energy and its rise. Both baselines are followed in every
 *       draw: throttling at constant speed, and fixed design speed. Upkeep and first cost are the same against both.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_SPREAD} or {@code IMPOSSIBLE_TERM}.
 *   <dt>Source
 *   <dd>Method: JCGM 101:2008. The spreads are the user's.
 * </dl>
 *
 * @param currency the currency, or empty
 * @param spreads how each driver spreads
 * @param model what all draws have in common
 * @param notes what the central values had to say
 * @param source what the central values rest on
 */
public record PaybackStudy(String currency, Map<Driver, Spread> spreads, PaybackModel model, Notes notes, Basis source)
        implements Traced {
    private static final int MOST_DRAWS = 10_000_000;
    private static final int POLLED = 8;

    /** Keeps the spreads from changing; refuses a driver without one. */
    public PaybackStudy {
        EnumMap<Driver, Spread> all = new EnumMap<>(Driver.class);
        all.putAll(spreads);
        for (Driver driver : Driver.values()) {
            if (!all.containsKey(driver)) {
                throw new Refusal(
                        EconomicsProblem.IMPOSSIBLE_SPREAD,
                        "Asked for paybacks without the " + driver.words(),
                        "Every driver needs a value or a spread",
                        "State it, as a fixed value where it is known");
            }
        }
        boolean sound =
                all.get(Driver.FIRST_COST).low() > 0 && all.get(Driver.DISCOUNT).low() > -1;
        if (!sound) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_SPREAD,
                    "Asked for paybacks with a first cost of " + all.get(Driver.FIRST_COST) + " and a discount rate of "
                            + all.get(Driver.DISCOUNT),
                    "The first cost must be above 0 and the discount rate above -100 % in every draw",
                    "State spreads that stay there, such as a triangle");
        }
        spreads = Collections.unmodifiableMap(all);
    }

    /** Returns a study of these spreads. */
    public static PaybackStudy of(String currency, Map<Driver, Spread> spreads, PaybackModel model) {
        return new PaybackStudy(currency, spreads, model, Notes.NONE, Basis.NONE);
    }

    /** Returns this study with another spread of a driver. */
    public PaybackStudy with(Driver driver, Spread spread) {
        Map<Driver, Spread> all = new EnumMap<>(spreads);
        all.put(driver, spread);
        return new PaybackStudy(currency, all, model, notes, source);
    }

    /** Returns this study with a part of the same years and other common terms. */
    public PaybackStudy with(PaybackModel other) {
        return new PaybackStudy(currency, spreads, other, notes, source);
    }

    /**
     * Draws from a seed; the same seed gives the same numbers on every machine.
     *
     * @param draws how many draws, 100 to 10 million
     */
    public PaybackRange draw(long seed, int draws) {
        if (draws < 100 || draws > MOST_DRAWS) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TERM,
                    "Asked for " + draws + " draws",
                    "A study draws 100 to " + MOST_DRAWS + " times",
                    "100 000 draws give a probability to a few tenths of a per cent");
        }
        return new PaybackRange(this, draws, Uniforms.ofSeed(seed), "seed " + seed + ", " + draws + " draws");
    }

    /**
     * Draws from numbers that are given.
     *
     * @param uniforms numbers spread evenly from 0 to below 1, a row for each driver in the order of {@link Driver};
     *     the first two rows make the pair of normal numbers for the price and its rise
     */
    public PaybackRange over(double[][] uniforms) {
        int rows = Driver.values().length;
        if (uniforms.length != rows) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TERM,
                    "Asked for draws from " + uniforms.length + " rows of numbers",
                    "There must be " + rows + ", one for each driver",
                    "Give them in the order of the drivers");
        }
        return new PaybackRange(
                this, uniforms[0].length, Uniforms.of(uniforms), uniforms[0].length + " draws from given numbers");
    }

    /** Follows all draws and returns simple and discounted payback, present value and rate, against both baselines. */
    double[][][] followed(int draws, Uniforms uniforms) {
        double[][][] results = new double[2][4][draws];
        DriverBlock drivers = new DriverBlock(spreads, model.correlation(), uniforms);
        PaybackBlock block = new PaybackBlock(model);
        try (Steps steps = Work.steps("drawing paybacks", draws)) {
            for (int from = 0; from < draws; from += DriverBlock.SIZE) {
                if (from / DriverBlock.SIZE % POLLED == 0) {
                    steps.at(from);
                }
                int count = Math.min(DriverBlock.SIZE, draws - from);
                drivers.draw(from, count);
                for (int baseline = 0; baseline < 2; baseline++) {
                    block.follow(drivers, baseline == 1);
                    double[][] into = results[baseline];
                    System.arraycopy(block.simple, 0, into[0], from, count);
                    System.arraycopy(block.discounted, 0, into[1], from, count);
                    System.arraycopy(block.value, 0, into[2], from, count);
                    System.arraycopy(block.rate, 0, into[3], from, count);
                }
            }
            steps.at(draws);
        }
        return results;
    }

    /** Returns the values of a driver in all draws. */
    double[] drawn(Driver driver, int draws, Uniforms uniforms) {
        double[] all = new double[draws];
        DriverBlock drivers = new DriverBlock(spreads, model.correlation(), uniforms);
        try (Steps steps = Work.steps("drawing " + driver.words(), draws)) {
            for (int from = 0; from < draws; from += DriverBlock.SIZE) {
                if (from / DriverBlock.SIZE % POLLED == 0) {
                    steps.at(from);
                }
                int count = Math.min(DriverBlock.SIZE, draws - from);
                drivers.draw(from, count);
                System.arraycopy(drivers.of(driver), 0, all, from, count);
            }
            steps.at(draws);
        }
        return all;
    }

    static String words(int baseline) {
        return (baseline == 0 ? Baseline.CONSTANT_SPEED : Baseline.FIXED_DESIGN_SPEED).words();
    }

    @Override
    public Basis basis() {
        Basis basis = source.with("common to all draws: " + model);
        for (Map.Entry<Driver, Spread> each : spreads.entrySet()) {
            String unit = each.getKey().unit().isEmpty()
                    ? ""
                    : ", in " + each.getKey().unit();
            basis = basis.with(each.getKey().words() + ": " + each.getValue() + unit);
        }
        return basis;
    }

    @Override
    public String toString() {
        return "paybacks over " + model;
    }
}
