package headrace.data.inquiry;

import headrace.units.Flow;
import headrace.units.Frequency;
import headrace.units.Head;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** What has been read of an inquiry so far, each thing once, with where it stood. */
final class Gathered {
    /** What an inquiry can say. */
    enum Item {
        FLOW("flow"),
        HEAD("head"),
        HEAT("heat load"),
        DIFFERENCE("temperature difference"),
        TEMPERATURE("temperature"),
        LIQUID("liquid"),
        DUTY("number of duty pumps"),
        STANDBY("number of standby pumps"),
        SHARE("whether the flow is that of all pumps or of each"),
        VOLTS("voltage"),
        PHASES("number of phases"),
        FREQUENCY("frequency");

        final String words;

        Item(String words) {
            this.words = words;
        }

        /** Returns what a quantity says. */
        static Item of(Quantity<?> quantity) {
            if (quantity instanceof Flow || quantity instanceof MassFlow) {
                return FLOW;
            }
            if (quantity instanceof Head || quantity instanceof Pressure) {
                return HEAD;
            }
            if (quantity instanceof Power) {
                return HEAT;
            }
            if (quantity instanceof Frequency) {
                return FREQUENCY;
            }
            return quantity instanceof Temperature ? TEMPERATURE : DIFFERENCE;
        }
    }

    /** What an inquiry says of the liquid: nothing but water, or a share of a glycol. */
    record Mixture(boolean ethylene, Optional<Ratio> share) {}

    private record Said(Object value, int position) {}

    private final Scan scan;
    private final Map<Item, Said> said = new HashMap<>();

    Gathered(Scan scan) {
        this.scan = scan;
    }

    void say(Item item, Object value, int position) {
        if (value instanceof Quantity<?> quantity && !(value instanceof Temperature) && !(quantity.si() > 0)) {
            throw scan.refused(
                    InquiryProblem.INQUIRY_VALUE_NOT_POSSIBLE,
                    position,
                    "A " + item.words + " is above 0",
                    "Look for a lost digit or a wrong sign");
        }
        if (said.containsKey(item)) {
            throw scan.refused(
                    InquiryProblem.SAID_TWICE,
                    position,
                    "The " + item.words + " stands at column "
                            + scan.place(said.get(item).position).column() + " already",
                    "Say it once; read two inquiries one by one");
        }
        said.put(item, new Said(value, position));
    }

    boolean has(Item item) {
        return said.containsKey(item);
    }

    <T> Optional<T> of(Item item, Class<T> type) {
        return Optional.ofNullable(said.get(item))
                .map(Said::value)
                .filter(type::isInstance)
                .map(type::cast);
    }

    int position(Item item) {
        return said.containsKey(item) ? said.get(item).position : 0;
    }
}
