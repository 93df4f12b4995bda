package headrace.benchmark;

import headrace.curve.EfficiencyOverSpeed;
import headrace.data.log.LogFile;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.numeric.StraightLine;
import headrace.pump.PumpSet;
import headrace.trend.Change.Kind;
import headrace.trend.Channel;
import headrace.trend.CleaningRules;
import headrace.trend.Drift;
import headrace.trend.HourSeries;
import headrace.trend.LoggedLoad;
import headrace.trend.MapCheck;
import headrace.trend.MapPower;
import headrace.trend.TrendLog;
import headrace.units.Flow;
import headrace.units.Power;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * W9: a million rows of a trend log, from the file to the verdict: read, cleaned, its load, power and head held against
 * the pump map, the residual watched for drift. The file is written anew before it is timed.
 */
final class TrendLogs implements Workload {
    private static final Instant START = Instant.parse("2024-01-01T00:00:00Z");
    private static final Instant REFERENCE = START.plusSeconds(525_600L * 60);
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private final Path file;
    private final PumpSet set;
    private final CleaningRules rules;

    private TrendLog clean;
    private LoggedLoad load;
    private MapCheck check;
    private StraightLine law;
    private Drift drift;

    TrendLogs() {
        try {
            file = Files.createTempFile("trend-log", ".csv");
            file.toFile().deleteOnExit();
            TrendLogText.write(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Power rated = Power.kilowatts(11);
        DriveTrain train = DriveTrain.of(Motor.ofClass(rated, 3, 4), Drive.reference(rated), LossModel.all().get(0));
        set = PumpSet.of(Inputs.pump().withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity()), train);
        rules = new CleaningRules(20, Set.of(Channel.FLOW), Map.of())
                .with(Channel.POWER, 0, INFINITE)
                .with(Channel.HEAD, -INFINITE, 40)
                .with(Channel.FLOW, 0, INFINITE);
    }

    @Override
    public String name() {
        return "W9a numpy, whole job";
    }

    @Override
    public void call() {
        clean = LogFile.read(file, set).cleaned(rules);
        load = LoggedLoad.of(clean, Flow.cubicMetresPerHour(80));
        check = MapCheck.of(clean, set, MapPower.SHAFT, REFERENCE);
        law = check.systemLine().orElseThrow();
        drift = Drift.withLimit(check.residual(Channel.HEAD).orElseThrow(), 20);
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        cleaning(out);
        load(out);
        map(out);
        drift(out);
        return out;
    }

    private void cleaning(Map<String, Object> out) {
        int duplicates = clean.rows(Kind.REPEATED_TIME);
        int blank = clean.rows(Kind.EMPTY_CELL);
        int bad = clean.rows(Kind.IMPOSSIBLE_VALUE);
        int stuck = clean.rows(Kind.STUCK_READING);
        out.put("rows_read", clean.count() + duplicates + blank + bad + stuck);
        out.put("duplicates", duplicates);
        out.put("gaps", clean.times(Kind.GAP));
        out.put("missing_minutes", clean.rows(Kind.GAP));
        out.put("blank_rows", blank);
        out.put("bad_rows", bad);
        out.put("stuck_runs", clean.times(Kind.STUCK_READING));
        out.put("stuck_rows", stuck);
        out.put("rows_clean", clean.count());
    }

    private void load(Map<String, Object> out) {
        List<LoggedLoad.Bin> bins = load.bins();
        double[] edges = new double[21];
        for (int i = 0; i < 20; i++) {
            edges[i] = bins.get(i).from().value();
        }
        edges[20] = bins.get(19).to().value();
        ToDoubleFunction<LoggedLoad.Bin> kilowatts = bin -> bin.power().toKilowatts();
        for (int k : new int[] {0, 5, 10, 19}) {
            out.put("edges[" + k + "]", edges[k]);
            out.put("bin_load[" + k + "]", bins.get(k).load().value());
            out.put("bin_kW[" + k + "]", kilowatts.applyAsDouble(bins.get(k)));
        }
        out.put("sum_edges", Inputs.sum(edges, 1));
        out.put("sum_bin_load", sum(bins, bin -> bin.load().value()));
        out.put("sum_bin_kW", sum(bins, kilowatts));
        out.put("bin_rows", text(bins.stream().mapToInt(LoggedLoad.Bin::rows).toArray()));
        out.put("hist5", text(Arrays.copyOf(load.cells(), 24)));
        out.put("kWh", load.energy().toKilowattHours());
    }

    /** Whole numbers stay whole in the text of the results. */
    private static String text(int[] counts) {
        return Arrays.toString(counts);
    }

    private static double sum(List<LoggedLoad.Bin> bins, ToDoubleFunction<LoggedLoad.Bin> of) {
        return Inputs.sum(bins.stream().mapToDouble(of).toArray(), 1);
    }

    private void map(Map<String, Object> out) {
        StraightLine line = check.powerLine();
        out.put("f_head", check.headFactor().orElseThrow().value());
        out.put("P_c0", line.intercept() / 1000);
        out.put("P_c1", line.slope());
        out.put("P_se0", line.interceptError() / 1000);
        out.put("P_se1", line.slopeError());
        out.put("law_Hm", law.intercept());
        out.put("law_k", law.slope() / (3600.0 * 3600));
        out.put("cv_rmse", check.quality().cvRmse().value());
        out.put("nmbe_after", check.biasAfter().orElseThrow().value());
    }

    private void drift(Map<String, Object> out) {
        HourSeries series = drift.series();
        int reference = series.reference();
        double low = 0;
        double high = 0;
        for (int i = 0; i < reference; i++) {
            low = Math.max(low, drift.lowAt(i));
            high = Math.max(high, drift.highAt(i));
        }
        out.put("hours_used", series.count());
        out.put("ref_hours", reference);
        out.put("resid_mean", series.mean());
        out.put("resid_std", series.deviation());
        out.put("alarm_low_hour", drift.lowAlarm().map(this::hour).orElse(-1L));
        out.put("alarm_high_hour", drift.highAlarm().map(this::hour).orElse(-1L));
        out.put("max_cusum_low_ref", low);
        out.put("max_cusum_high_ref", high);
        out.put("final_cusum_low", drift.lowAt(series.count() - 1));
    }

    private long hour(Drift.Alarm alarm) {
        return alarm.hour() - START.getEpochSecond() / 3600;
    }
}
