package headrace.data;

import headrace.circuit.Branch;
import headrace.circuit.part.Drop;
import headrace.circuit.part.Part;
import headrace.circuit.part.PlantResistance;
import headrace.circuit.part.coil.Coil;
import headrace.circuit.part.fitting.Fitting;
import headrace.circuit.part.fitting.FittingLoss;
import headrace.circuit.part.pipe.Bore;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.pipe.PipeSeries;
import headrace.circuit.part.valve.BypassValve;
import headrace.circuit.part.valve.Characteristic;
import headrace.circuit.part.valve.CheckValve;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.FixedValve;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.circuit.part.valve.PressureIndependentValve;
import headrace.data.Form.Field;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Length;
import headrace.units.Pressure;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** One row of a circuit file: a branch and its parts. */
final class CircuitRow {
    private static final Pattern SIZE = Pattern.compile("([a-z]+)\\s+(?:dn\\s*)?([0-9]{1,4})");

    private final Sheet sheet;
    private final int row;
    private final String name;
    private final Optional<Flow> design;

    CircuitRow(Sheet sheet, int row) {
        this.sheet = sheet;
        this.row = row;
        this.name = sheet.entry(row, CircuitFile.BRANCH).text();
        this.design = sheet.given(row, CircuitFile.FLOW).or(() -> sheet.given(row, CircuitFile.LEAST_FLOW));
    }

    /** Returns the branch; what a part refuses is refused at the row. */
    Branch branch() {
        try {
            List<Part> parts = new ArrayList<>();
            pipe().ifPresent(parts::add);
            loss().ifPresent(parts::add);
            valve().ifPresent(parts::add);
            sheet.given(row, CircuitFile.BALANCING)
                    .ifPresent(as -> parts.add(new FixedValve("balancing valve of " + name, as)));
            sheet.given(row, CircuitFile.LIMITER).ifPresent(floor -> parts.add(limiter(floor)));
            cracking().ifPresent(parts::add);
            String from = sheet.entry(row, CircuitFile.FROM).text();
            String to = sheet.entry(row, CircuitFile.TO).text();
            return new Branch(name, from, to, parts, design);
        } catch (Refusal refusal) {
            throw refusal.place().isPresent()
                    ? refusal
                    : refusal.at(sheet.entry(row, CircuitFile.BRANCH).place());
        }
    }

    private Optional<Part> valve() {
        Optional<FlowCoefficient> open = sheet.given(row, CircuitFile.VALVE);
        Optional<Flow> least = sheet.given(row, CircuitFile.LEAST_FLOW);
        Optional<Pressure> closeOff = sheet.given(row, CircuitFile.CLOSE_OFF);
        if (open.isEmpty() && least.isPresent()) {
            throw missing(CircuitFile.LEAST_FLOW, CircuitFile.VALVE);
        }
        if (open.isEmpty() && closeOff.isPresent()) {
            throw missing(CircuitFile.CLOSE_OFF, CircuitFile.VALVE);
        }
        return open.map(kv -> least.isPresent()
                ? new MinimumFlowValve("minimum-flow valve of " + name, least.get(), kv)
                : new ControlValve("control valve of " + name, kv, Characteristic.equalPercentage(), closeOff));
    }

    /** A check valve or a bypass valve, each with the pressure difference that opens it. */
    private Optional<Part> cracking() {
        Optional<FlowCoefficient> check = sheet.given(row, CircuitFile.CHECK);
        Optional<FlowCoefficient> bypass = sheet.given(row, CircuitFile.BYPASS);
        Field<?> stated = check.isPresent() ? CircuitFile.CHECK : CircuitFile.BYPASS;
        Optional<Pressure> opensAt = sheet.given(row, CircuitFile.OPENS_AT);
        if (check.isPresent() && bypass.isPresent()) {
            throw sheet.entry(row, CircuitFile.BYPASS)
                    .refused(
                            DataProblem.CONTRADICTING_STATEMENTS,
                            "Asked to read '" + name + "' with a check valve and a bypass valve",
                            "A row has one pressure difference at which a valve opens",
                            "Give one of them a row of its own");
        }
        if (check.isEmpty() && bypass.isEmpty()) {
            if (opensAt.isPresent()) {
                throw missing(CircuitFile.OPENS_AT, CircuitFile.CHECK);
            }
            return Optional.empty();
        }
        Pressure at = opensAt.orElseThrow(() -> missing(stated, CircuitFile.OPENS_AT));
        return Optional.of(
                check.isPresent()
                        ? new CheckValve("check valve of " + name, at, check.get())
                        : new BypassValve("bypass valve of " + name, at, bypass.orElseThrow()));
    }

