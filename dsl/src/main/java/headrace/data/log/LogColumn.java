package headrace.data.log;

import headrace.problem.Place;
import headrace.trend.Channel;
import java.util.Optional;

/**
 * A column of a log: what its head says.
 *
 * @param head the head as it stands in the file
 * @param name the head without its unit, in lower case
 * @param unit the unit that the head says, blank if none
 * @param time whether it holds the times
 * @param channel what it measures, if that is known
 * @param place where the head stands
 */
record LogColumn(String head, String name, String unit, boolean time, Optional<Channel> channel, Place place) {
    boolean used() {
        return time || channel.isPresent();
    }

    LogColumn as(Channel other) {
        return new LogColumn(head, name, unit, false, Optional.of(other), place);
    }

    LogColumn unused() {
        return new LogColumn(head, name, unit, false, Optional.empty(), place);
    }
}
