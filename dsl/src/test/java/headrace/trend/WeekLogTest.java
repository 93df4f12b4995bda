package headrace.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.data.log.LogFile;
import headrace.report.Block;
import headrace.report.Reports;
import headrace.report.Shown;
import headrace.trend.Change.Kind;
import headrace.units.Temperature;
import headrace.units.Time;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The demo log: made as it says, read, cleaned, judged and shown. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class WeekLogTest {
    private static final Instant NOON = Instant.parse("2026-06-05T12:00:00Z");

    private static TrendLog clean() {
        return LogFile.read(WeekLog.FILE, InventedLog.set()).cleaned(CleaningRules.of(InventedLog.set()));
    }

    @Test
    void the_file_is_what_its_seed_makes() throws IOException {
        assertEquals(WeekLog.text(), Files.readString(WeekLog.FILE));
    }

    /** 1008 rows and one twice; 12 in the gap, 24 stuck, 3 texts, an empty cell, a spike. */
    @Test
    void each_blemish_that_was_put_in_is_found_and_no_other() {
        TrendLog clean = clean();
        assertEquals(1008 - 12 - 24 - 3 - 1 - 1, clean.count());
        assertEquals(1, clean.rows(Kind.REPEATED_TIME));
        assertEquals(12, clean.rows(Kind.GAP));
        assertEquals(24, clean.rows(Kind.STUCK_READING));
        assertEquals(3, clean.rows(Kind.TEXT_FOR_NUMBER));
        assertEquals(1, clean.rows(Kind.EMPTY_CELL));
        assertEquals(1, clean.rows(Kind.IMPOSSIBLE_VALUE));
        assertEquals(6, clean.changes().size());
    }

    @Test
    void the_strainer_is_found_with_its_size_and_its_hour() {
        MapCheck check = MapCheck.of(clean(), InventedLog.set(), MapPower.WIRE, NOON);
        FaultTable table = FaultTable.of(check);
        assertEquals(1, table.findings().size());
        FaultTable.Row found = table.findings().get(0);
        assertEquals(Condition.CLOGGED, found.condition());
        assertEquals(0.35, found.size().value(), found.uncertainty().value() + 0.01);
        MapCheck earlier = MapCheck.of(clean(), InventedLog.set(), MapPower.WIRE, NOON.minusSeconds(36 * 3600));
        Drift.Alarm alarm = Drift.withFalseAlarms(
                        earlier.residual(Channel.PLANT_HEAD).orElseThrow(), 0.2)
                .alarm()
                .orElseThrow();
        assertEquals(NOON.getEpochSecond() / 3600.0, alarm.began(), 2);
    }

    @Test
    void everything_made_of_it_shows_itself_within_a_hundred_columns() {
        TrendLog clean = clean();
        MapCheck check = MapCheck.of(clean, InventedLog.set(), MapPower.WIRE, NOON);
        PowerBaseline baseline = PowerBaseline.byFlow(clean.between(clean.start(), NOON));
        OutdoorYear year = new OutdoorYear(List.of(
                new OutdoorYear.Bin(Temperature.celsius(12), Time.hours(6000)),
                new OutdoorYear.Bin(Temperature.celsius(22), Time.hours(2760))));
        List<Object> results = List.of(
                LogFile.read(WeekLog.FILE, InventedLog.set()),
                clean,
                LoggedLoad.of(clean, InventedLog.DESIGN),
                YearLoad.of(clean, InventedLog.DESIGN, year, 1),
                baseline,
                baseline.savingIn(clean.between(NOON, clean.end()), SavingOption.B, 0.95),
                check,
                Drift.withFalseAlarms(check.residual(Channel.HEAD).orElseThrow(), 0.2),
                FaultTable.of(check));
        for (Object result : results) {
            Shown shown = Reports.of(result).orElseThrow();
            assertTrue(shown.blocks().size() >= 2, shown.title());
            assertTrue(shown.toText().lines().allMatch(line -> line.length() <= 100), shown.title());
            for (Block block : shown.blocks()) {
                if (block instanceof Block.ChartBlock chart) {
                    assertTrue(chart.chart().toSvg(800).contains("<svg"), shown.title());
                }
            }
        }
    }
}
