package headrace.script;

import headrace.circuit.part.DecouplerPipe;
import headrace.circuit.part.Drop;
import headrace.circuit.part.PlantResistance;
import headrace.circuit.part.Strainer;
import headrace.circuit.part.coil.Coil;
import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.coil.CoilRating;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.circuit.part.fitting.Fitting;
import headrace.circuit.part.fitting.FittingLoss;
import headrace.circuit.part.fitting.StandardFitting;
import headrace.circuit.part.pipe.Bore;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.pipe.PipeSeries;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Length;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Quantities;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** Words for the parts of a circuit that do not move: pipes, coils, strainers, the plant. */
public final class PartWords implements Words {
    private static final String NAME = "name: what it is called; after its branch unless chosen";
    private static final String COIL =
            "A coil: what it takes at its design flow, as a pressure difference in the liquid of the circuit or as a head.";
    private static final String COIL_EXAMPLE = "coil(16.m3ph, 25.kPa)";
    private static final String RESISTANCE = "Anything that takes a pressure difference or a head at a known flow: a"
            + " chiller, a boiler, a heat exchanger.";
    private static final String RESISTANCE_EXAMPLE = "resistance(80.m3ph, 45.kPa)";
    private static final String STRAINER = "A strainer: what it takes at a flow when it is clean.";
    private static final String STRAINER_EXAMPLE = "strainer(80.m3ph, 6.kPa)";

    @Override
    public String subject() {
        return "Parts of a circuit";
    }

    /** Lays a pipe. */
    @Word(
            help = "A straight pipe of a length, of a series and its nominal size or by its inside diameter, with its"
                    + " fittings. Friction by Colebrook; a note where it is between laminar and turbulent.",
            example = "pipe(24.m, steel: 100, fittings: ['welded elbow': 4, 'gate valve': 1])",
            choices = {
                "steel: DN, 10 to 300",
                "copper: outside diameter in whole mm, 12 to 108",
                "plastic: outside diameter in whole mm, 20 to 110",
                "inside: inside diameter of a pipe of one's own",
                "roughness: roughness of its wall; that of the series unless chosen, always needed with inside:",
                "fittings: how many there are of each, by two K; by three K with method: 'three K'",
                "method: 'two K' or 'three K' for fittings; two K unless chosen",
                "k: the sum of the K of its fittings, instead of fittings",
                "diameters: the equivalent length of its fittings in diameters, instead of either",
                NAME
            })
    public static Pipe pipe(Map<String, ?> given, Object length) {
        Choices choices = Choices.of(
                "pipe",
                given,
                "steel",
                "copper",
                "plastic",
                "inside",
                "roughness",
                "fittings",
                "method",
                "k",
                "diameters",
                "name");
        Length metres = Wanted.quantity(Length.KIND, length, "the length of a pipe");
        Pipe bare = new Pipe(choices.text("name", "pipe"), metres, bore(choices), List.of());
        return bare.with(fittings(choices).toArray(Fitting[]::new));
    }

