package headrace.script;

import headrace.circuit.part.PartProblem;
import headrace.circuit.part.valve.Authority;
import headrace.circuit.part.valve.BalancingValve;
import headrace.circuit.part.valve.BypassValve;
import headrace.circuit.part.valve.Characteristic;
import headrace.circuit.part.valve.CheckValve;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.FixedValve;
import headrace.circuit.part.valve.InstalledCharacteristic;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.circuit.part.valve.PressureIndependentValve;
import headrace.circuit.part.valve.SettingTable;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.units.FlowCoefficient;
import headrace.units.Pressure;
import headrace.units.Ratio;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Words for valves. */
public final class ValveWords implements Words {
    private static final String NAME = "name: what it is called; after its branch unless chosen";
    private static final String CONTROL = "A two-way control valve by its flow coefficient when it is open.";
    private static final String CONTROL_EXAMPLE = "controlValve(25.kv, characteristic: 'equal percentage')";
    private static final String BALANCING = "A balancing valve, by its flow coefficient as it stands.";
    private static final String LIMITING =
            "A valve that holds its set flow, whatever the pressure difference, between a"
                    + " floor and a ceiling; below the floor it is a plain orifice.";
    private static final String LIMITING_EXAMPLE = "pressureIndependentValve(16.m3ph, floor: 20.kPa)";
    private static final String KINDS =
            "characteristic: 'equal percentage', 'linear', 'quick opening', or a list of rows [opening, share of Kvs]; equal"
                    + " percentage unless chosen";
    private static final String RANGE = "rangeability: of an equal-percentage valve; 50 unless chosen";

    @Override
    public String subject() {
        return "Valves";
    }

    /** Makes a control valve. */
    @Word(help = CONTROL, example = CONTROL_EXAMPLE)
    public static ControlValve controlValve(Object open) {
        return controlValve(Map.of(), open);
    }

    /** Makes a control valve. */
    @Word(
            help = CONTROL,
            example = CONTROL_EXAMPLE,
            choices = {
                KINDS,
                RANGE,
                "closeOff: the pressure difference against which its actuator holds it shut; any unless chosen",
                NAME
            })
    public static ControlValve controlValve(Map<String, ?> given, Object open) {
        Choices choices = Choices.of("controlValve", given, "characteristic", "rangeability", "closeOff", "name");
        return new ControlValve(
                choices.text("name", "control valve"),
                coefficient(open, "a control valve"),
                characteristic(choices, "equal percentage"),
                choices.has("closeOff") ? Optional.of(choices.quantity("closeOff", Pressure.KIND)) : Optional.empty());
    }

    /** Makes a balancing valve. */
    @Word(help = BALANCING, example = "balancingValve(18.kv)")
    public static FixedValve balancingValve(Object coefficient) {
        return new FixedValve("balancing valve", coefficient(coefficient, "a balancing valve"));
    }

    /** Makes a balancing valve. */
    @Word(
            help = "By its table of settings, for settingFor.",
            example = "balancingValve(settings: [[1, 4.kv], [2, 9.kv], [3, 16.kv], [4, 25.kv]], at: 3)",
            choices = {
                "settings: a list of rows [setting, flow coefficient], all in Kv or all in Cv; always needed",
                "at: the setting at which it stands; fully open unless chosen",
                NAME
            })
    public static BalancingValve balancingValve(Map<String, ?> given) {
        Choices choices = Choices.of("balancingValve", given, "settings", "at", "name");
        List<?> rows = choices.object("settings", List.class);
        String name = choices.text("name", "balancing valve");
        List<SettingTable.Row> settings = rows.stream().map(ValveWords::row).toList();
        sayOneUnit(settings, name);
        BalancingValve open = BalancingValve.open(name, SettingTable.of(settings));
        return choices.has("at") ? open.at(choices.number("at")) : open;
    }

