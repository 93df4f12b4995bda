package headrace.report.circuit;

import headrace.circuit.part.DecouplerPipe;
import headrace.circuit.part.Part;
import headrace.circuit.part.PlantResistance;
import headrace.circuit.part.Strainer;
import headrace.circuit.part.coil.Coil;
import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.valve.Authority;
import headrace.circuit.part.valve.BalancingValve;
import headrace.circuit.part.valve.BypassValve;
import headrace.circuit.part.valve.CheckValve;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.FixedValve;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.circuit.part.valve.PressureIndependentValve;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Velocity;
import java.util.Locale;

/** How the parts of a circuit show themselves: what they are, and the head that they lose in cold water. */
public final class PartReports {
    /** A part does not know the liquid that it will stand in; a reader wants to see it at work all the same. */
    static final Liquid WATER = Liquid.water(Temperature.celsius(20));

    private static final Velocity IN_A_PIPE = Velocity.metresPerSecond(1.5);

    /** Of the flow at 1 bar, which is what a flow coefficient tells: there a valve takes about a tenth of that. */
    private static final double OF_COEFFICIENT = 1 / 3.0;

    private PartReports() {}

    /** Shows a part. */
    public static Shown part(Part part) {
        Composed shown = Composed.titled(capital(part.toString()));
        Notes notes = part.notes(WATER);
        facts(part, shown);
        if (part instanceof DecouplerPipe) {
            return shown.line("It loses no head, whichever way it is passed.").shown(notes, part.basis());
        }
        Flow usual = usualFlow(part);
        shown.fact(
                part instanceof PressureIndependentValve ? "head it needs" : "head at " + usual, headAt(part, usual));
        PartCharts.of(part, usual).forEach(shown::chart);
        return shown.shown(notes.and(part.notesAt(usual, WATER)), part.basis().and(WATER.basis()));
    }

    /** Shows the heat of a coil. */
    public static Shown heat(CoilHeat coil) {
        return Composed.titled("Heat of a " + coil)
                .line("Half of the flow still gives " + coil.heatAt(Ratio.percent(50)) + " of the heat.")
                .chart(PartCharts.heat(coil))
                .shown();
    }

    /** Shows the authorities of a valve. */
    public static Shown authority(Authority authority) {
        return Composed.titled("Authority of a valve")
                .fact("design authority", Numbers.print(authority.design().si()))
                .fact("effective authority", Numbers.print(authority.effective().si()))
                .fact("enough from", Numbers.print(Authority.LOW))
                .shown(authority.notes());
    }

    /** Returns a head that a bare part loses in cold water. */
    static Head headAt(Part part, Flow flow) {
        return part.headAt(flow, WATER);
    }

    /** Returns the flow that a part was made for, or one that is common in it. */
    static Flow usualFlow(Part part) {
        if (part instanceof Coil coil) {
            return coil.design().flow();
        }
        if (part instanceof PlantResistance resistance) {
            return resistance.drop().flow();
        }
        if (part instanceof Strainer strainer) {
            return strainer.clean().flow();
        }
        if (part instanceof Pipe pipe) {
            double metres = pipe.bore().inside().metres();
            return Flow.cubicMetresPerSecond(IN_A_PIPE.si() * Math.PI / 4 * metres * metres);
        }
        if (part instanceof MinimumFlowValve valve) {
            return valve.least();
        }
        if (part instanceof PressureIndependentValve valve) {
            return valve.limit();
        }
        return Flow.cubicMetresPerHour(OF_COEFFICIENT * coefficient(part));
    }

    private static double coefficient(Part part) {
        if (part instanceof ControlValve valve) {
            return valve.open().kv();
        }
        if (part instanceof BalancingValve valve) {
            return valve.coefficient().kv();
        }
        if (part instanceof FixedValve valve) {
            return valve.coefficient().kv();
        }
        if (part instanceof BypassValve valve) {
            return valve.open().kv();
        }
        return part instanceof CheckValve valve ? valve.open().kv() : 1;
    }

    private static void facts(Part part, Composed shown) {
        if (part instanceof ControlValve valve) {
            shown.fact("flow coefficient, fully open", valve.open())
                    .fact("characteristic", valve.characteristic())
                    .fact("its actuator shuts against", valve.closeOff());
        } else if (part instanceof Pipe pipe) {
            shown.fact("inside diameter", pipe.bore().inside())
                    .fact("roughness", pipe.bore().roughness())
                    .fact("velocity at " + usualFlow(pipe), IN_A_PIPE);
        } else if (part instanceof BalancingValve valve) {
            shown.fact("setting", Numbers.print(valve.setting())).fact("flow coefficient there", valve.coefficient());
        } else if (part instanceof PressureIndependentValve valve) {
            shown.fact("holds", valve.limit())
                    .fact("between", valve.floor() + " and " + valve.most())
                    .fact("lift", valve.lift());
        } else if (part instanceof Coil coil) {
            shown.fact("head goes with flow to the power of", Numbers.print(coil.exponent()));
        } else if (part instanceof PlantResistance resistance) {
            shown.fact("head goes with flow to the power of", Numbers.print(resistance.exponent()));
        }
    }

    static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
