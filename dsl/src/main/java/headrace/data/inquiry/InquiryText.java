package headrace.data.inquiry;

import headrace.data.inquiry.Gathered.Item;
import headrace.data.inquiry.Gathered.Mixture;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.TemperatureDifference;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the text of an inquiry, part by part from left to right. */
final class InquiryText {
    /** A plain number, its decimal mark a point. */
    static final String NUMBER = "([+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+))";

    private static final String GLYCOL = "(propylene[ -]?glycol|ethylene[ -]?glycol|mpg|meg|pg|eg|glycol)(?![a-z0-9])";
    private static final String DELTA = "(?:Δ ?t|delta[ -]?t|dt)(?![a-z0-9])";

    private static final Pattern BETWEEN =
            Pattern.compile("(?:[\\s,;@+&|]|\\.(?![0-9]))+|(?:at|and|with|of|for|in|by mass)(?![a-z0-9])");
    private static final Pattern GROUPED = Pattern.compile("[0-9]+,[0-9]");
    private static final Pattern NUMBER_HERE = Pattern.compile(NUMBER + " *");
    private static final Pattern PAIR =
            Pattern.compile(NUMBER + " ?(?:/|to) ?" + NUMBER + " ?(?:° ?|deg ?)?([cf])(?![a-z])");
    private static final Pattern SHARE_FIRST =
            Pattern.compile(NUMBER + " ?(?:%|percent|per cent|pct) ?(?:by mass )?" + GLYCOL);
    private static final Pattern SHARE_LAST = Pattern.compile(GLYCOL + " ?" + NUMBER + " ?(?:%|percent|per cent|pct)");
    private static final Pattern PUMPS = Pattern.compile(
            "([0-9]{1,9}|one|two|three|four|five|six) ?(?:x ?)?(duty|running|pumps?|standby|stand-by|spare)(?: pumps?)?(?![a-z0-9])");
    private static final Pattern DUTY_STANDBY =
            Pattern.compile("duty ?(?:/|\\+|and|&) ?(?:standby|stand-by)(?![a-z0-9])");
    private static final Pattern STANDBY = Pattern.compile("(?:standby|stand-by)(?![a-z0-9])");
    private static final Pattern TOTAL = Pattern.compile("(?:in )?total(?![a-z0-9])");
    private static final Pattern EACH = Pattern.compile("(?:each|per pump)(?![a-z0-9])");
    private static final Pattern WATER = Pattern.compile("water(?![a-z0-9])");
    private static final Pattern DELTA_HERE = Pattern.compile(" ?" + DELTA);
    private static final Pattern DELTA_FIRST = Pattern.compile(DELTA + "[ :=]*(?=[+-]?[.0-9])");
    private static final Pattern LABEL = Pattern.compile(
            "(total head|head|differential pressure|dp|Δp|flow rate|flow|heat load|heat|cooling load|cooling|heating load|heating|load|temperature"
                    + "|temp|motor supply|supply|motor|liquid|fluid|duty|q|h)(?![a-z0-9])[ :=]*");
    private static final List<String> NUMBERS = List.of("zero", "one", "two", "three", "four", "five", "six");
    private static final List<String> KNOWN = List.of(
            "water",
            "propylene glycol",
            "ethylene glycol",
            "duty",
            "standby",
            "pumps",
            "total",
            "each",
            "per pump",
            "flow",
            "head",
            "heat load",
            "temperature",
            "supply",
            "gpm",
            "phase");

    private static final String POWER_IS_HEAT =
            "A power in an inquiry is the heat load; the power of the motor follows from the pump";
    private static final String WITHOUT_MOTOR =
            "Leave the motor's power out, and give a heat load in kW, Btu/h or tons";

    private final Scan scan;
    private final Gathered gathered;
    private final SupplyText supply;

    /** The thing that was said last, until a comma or the like. */
    private Item last;

    /** Whether the word motor stood before. */
    private boolean motor;

    private InquiryText(String text) {
        scan = new Scan(text);
        gathered = new Gathered(scan);
        supply = new SupplyText(scan, gathered);
    }

    static Inquiry read(String text) {
        try {
            InquiryText reading = new InquiryText(text);
            reading.readAll(text);
            return Assumed.completed(text, reading.gathered, reading.scan);
        } catch (Refusal refusal) {
            throw refusal.place().isPresent() ? refusal : refusal.at(new Place(Scan.NAME, 1, 1));
        }
    }