    private static Bore bore(Choices choices) {
        List<PipeSeries> named = Stream.of(PipeSeries.values())
                .filter(series -> choices.has(series.material()))
                .toList();
        if (named.size() + (choices.has("inside") ? 1 : 0) != 1) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "A pipe was given " + (named.isEmpty() && !choices.has("inside") ? "no size" : "several sizes"),
                    "It has one of steel:, copper:, plastic: and inside:",
                    "Write it as pipe(24.m, steel: 100)");
        }
        if (named.isEmpty()) {
            return Bore.of(choices.quantity("inside", Length.KIND), choices.quantity("roughness", Length.KIND));
        }
        PipeSeries series = named.get(0);
        Bore bore = Bore.of(series.size(choices.whole(series.material())));
        return choices.has("roughness") ? bore.withRoughness(choices.quantity("roughness", Length.KIND)) : bore;
    }

    private static List<Fitting> fittings(Choices choices) {
        List<Fitting> all = new ArrayList<>();
        if (choices.has("fittings")) {
            boolean three = threeK(choices.text("method", "two K"));
            Map<?, ?> counts = choices.object("fittings", Map.class);
            counts.forEach((name, count) -> {
                StandardFitting fitting = StandardFitting.named(String.valueOf(name));
                int number = Wanted.whole(count, "how many of '" + name + "' a pipe has");
                all.add((three ? fitting.byThreeK() : fitting.byTwoK()).times(number));
            });
        }
        if (choices.has("k")) {
            all.add(Fitting.of("fittings", FittingLoss.constant(choices.number("k"))));
        }
        if (choices.has("diameters")) {
            all.add(Fitting.of("fittings", FittingLoss.equivalentLength(choices.number("diameters"))));
        }
        return all;
    }

    private static boolean threeK(String method) {
        return switch (method.strip().toLowerCase(Locale.ROOT)) {
            case "two k" -> false;
            case "three k" -> true;
            default ->
                throw new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "The text '" + method + "' was given for the choice method: of pipe",
                        "Its fittings are taken by 'two K' or by 'three K'",
                        "Write one of these, or state fittings by k: or diameters:");
        };
    }

    /** Makes a coil. */
    @Word(help = COIL, example = COIL_EXAMPLE)
    public static Coil coil(Object flow, Object loss) {
        return coil(Map.of(), flow, loss);
    }

    /** Makes a coil. */
    @Word(
            help = COIL,
            example = COIL_EXAMPLE,
            choices = {
                "exponent: power of flow with which it goes, 1.8 to 2; 2 unless chosen",
                "reynolds: Reynolds number in its tubes at design flow, for a note where it turns laminar",
                NAME
            })
    public static Coil coil(Map<String, ?> given, Object flow, Object loss) {
        Choices choices = Choices.of("coil", given, "exponent", "reynolds", "name");
        return new Coil(
                choices.text("name", "coil"),
                drop(flow, loss, "a coil"),
                choices.number("exponent", 2),
                choices.number("reynolds", 0));
    }

    /** Makes a resistance. */
    @Word(help = RESISTANCE, example = RESISTANCE_EXAMPLE)
    public static PlantResistance resistance(Object flow, Object loss) {
        return resistance(Map.of(), flow, loss);
    }

    /** Makes a resistance. */
    @Word(
            help = RESISTANCE,
            example = RESISTANCE_EXAMPLE,
            choices = {"exponent: power of flow with which it goes, 1 to 2.2; 2 unless chosen", NAME})
    public static PlantResistance resistance(Map<String, ?> given, Object flow, Object loss) {
        Choices choices = Choices.of("resistance", given, "exponent", "name");
        return new PlantResistance(
                choices.text("name", "resistance"), drop(flow, loss, "a resistance"), choices.number("exponent", 2));
    }

    /** Makes a strainer. */
    @Word(help = STRAINER, example = STRAINER_EXAMPLE)
    public static Strainer strainer(Object flow, Object loss) {
        return strainer(Map.of(), flow, loss);
    }

    /** Makes a strainer. */
    @Word(
            help = STRAINER,
            example = STRAINER_EXAMPLE,
            choices = {"blocked: share of its free area that is blocked; none unless chosen", NAME})
    public static Strainer strainer(Map<String, ?> given, Object flow, Object loss) {
        Choices choices = Choices.of("strainer", given, "blocked", "name");
        return new Strainer(
                choices.text("name", "strainer"), drop(flow, loss, "a strainer"), choices.ratio("blocked", Ratio.ZERO));
    }

    /** Makes a decoupler. */
    @Word(
            help =
                    "The decoupler between a plant loop and a load loop, a pipe without resistance from supply to return. Its"
                            + " flow says which loop moves more; a note says where return water mixes into the supply.",
            example = "branch('decoupler', decoupler(), from: 'plant supply', to: 'plant return')")
    public static DecouplerPipe decoupler() {
        return new DecouplerPipe("decoupler");
    }

    /** Makes the heat of a coil. */
    @Word(
            help =
                    "How the heat of a coil goes with its flow, by effectiveness and transfer units, its air and its temperatures"
                            + " as at design.",
            example = "coilHeat(heat: 90.kW, water: 5.2.m3ph, liquid: water(70.degC), air: 3.kgps, enteringAir:"
                    + " 10.degC).heatAt(50.percent)",
            choices = {
                "heat: its heat at design; always needed",
                "water: its flow at design; always needed",
                "liquid: the liquid as it enters at design; always needed",
                "air: the flow of air; always needed",
                "enteringAir: the temperature of the air that enters; always needed",
                NAME
            })
    public static CoilHeat coilHeat(Map<String, ?> given) {
        Choices choices = Choices.of("coilHeat", given, "heat", "water", "liquid", "air", "enteringAir", "name");
        return CoilHeat.through(
                choices.text("name", "coil"),
                new CoilRating(
                        choices.quantity("heat", Power.KIND),
                        choices.quantity("water", Flow.KIND),
                        choices.object("liquid", Liquid.class),
                        choices.quantity("air", MassFlow.KIND),
                        choices.quantity("enteringAir", Temperature.KIND)));
    }

    /** Makes an emission law. */
    @Word(
            help =
                    "How the heat of an emitter goes with its flow, by one number a: L = q/(q + a·(1 − q)). 1 is a straight"
                            + " line, 0.3 to 0.7 are usual.",
            example = "emission(0.4).flowFor(50.percent)")
    public static EmissionLaw emission(Object a) {
        return new EmissionLaw(Wanted.number(a, "the number of an emission law"));
    }

    private static Drop drop(Object flow, Object loss, String part) {
        Flow at = Wanted.flow(flow, "the flow of " + part);
        Object value = loss instanceof CharSequence text ? Quantities.parse(text.toString()) : loss;
        return value instanceof Pressure pressure
                ? Drop.of(at, pressure)
                : Drop.of(at, Wanted.head(value, "the loss of " + part));
    }
}
