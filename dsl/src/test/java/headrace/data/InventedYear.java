package headrace.data;

import java.time.DayOfWeek;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Random;

/**
 * Makes the weather and the loads of {@code demo-data}: a year of temperatures from two sines and a slow scatter, the
 * loads of buildings from it or from a timetable. No such place or building ever stood.
 */
final class InventedYear {
    static final int HOURS = 8760;

    private static final LocalDateTime START = LocalDateTime.of(2025, 1, 1, 0, 0);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

    private InventedYear() {}

    /** 10 °C, ±9 K over the year with the coldest in late January, ±3 K over the day, and fronts of some days. */
    static double[] celsius() {
        Random random = new Random(4);
        double[] celsius = new double[HOURS];
        double front = 0;
        for (int i = 0; i < HOURS; i++) {
            front = 0.99 * front + 0.5 * random.nextGaussian();
            double year = -9 * Math.cos(2 * Math.PI * (i - 25 * 24) / HOURS);
            double day = -3 * Math.cos(2 * Math.PI * (i % 24 - 4) / 24.0);
            celsius[i] = Math.rint(10 * (10 + year + day + front)) / 10;
        }
        return celsius;
    }

    static String weather() {
        StringBuilder out = new StringBuilder("""
                ## Fenmouth is an invented place on a mild coast. Outdoor temperature at the beginning of each hour.
                ## Columns: local time without a change of clock, outdoor temperature.
                ## Made from two sines and a slow scatter (seed 4), see demo-data/README.md.
                # name: Fenmouth
                # source: invented, seed 4
                # date: 2026-01-17
                time, outdoor [degC]
                """);
        double[] celsius = celsius();
        for (int i = 0; i < HOURS; i++) {
            out.append(
                    String.format(Locale.ROOT, "%s, %.1f%n", START.plusHours(i).format(CLOCK), celsius[i]));
        }
        return out.toString().replace("\r\n", "\n");
    }

    /**
     * A school that heats from 5 to 17 o'clock on working days and holds 30 % of that otherwise, with clocks changed.
     */
    static String school() {
        StringBuilder out = new StringBuilder("""
                ## Tern Court is an invented school. Heating load hour by hour, as its clock shows it: changed in March and
                ## in October, so that one hour is missing and one stands twice.
                ## Columns: local time, load as a share of design load.
                ## Made from demo-data/weather/fenmouth.csv and a timetable, see demo-data/README.md.
                # name: Tern Court School, heating water
                # source: invented
                # date: 2026-01-17
                time, load [%]
                """);
        double[] celsius = celsius();
        LocalDateTime utc =
                START.atZone(ZONE).withZoneSameInstant(ZoneOffset.UTC).toLocalDateTime();
        for (int i = 0; i < HOURS; i++) {
            LocalDateTime at = utc.plusHours(i)
                    .atZone(ZoneOffset.UTC)
                    .withZoneSameInstant(ZONE)
                    .toLocalDateTime();
            boolean weekend = at.getDayOfWeek() == DayOfWeek.SATURDAY || at.getDayOfWeek() == DayOfWeek.SUNDAY;
            boolean used = !weekend && at.getHour() >= 5 && at.getHour() < 17;
            double need = Math.min(1, Math.max(0, (15 - celsius[i]) / 25));
            out.append(String.format(Locale.ROOT, "%s, %.1f%n", at.format(CLOCK), 100 * need * (used ? 1 : 0.3)));
        }
        return out.toString().replace("\r\n", "\n");
    }

    /** Cooling of an office: by month and hour, greatest in July at 15 o'clock. */
    static String typicalDays() {
        StringBuilder out = new StringBuilder("""
                ## Otterbank Library is an invented building. Chilled water, a typical day for each month.
                ## Columns: the hour of the day at which it begins, and the load in each month as a share of design load.
                ## Made from a sine over the year and one over the day, see demo-data/README.md.
                # name: Otterbank Library, typical days
                # source: invented
                # date: 2026-01-17
                hour [h], january [%], february [%], march [%], april [%], may [%], june [%], july [%], august [%], september [%], october [%], november [%], december [%]
                """);
        for (int hour = 0; hour < 24; hour++) {
            out.append(hour);
            for (int month = 0; month < 12; month++) {
                double year = 0.55 - 0.45 * Math.cos(2 * Math.PI * (month - 0.2) / 12);
                double day = hour < 6 || hour > 20 ? 0.2 : 0.6 - 0.4 * Math.cos(2 * Math.PI * (hour - 3) / 24.0);
                out.append(String.format(Locale.ROOT, ", %.0f", 100 * year * day));
            }
            out.append('\n');
        }
        return out.toString();
    }

    /** Two weeks of a flow meter at quarter hours, from which nine hours are missing. */
    static String log() {
        StringBuilder out = new StringBuilder("""
                ## Millrace Baths is an invented building. Flow of its heating water as a meter might have logged it.
                ## Columns: local time, flow. Nine hours are missing on the third day.
                ## Made from a sine over the day with a scatter (seed 9), see demo-data/README.md.
                # name: Millrace Baths, two weeks of February
                # design flow: 52 m3/h
                # source: invented, seed 9
                # date: 2026-01-17
                time, flow [m3/h]
                """);
        Random random = new Random(9);
        LocalDateTime start = LocalDateTime.of(2025, 2, 3, 0, 0);
        for (int i = 0; i < 14 * 96; i++) {
            LocalDateTime at = start.plusMinutes(15L * i);
            double flow = 34 - 8 * Math.cos(2 * Math.PI * (i % 96 - 28) / 96.0) + 1.5 * random.nextGaussian();
            if (i < 200 || i >= 236) {
                out.append(String.format(Locale.ROOT, "%s, %.1f%n", at.format(CLOCK), flow));
            }
        }
        return out.toString().replace("\r\n", "\n");
    }
}