    private PressureIndependentValve limiter(Pressure floor) {
        Flow set = design.orElseThrow(() -> missing(CircuitFile.LIMITER, CircuitFile.FLOW));
        String called = "pressure-independent valve of " + name;
        return new PressureIndependentValve(called, set, floor, PressureIndependentValve.USUAL_CEILING, Ratio.of(1));
    }

    private Optional<Part> loss() {
        return sheet.given(row, CircuitFile.LOSS).map(pressure -> {
            Flow at = sheet.given(row, CircuitFile.LOSS_AT)
                    .or(() -> design)
                    .orElseThrow(() -> missing(CircuitFile.LOSS, CircuitFile.LOSS_AT));
            Drop drop = Drop.of(at, pressure);
            return design.isPresent()
                    ? Coil.of("coil of " + name, drop)
                    : PlantResistance.of("resistance of " + name, drop);
        });
    }

    private Optional<Part> pipe() {
        Optional<Entry> size = sheet.text(row, CircuitFile.PIPE);
        Optional<Length> inside = sheet.given(row, CircuitFile.INSIDE);
        if (size.isEmpty() && inside.isEmpty()) {
            refuseLoose(CircuitFile.LENGTH);
            refuseLoose(CircuitFile.K);
            return Optional.empty();
        }
        if (size.isPresent() && inside.isPresent()) {
            throw size.get()
                    .refused(
                            DataProblem.CONTRADICTING_STATEMENTS,
                            "Asked to read '" + name + "' with a pipe '"
                                    + size.get().text() + "' and " + inside.get() + " inside",
                            "A pipe is of a series, or of one's own by its inside diameter and roughness",
                            "Empty one of the two cells");
        }
        Length length = sheet.given(row, CircuitFile.LENGTH)
                .orElseThrow(
                        () -> missing(size.isPresent() ? CircuitFile.PIPE : CircuitFile.INSIDE, CircuitFile.LENGTH));
        Bore bore = size.map(this::ofSeries).orElseGet(() -> ownBore(inside.orElseThrow()));
        List<Fitting> fittings = sheet.given(row, CircuitFile.K).stream()
                .map(k -> Fitting.of("fittings", FittingLoss.constant(k.value())))
                .toList();
        return Optional.of(new Pipe("pipe of " + name, length, bore, fittings));
    }

    private Bore ownBore(Length inside) {
        return Bore.of(
                inside,
                sheet.given(row, CircuitFile.ROUGHNESS)
                        .orElseThrow(() -> missing(CircuitFile.INSIDE, CircuitFile.ROUGHNESS)));
    }

    private Bore ofSeries(Entry size) {
        Matcher matcher = SIZE.matcher(Form.normal(size.text()));
        Optional<PipeSeries> series = matcher.matches()
                ? Arrays.stream(PipeSeries.values())
                        .filter(one -> one.material().equals(matcher.group(1)))
                        .findFirst()
                : Optional.empty();
        if (series.isEmpty()) {
            throw size.refused(
                    DataProblem.VALUE_NOT_POSSIBLE,
                    "Asked to read '" + size.text() + "' as a pipe",
                    "A pipe is one of "
                            + Arrays.stream(PipeSeries.values())
                                    .map(PipeSeries::material)
                                    .collect(Collectors.joining(", "))
                            + ", and its nominal size",
                    "Write it as steel 100, or give inside and roughness");
        }
        try {
            Bore bore = Bore.of(series.get().size(Integer.parseInt(matcher.group(2))));
            return sheet.given(row, CircuitFile.ROUGHNESS)
                    .map(bore::withRoughness)
                    .orElse(bore);
        } catch (Refusal refusal) {
            throw refusal.place().isPresent() ? refusal : refusal.at(size.place());
        }
    }

    private void refuseLoose(Field<?> field) {
        sheet.text(row, field).ifPresent(entry -> {
            throw entry.refused(
                    DataProblem.CONTRADICTING_STATEMENTS,
                    "Asked to read '" + name + "' with a " + field.column() + " and without a pipe",
                    "It belongs to a pipe of that branch",
                    "Say the pipe, or empty the cell");
        });
    }

    private Refusal missing(Field<?> stated, Field<?> wanted) {
        return sheet.entry(row, stated)
                .refused(
                        DataProblem.CONTRADICTING_STATEMENTS,
                        "Asked to read '" + name + "' with " + stated.column() + " and without " + wanted.column(),
                        "One needs the other",
                        "Fill in " + wanted.column() + ", or empty the cell");
    }
}
