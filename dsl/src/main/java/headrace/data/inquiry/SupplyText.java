package headrace.data.inquiry;

import headrace.data.inquiry.Gathered.Item;
import headrace.units.Frequency;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the parts of an inquiry that say the supply of the motor: voltage, phases, frequency. */
final class SupplyText {
    private static final String NUMBER = InquiryText.NUMBER;
    private static final Pattern TRIPLE = Pattern.compile("([0-9]{3}) ?v? ?/ ?([13]) ?/ ?([56]0)(?![0-9.])");
    private static final Pattern PHASES = Pattern.compile("([0-9]) ?(?:~|-? ?phases?(?![a-z0-9])|ph(?![a-z0-9]))");
    private static final Pattern PHASES_BEFORE_VOLTS = Pattern.compile("([0-9]) ?(?:x|×) ?(?=[0-9]{2,4} ?v)");
    private static final Pattern VOLTS = Pattern.compile(NUMBER + " ?(?:v|volts?|vac)(?![a-z0-9])");
    private static final Pattern HERTZ = Pattern.compile(NUMBER + " ?hz(?![a-z0-9])");

    private final Scan scan;
    private final Gathered gathered;

    SupplyText(Scan scan, Gathered gathered) {
        this.scan = scan;
        this.gathered = gathered;
    }

    /** Reads what stands here, if it is of the supply. */
    boolean read(int start) {
        Matcher found = scan.take(TRIPLE);
        if (found != null) {
            volts(found.group(1), start);
            phases(found.group(2), start);
            hertz(found.group(3), start);
            return true;
        }
        found = scan.take(PHASES_BEFORE_VOLTS);
        if (found == null) {
            found = scan.take(PHASES);
        }
        if (found != null) {
            phases(found.group(1), start);
            return true;
        }
        found = scan.take(VOLTS);
        if (found != null) {
            volts(found.group(1), start);
            return true;
        }
        found = scan.take(HERTZ);
        if (found != null) {
            hertz(found.group(1), start);
        }
        return found != null;
    }

    private void volts(String number, int start) {
        double volts = Double.parseDouble(number);
        if (!(volts > 0 && volts <= 50_000)) {
            throw scan.refused(
                    InquiryProblem.INQUIRY_VALUE_NOT_POSSIBLE,
                    start,
                    "A motor is supplied with more than 0 V and at most 50 kV",
                    "Look for a lost or added digit");
        }
        gathered.say(Item.VOLTS, volts, start);
    }

    private void phases(String number, int start) {
        if (!number.equals("1") && !number.equals("3")) {
            throw scan.refused(
                    InquiryProblem.INQUIRY_VALUE_NOT_POSSIBLE, start, "A supply has 1 phase or 3", "Say which");
        }
        gathered.say(Item.PHASES, Integer.parseInt(number), start);
    }

    private void hertz(String number, int start) {
        gathered.say(Item.FREQUENCY, Frequency.hertz(Double.parseDouble(number)), start);
    }
}
