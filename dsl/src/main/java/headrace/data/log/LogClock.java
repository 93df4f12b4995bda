package headrace.data.log;

import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.trend.Change;
import headrace.trend.Change.Kind;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.Optional;

/**
 * Turns the times of a log that names no zone into true ones, and tells the two hours after the clock was set back.
 *
 * <p>Without a zone the times are taken as they stand; where they go back by an hour less one step, as a clock set back
 * does, the zone is asked for, since nothing else tells that from rows in disorder.
 */
final class LogClock {
    private static final int HOUR = 3600;
    private static final int DAY = 86_400;

    private final String file;
    private final Optional<ZoneId> zone;
    private final Change.Listing listing;
    private long previous = Long.MIN_VALUE;
    private long step;
    private boolean later;
    private long day = Long.MIN_VALUE;
    private long dayShift;

    LogClock(String file, Optional<ZoneId> zone, Change.Listing listing) {
        this.file = file;
        this.zone = zone;
        this.listing = listing;
    }

    /** Returns the true time of what the clock showed on a line, in a column. */
    long of(long local, int line, int column) {
        long seconds = zone.isPresent() ? zoned(zone.get().getRules(), local, line) : plain(local, line, column);
        step = previous == Long.MIN_VALUE ? 0 : local - previous;
        previous = local;
        return seconds;
    }

    private long plain(long local, int line, int column) {
        if (step > 0 && step <= HOUR && local - previous == step - HOUR && step != HOUR) {
            throw new Refusal(
                            LogProblem.CLOCK_WITHOUT_ZONE,
                            "Asked to read times that go back by an hour, from " + shown(previous) + " to "
                                    + shown(local),
                            "A clock set back shows an hour twice, and only its zone tells the two apart",
                            "Say the zone of the clock, such as zone: 'CET', or zone: 'UTC' if it is never set")
                    .at(new Place(file, line, column));
        }
        return local;
    }

    private long zoned(ZoneRules rules, long local, int line) {
        long today = Math.floorDiv(local, DAY);
        if (today == day) {
            return local - dayShift;
        }
        LocalDateTime time = LocalDateTime.ofEpochSecond(local, 0, ZoneOffset.UTC);
        Instant noon = time.toLocalDate().atStartOfDay(ZoneOffset.UTC).toInstant();
        ZoneOffset before = rules.getOffset(noon.minusSeconds(DAY));
        if (before.equals(rules.getOffset(noon.plusSeconds(2 * DAY)))) {
            day = today;
            dayShift = before.getTotalSeconds();
            later = false;
            return local - dayShift;
        }
        return nearTransition(rules, time, local, line);
    }

    private long nearTransition(ZoneRules rules, LocalDateTime time, long local, int line) {
        ZoneOffsetTransition transition = rules.getTransition(time);
        if (transition == null) {
            later = false;
            return local - rules.getOffset(time).getTotalSeconds();
        }
        if (transition.isGap()) {
            listing.add(Kind.CLOCK_SET_AHEAD, shown(local), new Place(file, line, 0));
            return local - transition.getOffsetBefore().getTotalSeconds();
        }
        boolean back = local < previous || local == previous && step >= HOUR;
        later |= back && rules.getTransition(LocalDateTime.ofEpochSecond(previous, 0, ZoneOffset.UTC)) != null;
        if (later) {
            listing.add(Kind.CLOCK_SET_BACK, zone.map(ZoneId::getId).orElse(""), new Place(file, line, 0));
        }
        ZoneOffset offset = later ? transition.getOffsetAfter() : transition.getOffsetBefore();
        return local - offset.getTotalSeconds();
    }

    private static String shown(long local) {
        return LocalDateTime.ofEpochSecond(local, 0, ZoneOffset.UTC).toString().replace('T', ' ');
    }
}
