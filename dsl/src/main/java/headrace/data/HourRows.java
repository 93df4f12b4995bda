package headrace.data;

import headrace.energy.load.HourlyLoad;
import headrace.energy.load.LoadProblem;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;

/**
 * The hours of a file, held to be those of a year: each once, in order, none left out. A single hour that is missing at
 * night in one season and a single one that stands twice at night in another are a change of the clock: noted, and the
 * rows taken as the hours that passed.
 *
 * @param start when the first hour begins
 * @param notes whether the clock was changed
 */
record HourRows(LocalDateTime start, Notes notes) {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

    /** Clocks are changed before this hour of the day. */
    private static final int NIGHT = 5;

    /** The seasons of the two changes are at least this far apart. */
    private static final long APART_DAYS = 60;

    static HourRows of(List<ClockCell> cells) {
        ClockCell first = cells.get(0);
        requireWholeHour(first);
        ClockCell missing = null;
        ClockCell twice = null;
        for (int i = 1; i < cells.size(); i++) {
            ClockCell cell = cells.get(i);
            requireWholeHour(cell);
            long hours = Duration.between(cells.get(i - 1).at(), cell.at()).toHours();
            boolean night = cell.at().getHour() < NIGHT;
            if (hours == 2 && night && missing == null) {
                missing = cell;
            } else if (hours == 0 && night && twice == null) {
                twice = cell;
            } else if (hours != 1) {
                throw hours > 1 ? missing(cells.get(i - 1), cell) : twice(cells.get(i - 1), cell);
            }
        }
        requireBoth(cells, missing, twice);
        requireYear(cells);
        return new HourRows(first.at(), changed(missing, twice));
    }

    private static void requireBoth(List<ClockCell> cells, ClockCell missing, ClockCell twice) {
        boolean changed = missing != null
                && twice != null
                && Math.abs(Duration.between(missing.at(), twice.at()).toDays()) >= APART_DAYS;
        if (changed) {
            return;
        }
        if (missing != null) {
            throw missing(cells.get(cells.indexOf(missing) - 1), missing);
        }
        if (twice != null) {
            throw twice(twice, twice);
        }
    }

    private static Notes changed(ClockCell missing, ClockCell twice) {
        return missing == null
                ? Notes.NONE
                : Notes.NONE.with(
                        LoadProblem.DAYLIGHT_SAVING,
                        "The hour before " + missing.at().format(CLOCK) + " is missing and that of "
                                + twice.at().format(CLOCK) + " stands twice: the clock was changed, and the rows were"
                                + " taken as the hours that passed");
    }

    private static void requireWholeHour(ClockCell cell) {
        if (cell.at().getMinute() != 0 || cell.at().getSecond() != 0) {
            throw cell.entry()
                    .refused(
                            DataProblem.VALUE_NOT_POSSIBLE,
                            "Asked to read the time '" + cell.entry().text() + "' as an hour of a year",
                            "Hours begin at minute 0",
                            "Give means of whole hours, or read the file as a log");
        }
    }

    private static void requireYear(List<ClockCell> cells) {
        if (!HourlyLoad.YEARS.contains(cells.size())) {
            ClockCell last = cells.get(cells.size() - 1);
            throw last.entry()
                    .refused(
                            LoadProblem.IMPOSSIBLE_YEAR,
                            "Asked to read a year that ends after " + cells.size() + " hours, at "
                                    + last.at().format(CLOCK),
                            "A year has 8760 hours, or 8784 with a leap day",
                            "Give every hour once; read a part of a year as a log");
        }
    }

    private static Refusal missing(ClockCell before, ClockCell cell) {
        long hours = Duration.between(before.at(), cell.at()).toHours() - 1;
        return cell.entry()
                .refused(
                        LoadProblem.HOUR_MISSING,
                        "Asked to read a year in which " + (hours == 1 ? "an hour is" : hours + " hours are")
                                + " missing before " + cell.at().format(CLOCK),
                        "Every hour stands once, in order; only a change of clock leaves one out, and repeats one in"
                                + " another season",
                        "Fill the gap, or read the file as a log, which says what it leaves out");
    }

    private static Refusal twice(ClockCell before, ClockCell cell) {
        return cell.entry()
                .refused(
                        LoadProblem.HOUR_TWICE,
                        "Asked to read a year in which " + cell.at().format(CLOCK)
                                + (before.at().equals(cell.at())
                                        ? " stands twice"
                                        : " follows " + before.at().format(CLOCK)),
                        "Every hour stands once, in order; only a change of clock repeats one, and leaves one out in"
                                + " another season",
                        "Delete the row that is wrong, or put the rows in order");
    }
}