    private void readAll(String text) {
        if (text.isBlank()) {
            throw scan.refused(
                    InquiryProblem.UNREADABLE_INQUIRY,
                    0,
                    "An inquiry says at least something",
                    "Write it as in 480 gpm @ 62 ft, 30 % PG, 3 duty");
        }
        while (!scan.atEnd()) {
            Matcher between = scan.take(BETWEEN);
            if (between != null) {
                if (between.group().matches("(?s).*[,;@\\n].*")) {
                    last = null;
                    motor = false;
                }
            } else if (!placedPart()) {
                throw scan.unreadable(KNOWN);
            }
        }
    }

    private boolean placedPart() {
        int start = scan.position();
        try {
            return readPart();
        } catch (Refusal refusal) {
            throw refusal.place().isPresent() ? refusal : refusal.at(scan.place(start));
        }
    }

    private boolean readPart() {
        int start = scan.position();
        if (scan.take(GROUPED) != null) {
            throw scan.refused(
                    InquiryProblem.UNREADABLE_INQUIRY,
                    start,
                    "A comma between digits could be a decimal mark or group digits",
                    "Write the decimal mark as a point and do not group digits");
        }
        return supply.read(start) || liquid(start) || pumps(start) || temperatures(start) || quantity(start) || label();
    }

    private boolean liquid(int start) {
        if (scan.skip(WATER)) {
            gathered.say(Item.LIQUID, new Mixture(false, Optional.empty()), start);
            return true;
        }
        Matcher found = scan.take(SHARE_FIRST);
        if (found != null) {
            mixture(found.group(2), found.group(1), start);
            return true;
        }
        found = scan.take(SHARE_LAST);
        if (found != null) {
            mixture(found.group(1), found.group(2), start);
        }
        return found != null;
    }

    private void mixture(String glycol, String percent, int start) {
        if (glycol.equals("glycol")) {
            throw scan.refused(
                    InquiryProblem.UNREADABLE_INQUIRY,
                    start,
                    "Ethylene and propylene glycol differ in every property",
                    "Say which: 30 % PG or 30 % EG");
        }
        boolean ethylene = glycol.startsWith("e") || glycol.equals("meg");
        Ratio share = Ratio.percent(Double.parseDouble(percent));
        gathered.say(Item.LIQUID, new Mixture(ethylene, Optional.of(share)), start);
    }

    private boolean pumps(int start) {
        if (scan.skip(DUTY_STANDBY)) {
            gathered.say(Item.DUTY, 1, start);
            gathered.say(Item.STANDBY, 1, start);
            return true;
        }
        Matcher found = scan.take(PUMPS);
        if (found != null) {
            boolean waits = found.group(2).startsWith("s");
            int number = whole(found.group(1));
            if (number > 100 || number == 0 && !waits) {
                throw scan.refused(
                        InquiryProblem.INQUIRY_VALUE_NOT_POSSIBLE,
                        start,
                        "There is at least one duty pump, and at most 100 of either",
                        "Look for a lost or added digit");
            }
            gathered.say(waits ? Item.STANDBY : Item.DUTY, number, start);
            return true;
        }
        if (scan.skip(STANDBY)) {
            gathered.say(Item.STANDBY, 1, start);
            return true;
        }
        boolean total = scan.skip(TOTAL);
        if (total || scan.skip(EACH)) {
            gathered.say(Item.SHARE, total, start);
            return true;
        }
        return false;
    }

    private static int whole(String number) {
        int word = NUMBERS.indexOf(number);
        return word >= 0 ? word : Integer.parseInt(number);
    }

    private boolean temperatures(int start) {
        Matcher found = scan.take(PAIR);
        if (found != null) {
            Temperature one = temperature(found.group(1), found.group(3));
            Temperature other = temperature(found.group(2), found.group(3));
            double kelvins = Math.abs(one.minus(other).kelvins());
            gathered.say(Item.DIFFERENCE, TemperatureDifference.kelvins(kelvins), start);
            gathered.say(
                    Item.TEMPERATURE,
                    one.plus(TemperatureDifference.kelvins(other.minus(one).kelvins() / 2)),
                    start);
            return true;
        }
        if (!scan.skip(DELTA_FIRST)) {
            return false;
        }
        int at = scan.position();
        gathered.say(Item.DIFFERENCE, difference(number(at), at), start);
        return true;
    }

