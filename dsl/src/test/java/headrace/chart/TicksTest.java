package headrace.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TicksTest {
    private static final Axis HEAD = Axis.of("Head", "m");

    /** The least of 1, 2 and 5 times a power of ten that makes no more steps than there is room for. */
    @ParameterizedTest(name = "{0} to {1} in {2} steps")
    @CsvSource({
        "0, 67.5, 7, 0 10 20 30 40 50 60 70",
        "0, 67.5, 4, 0 20 40 60 80",
        "0, 9, 5, 0 2 4 6 8 10",
        "0, 0.9, 5, 0.0 0.2 0.4 0.6 0.8 1.0",
        "12.1, 14.4, 5, 12.0 12.5 13.0 13.5 14.0 14.5",
        "-4, 7, 6, −4 −2 0 2 4 6 8",
        "0, 21480, 5, 0 5000 10\u2009000 15\u2009000 20\u2009000 25\u2009000"
    })
    void are_round_numbers(double low, double high, double most, String labels) {
        assertEquals(
                labels,
                String.join(" ", Ticks.over(HEAD, new Extent(low, high), most).labels()));
    }

    @Test
    void begin_at_zero_where_the_values_come_near_it() {
        assertEquals(0, Ticks.over(HEAD, new Extent(20, 60), 6).from());
        assertEquals(50, Ticks.over(HEAD, new Extent(50, 60), 6).from());
        assertEquals(0, Ticks.over(HEAD, new Extent(-60, -20), 6).to());
    }

    @Test
    void keep_the_ends_that_are_given() {
        Ticks ticks = Ticks.over(HEAD.from(3).to(11), new Extent(0, 100), 5);
        assertEquals(3, ticks.from());
        assertEquals(11, ticks.to());
        assertEquals(List.of("4", "6", "8", "10"), ticks.labels());
    }

    @Test
    void of_things_that_are_counted_are_whole() {
        Axis pumps = Axis.counting("Pumps");
        assertEquals(
                List.of("0", "1", "2", "3"),
                Ticks.over(pumps, new Extent(0, 3), 8).labels());
        assertEquals(
                List.of("0", "5", "10"), Ticks.over(pumps, new Extent(0, 10), 2).labels());
    }

    @Test
    void leave_a_power_of_ten_to_the_title_where_numbers_are_huge_or_tiny() {
        Ticks huge = Ticks.over(HEAD, new Extent(0, 2e6), 4);
        assertEquals(List.of("0.0", "0.5", "1.0", "1.5", "2.0"), huge.labels());
        assertEquals("Head in 10⁶ m", huge.title(HEAD));
        Ticks tiny = Ticks.over(Axis.of("Share", ""), new Extent(0, 4e-6), 2);
        assertEquals(List.of("0", "2", "4"), tiny.labels());
        assertEquals("Share in 10⁻⁶", tiny.title(Axis.of("Share", "")));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "7, 7", "-7, -7", "1e-200, 1e-200", "1e100, 1e100", "3, 3.0000000000001"})
    void make_room_around_a_single_value(double low, double high) {
        Ticks ticks = Ticks.over(HEAD, new Extent(low, high), 5);
        assertTrue(ticks.from() < ticks.to());
        assertTrue(ticks.from() <= low && high <= ticks.to());
        assertTrue(ticks.values().size() >= 2);
    }
}
