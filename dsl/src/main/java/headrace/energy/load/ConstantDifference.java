package headrace.energy.load;

import headrace.problem.Notes;
import headrace.record.Basis;

/** The same temperature difference at every load: {@code q = L}. */
record ConstantDifference() implements LoadToFlow {
    @Override
    public double flowShare(double load) {
        return load;
    }

    @Override
    public String name() {
        return "a constant temperature difference";
    }

    @Override
    public Notes notes() {
        return Notes.NONE;
    }

    @Override
    public Basis basis() {
        return Basis.of("load to flow: by a constant temperature difference, q = L");
    }

    @Override
    public String toString() {
        return name();
    }
}
