package headrace.circuit;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.SquareLaw;
import java.util.ArrayList;
import java.util.List;

/** The laws of parts in a row, as one. */
record SeriesLaw(LinkLaw[] laws) implements LinkLaw {
    private static final LinkLaw NOTHING = new SquareLaw(0);

    /** Returns the sum of laws; those that go with the square of flow become one. */
    static LinkLaw of(List<LinkLaw> laws) {
        double squares = 0;
        List<LinkLaw> rest = new ArrayList<>();
        for (LinkLaw law : laws) {
            if (law instanceof SquareLaw square) {
                squares += square.metresPerSquaredFlow();
            } else {
                rest.add(law);
            }
        }
        if (squares > 0) {
            rest.add(new SquareLaw(squares));
        }
        return switch (rest.size()) {
            case 0 -> NOTHING;
            case 1 -> rest.get(0);
            default -> new SeriesLaw(rest.toArray(LinkLaw[]::new));
        };
    }

    @Override
    public double headMetres(double q) {
        double sum = 0;
        for (LinkLaw law : laws) {
            sum += law.headMetres(q);
        }
        return sum;
    }

    @Override
    public double slope(double q) {
        double sum = 0;
        for (LinkLaw law : laws) {
            sum += law.slope(q);
        }
        return sum;
    }

    /** The first law has the place to remember something; the others begin anew. */
    @Override
    public void evaluate(double q, double[] into, int at) {
        laws[0].evaluate(q, into, at);
        for (int i = 1; i < laws.length; i++) {
            into[at] += laws[i].headMetres(q);
            into[at + 1] += laws[i].slope(q);
        }
    }
}
