package headrace.data;

import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** What the head lines of a pump file say about the pump and its test, with what had to be taken as usual. */
final class PumpHead {
    private static final double SLOWEST_TEST = 0.5;
    private static final double FASTEST_TEST = 1.2;
    private static final int MOST_POLES = 24;

    private final Sheet sheet;
    private Notes notes = Notes.NONE;

    PumpHead(Sheet sheet) {
        this.sheet = sheet;
    }

    Notes notes() {
        return notes;
    }

    String name() {
        return sheet.requiredHead("name", "Heron 65").text();
    }

    String source() {
        return sheet.head("source").map(Entry::text).orElse("not stated");
    }

    Optional<Length> impellerDiameter() {
        return sheet.head("impeller diameter").map(entry -> HeadQuantity.of(entry, PumpFile.DIAMETER, sheet.style()));
    }

    Speed speed() {
        Optional<Speed> stated =
                sheet.head("speed").map(entry -> HeadQuantity.of(entry, PumpFile.SPEED, sheet.style()));
        if (!sheet.has("speed")) {
            return stated.orElseGet(
                    () -> HeadQuantity.of(sheet.requiredHead("speed", "1450 rpm"), PumpFile.SPEED, sheet.style()));
        }
        notes = notes.with(DataProblem.SPEED_OF_EACH_POINT, "each point of the test has a speed of its own");
        if (stated.isEmpty()) {
            double mean = IntStream.range(0, sheet.size())
                    .mapToDouble(row -> sheet.quantity(row, PumpFile.SPEED).si())
                    .average()
                    .orElseThrow(() -> PumpPoints.tooFew(sheet));
            stated = Optional.of(Speed.radiansPerSecond(mean));
            notes = notes.with(
                    DataProblem.ASSUMED_HEAD_LINE,
                    "the file states no speed of the test, so the points are brought to their mean, " + stated.get());
        }
        for (int row = 0; row < sheet.size(); row++) {
            requireNear(row, stated.get());
        }
        return stated.get();
    }

    private void requireNear(int row, Speed stated) {
        Speed speed = sheet.quantity(row, PumpFile.SPEED);
        double share = speed.over(stated).value();
        if (share < SLOWEST_TEST || share > FASTEST_TEST) {
            throw sheet.entry(row, PumpFile.SPEED)
                    .refused(
                            DataProblem.CONTRADICTING_STATEMENTS,
                            "Asked to read a point at " + speed + " in a test at " + stated,
                            "A point's speed lies within " + Ratio.of(SLOWEST_TEST) + " and " + Ratio.of(FASTEST_TEST)
                                    + " of the speed of the test",
                            "Put the wrong one of them right");
        }
    }

    Liquid liquid() {
        Optional<Entry> stated = sheet.head("liquid");
        if (stated.isEmpty()) {
            notes = notes.with(
                    DataProblem.ASSUMED_HEAD_LINE,
                    "the file states no liquid, so the test is taken as one with water at 20 °C");
            return Liquid.water(Temperature.celsius(20));
        }
        Entry entry = stated.get();
        String[] words = entry.text().split("\\s+", 2);
        if (!words[0].equals("water") || words.length < 2) {
            throw entry.refused(
                    DataProblem.WRONG_HEAD_LINE,
                    "Asked to read a test with the liquid '" + entry.text() + "'",
                    "A test is with water of a temperature between 0 and 150 °C",
                    "Write for example '# liquid: water 20 °C'");
        }
        try {
            return Liquid.water(
                    HeadQuantity.of(new Entry(words[1], entry.place()), PumpFile.TEMPERATURE, sheet.style()));
        } catch (Refusal refusal) {
            throw refusal.at(entry.place());
        }
    }

    OptionalInt poles(Speed speed) {
        Optional<Entry> stated = sheet.head("poles");
        if (stated.isEmpty()) {
            return OptionalInt.empty();
        }
        Entry entry = stated.get();
        int poles = poles(entry);
        double rpm = speed.toRevolutionsPerMinute();
        if (rpm < SLOWEST_TEST * synchronous(50, poles) || rpm > FASTEST_TEST * synchronous(60, poles)) {
            throw entry.refused(
                    DataProblem.CONTRADICTING_STATEMENTS,
                    "Asked to read a test at " + speed + " of a pump for a motor with " + poles + " poles",
                    "On mains of 50 or 60 Hz such a motor turns at " + Numbers.print(synchronous(50, poles)) + " or "
                            + Numbers.print(synchronous(60, poles)) + " rpm, less its slip",
                    "Put the wrong one of them right, or delete the poles");
        }
        return OptionalInt.of(poles);
    }

    private static int poles(Entry entry) {
        int poles = entry.text().matches("[0-9]{1,2}") ? Integer.parseInt(entry.text()) : 0;
        if (poles < 2 || poles > MOST_POLES || poles % 2 != 0) {
            throw entry.refused(
                    DataProblem.VALUE_NOT_POSSIBLE,
                    "Asked to read a pump for a motor with '" + entry.text() + "' poles",
                    "Poles come in pairs: 2, 4, 6 and so on to " + MOST_POLES,
                    "Put the number right, or delete the line");
        }
        return poles;
    }

    private static double synchronous(double hertz, int poles) {
        return 120 * hertz / poles;
    }

    Optional<LocalDate> date() {
        return sheet.head("date").map(entry -> {
            try {
                return LocalDate.parse(entry.text());
            } catch (DateTimeParseException e) {
                throw entry.refused(
                        DataProblem.WRONG_HEAD_LINE,
                        "Asked to read '" + entry.text() + "' as a date",
                        "A date is written year-month-day",
                        "Write for example 2026-01-17");
            }
        });
    }
}