    private static Temperature temperature(String number, String unit) {
        double value = Double.parseDouble(number);
        return unit.equals("c") ? Temperature.celsius(value) : Temperature.fahrenheit(value);
    }

    /** After ΔT, degrees are those of a difference. */
    private TemperatureDifference difference(Quantity<?> quantity, int at) {
        if (quantity instanceof TemperatureDifference difference) {
            return difference;
        }
        if (quantity instanceof Temperature temperature) {
            Temperature nothing = temperature.kind().of(0, unitOf(at));
            return temperature.minus(nothing);
        }
        throw scan.refused(
                InquiryProblem.UNREADABLE_INQUIRY,
                at,
                "A temperature difference is in K, °C or °F",
                "Write it as in ΔT 6 K or 10 °F dT");
    }

    private String unitOf(int at) {
        String written = scan.since(at);
        return written.contains("f") ? "degF" : written.contains("k") ? "kelvin" : "degC";
    }

    private boolean quantity(int start) {
        if (!scan.startsNumber()) {
            return false;
        }
        Quantity<?> quantity = number(start);
        if (quantity instanceof Temperature || quantity instanceof TemperatureDifference) {
            int end = scan.position();
            if (scan.skip(DELTA_HERE)) {
                scan.backTo(end);
                TemperatureDifference difference = difference(quantity, start);
                scan.skip(DELTA_HERE);
                quantity = difference;
            }
        }
        requireHeat(quantity, start);
        last = Item.of(quantity);
        gathered.say(last, quantity, start);
        return true;
    }

    /** The power of a motor follows from the pump; taken as heat it would be wrong by far. */
    private void requireHeat(Quantity<?> quantity, int start) {
        if (quantity instanceof Power && (motor || scan.since(start).matches(".*(hp|ps).*"))) {
            throw scan.refused(InquiryProblem.UNREADABLE_INQUIRY, start, POWER_IS_HEAT, WITHOUT_MOTOR);
        }
        motor = false;
    }

    private Quantity<?> number(int start) {
        Matcher found = scan.take(NUMBER_HERE);
        if (found == null) {
            throw scan.unreadable(KNOWN);
        }
        return InquiryUnits.next(scan, Double.parseDouble(found.group(1)))
                .orElseThrow(() -> scan.refused(
                        InquiryProblem.UNREADABLE_INQUIRY,
                        start,
                        "A number is read with its unit: of flow, head, pressure, heat load, temperature or supply, or as"
                                + " a number of pumps or a share of a glycol",
                        "Say the unit, as in 480 gpm, 62 ft, 30 % PG or 3 duty"));
    }

    /** A label says what comes next; what stands behind its own quantity says nothing new. */
    private boolean label() {
        int start = scan.position();
        Matcher found = scan.take(LABEL);
        if (found == null) {
            return false;
        }
        motor = found.group(1).equals("motor");
        if (motor && last == Item.HEAT) {
            throw scan.refused(InquiryProblem.UNREADABLE_INQUIRY, start, POWER_IS_HEAT, WITHOUT_MOTOR);
        }
        Item named = switch (found.group(1)) {
            case "total head", "head", "h", "differential pressure", "dp", "Δp" -> Item.HEAD;
            case "flow rate", "flow", "q" -> Item.FLOW;
            case "temperature", "temp" -> Item.TEMPERATURE;
            case "heat load", "heat", "cooling load", "cooling", "heating load", "heating", "load" -> Item.HEAT;
            default -> null;
        };
        if (named != null && named != last && scan.startsNumber()) {
            int at = scan.position();
            Quantity<?> quantity = number(at);
            if (Item.of(quantity) != named) {
                throw scan.refused(
                        InquiryProblem.UNREADABLE_INQUIRY,
                        start,
                        "It says " + named.words + ", and " + quantity + " is a "
                                + quantity.kind().name(),
                        "Look for exchanged units");
            }
            requireHeat(quantity, at);
            last = named;
            gathered.say(named, quantity, at);
        }
        return true;
    }
}