    /** Sets a balancing valve. */
    @Word(
            help =
                    "A balancing valve at the setting at which it takes the excess head of its branch at its design flow.",
            example =
                    "settingFor(balancingValve(settings: [[1, 4.kv], [2, 9.kv], [3, 16.kv], [4, 25.kv]]), 3.m, 12.m3ph)")
    public static BalancingValve settingFor(Object valve, Object excess, Object flow) {
        return Wanted.object(BalancingValve.class, valve, "the balancing valve of settingFor, which has settings,")
                .taking(
                        Wanted.head(excess, "the excess head of settingFor"),
                        Wanted.flow(flow, "the flow of settingFor"));
    }

    private static void sayOneUnit(List<SettingTable.Row> rows, String name) {
        List<String> units = rows.stream()
                .flatMap(row -> row.coefficient().said().stream())
                .distinct()
                .toList();
        if (units.size() > 1) {
            throw new Refusal(
                    PartProblem.MIXED_FLOW_COEFFICIENTS,
                    "The settings of '" + name + "' are given in " + String.join(" and in ", units),
                    "A table of settings is all in Kv or all in Cv, which differ by a factor of 1.156",
                    "See which of them the data sheet states, and write all rows in it");
        }
    }

    private static SettingTable.Row row(Object given) {
        Object[] row = Rows.of(given, 2, "a row of the choice settings:", "a setting and a flow coefficient");
        return new SettingTable.Row(
                Wanted.number(row[0], "a setting"), coefficient(row[1], "a setting of a balancing valve"));
    }

    /** Makes a pressure-independent valve. */
    @Word(help = LIMITING, example = LIMITING_EXAMPLE)
    public static PressureIndependentValve pressureIndependentValve(Object flow) {
        return pressureIndependentValve(Map.of(), flow);
    }

    /** Makes a pressure-independent valve. */
    @Word(
            help = LIMITING,
            example = LIMITING_EXAMPLE,
            choices = {
                "floor: the pressure difference that it needs; 25 kPa unless chosen",
                "ceiling: the pressure difference that it bears; 400 kPa unless chosen",
                "lift: where it stands; fully open unless chosen",
                NAME
            })
    public static PressureIndependentValve pressureIndependentValve(Map<String, ?> given, Object flow) {
        Choices choices = Choices.of("pressureIndependentValve", given, "floor", "ceiling", "lift", "name");
        return new PressureIndependentValve(
                choices.text("name", "pressure-independent valve"),
                Wanted.flow(flow, "the set flow of a pressure-independent valve"),
                choices.quantity("floor", Pressure.KIND, PressureIndependentValve.USUAL_FLOOR),
                choices.quantity("ceiling", Pressure.KIND, PressureIndependentValve.USUAL_CEILING),
                choices.ratio("lift", Ratio.of(1)));
    }

    /** Makes a check valve. */
    @Word(
            help = "A check valve by its flow coefficient when it is open, and the pressure difference that opens it.",
            example = "checkValve(90.kv, opensAt: 3.kPa)",
            choices = {"opensAt: the pressure difference that opens it; always needed", NAME})
    public static CheckValve checkValve(Map<String, ?> given, Object open) {
        Choices choices = Choices.of("checkValve", given, "opensAt", "name");
        return new CheckValve(
                choices.text("name", "check valve"),
                choices.quantity("opensAt", Pressure.KIND),
                coefficient(open, "a check valve"));
    }

    /** Makes a bypass valve. */
    @Word(
            help = "A bypass valve that opens on pressure difference, by its flow coefficient when it is open.",
            example = "bypassValve(10.kv, opensAt: 120.kPa)",
            choices = {"opensAt: the pressure difference at which it opens; always needed", NAME})
    public static BypassValve bypassValve(Map<String, ?> given, Object open) {
        Choices choices = Choices.of("bypassValve", given, "opensAt", "name");
        return new BypassValve(
                choices.text("name", "bypass valve"),
                choices.quantity("opensAt", Pressure.KIND),
                coefficient(open, "a bypass valve"));
    }

