package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.energy.LoadProfile;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.HourlyWeather;
import headrace.energy.load.LoadProblem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * Holds the weather and the loads of {@code demo-data} to how they were made; written anew as {@link DemoDataTest}
 * says.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class DemoYearTest {
    private static Path held(String file, String made) throws IOException {
        Path path = DemoDataTest.DEMO.resolve(file);
        if (Boolean.getBoolean("headrace.writeDemoData")) {
            Files.createDirectories(path.getParent());
            Files.writeString(path, made);
        }
        assertEquals(made, Files.readString(path), file);
        return path;
    }

    @Test
    void the_weather_stands_as_it_was_made() throws IOException {
        HourlyWeather weather = WeatherFile.read(held("weather/fenmouth.csv", InventedYear.weather()));
        double[] celsius = InventedYear.celsius();
        for (int hour = 0; hour < celsius.length; hour += 13) {
            assertEquals(celsius[hour], weather.at(hour).toCelsius(), 1e-9);
        }
        assertTrue(weather.coldest().toCelsius() > -20 && weather.warmest().toCelsius() < 40);
        assertTrue(weather.notes().isEmpty());
    }

    @Test
    void the_school_has_its_clock_changed_and_every_hour_that_passed() throws IOException {
        HourlyLoad load = HourlyLoadFile.read(held("loads/tern-court-hours.csv", InventedYear.school()));
        assertEquals(8760, load.hours());
        assertTrue(load.notes().has(LoadProblem.DAYLIGHT_SAVING));
        assertTrue(load.greatest().value() <= 1);
    }

    @Test
    void the_typical_days_are_laid_over_the_year() throws IOException {
        HourlyLoad load = MonthHourFile.read(held("loads/otterbank-days.csv", InventedYear.typicalDays()));
        assertEquals(LocalDateTime.of(2025, 1, 1, 0, 0), load.start());
        assertEquals(load.shareAt(14), load.shareAt(14 + 24 * 30), 0.0);
        assertTrue(load.shareAt(14 + 24 * 190) > load.shareAt(14));
    }

    /** 14 days less 9 hours are 327 h. */
    @Test
    void the_log_covers_its_two_weeks_but_for_its_gap() throws IOException {
        Path file = held("loads/millrace-log.csv", InventedYear.log());
        LoadProfile profile = LoadLogFile.read(file, NumberStyle.DECIMAL_POINT, Optional.empty());
        assertEquals(327, profile.hours().toHours(), 1e-9);
        assertTrue(
                profile.notes().toString().contains("a gap of 9 h together"),
                profile.notes().toString());
    }
}