    /** Makes a minimum-flow valve. */
    @Word(
            help =
                    "A valve that bypasses what the pump lacks of its least flow, by its flow coefficient when it is open."
                            + " What passes it is load of the pump and of no use to anybody.",
            example = "branch('bypass', minimumFlowValve(15.m3ph, 10.kv))")
    public static MinimumFlowValve minimumFlowValve(Object least, Object open) {
        return new MinimumFlowValve(
                "minimum-flow valve",
                Wanted.flow(least, "the least flow of minimumFlowValve"),
                coefficient(open, "a minimum-flow valve"));
    }

    /** Says the authority of a valve. */
    @Word(
            help =
                    "Both authorities of a control valve: from the head of the open valve and that of its whole circuit, both at"
                            + " design flow, and the head across the circuit when the valve is shut.",
            example = "valveAuthority(4.m, 9.m, 13.m)")
    public static Authority valveAuthority(Object openValve, Object circuit, Object shut) {
        return Authority.of(
                Wanted.head(openValve, "the open valve of valveAuthority"),
                Wanted.head(circuit, "the circuit of valveAuthority"),
                Wanted.head(shut, "the shut valve of valveAuthority"));
    }

    /** Makes an installed characteristic. */
    @Word(
            help =
                    "How the flow of a circuit goes with the stroke of its valve, at an authority, where the head across the"
                            + " circuit is constant.",
            example = "installedCharacteristic(30.percent, characteristic: 'equal percentage')",
            choices = {KINDS, RANGE})
    public static InstalledCharacteristic installedCharacteristic(Map<String, ?> given, Object authority) {
        Choices choices = Choices.of("installedCharacteristic", given, "characteristic", "rangeability");
        return new InstalledCharacteristic(
                characteristic(choices, "equal percentage"),
                Wanted.ratio(authority, "the authority of an installed characteristic"));
    }

    /** Makes an installed characteristic. */
    @Word(help = "Of equal percentage unless chosen otherwise.", example = "installedCharacteristic(30.percent)")
    public static InstalledCharacteristic installedCharacteristic(Object authority) {
        return installedCharacteristic(Map.of(), authority);
    }

    private static Characteristic characteristic(Choices choices, String otherwise) {
        if (choices.object("characteristic", Object.class, otherwise) instanceof List<?> rows) {
            return Characteristic.through(rows.stream().map(ValveWords::point).toList());
        }
        String kind = choices.text("characteristic", otherwise).strip().toLowerCase(Locale.ROOT);
        double range = choices.number("rangeability", Characteristic.USUAL_RANGEABILITY);
        return switch (kind) {
            case "equal percentage" -> Characteristic.equalPercentage(range);
            case "linear" -> choices.has("rangeability") ? Characteristic.linear(range) : Characteristic.linear();
            case "quick opening" -> Characteristic.quickOpening();
            default -> throw unknown(kind);
        };
    }

    private static Refusal unknown(String kind) {
        List<String> all = List.of("equal percentage", "linear", "quick opening");
        return new Refusal(
                ScriptProblem.WRONG_VALUE,
                "The text '" + kind + "' was given for the choice characteristic:",
                "It is " + Nearest.either(all) + ", or a list of rows",
                Nearest.sentence(Nearest.to(kind, all), "Write one of these"));
    }

    private static Characteristic.Point point(Object given) {
        Object[] row = Rows.of(given, 2, "a row of the choice characteristic:", "an opening and a share of Kvs");
        return new Characteristic.Point(
                Wanted.ratio(row[0], "the opening of a characteristic"),
                Wanted.ratio(row[1], "the share of Kvs of a characteristic"));
    }

    /** A bare number is refused here in words of its own: Kv or Cv is what is so often mixed. */
    private static FlowCoefficient coefficient(Object given, String part) {
        if (given instanceof Number number) {
            throw new Refusal(
                    PartProblem.MIXED_FLOW_COEFFICIENTS,
                    "The bare number " + number + " was given for the flow coefficient of " + part,
                    "It must say whether it is a Kv or a Cv, which differ by a factor of 1.156",
                    "Write " + number + ".kv or " + number + ".cv");
        }
        return Wanted.quantity(FlowCoefficient.KIND, given, "the flow coefficient of " + part);
    }
}
