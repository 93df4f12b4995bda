package headrace.circuit.solve;

import headrace.circuit.part.LinkLaw;

/**
 * A link of a network: {@code head(from) − head(to) = law(flow)}, with the flow kept between a least and a most.
 *
 * <p>At the least flow the head across the link may be less than the law says (a check valve that is shut), at the most
 * flow it may be more (a valve that throttles to what is asked for). Everything between is on the law.
 *
 * <p>A limiter that gives way above its ceiling is two links in parallel: a {@link #terminal} with its flow, and a
 * {@link #check} link with the law {@code Q ↦ beyond(flow + Q)}, which opens at the ceiling.
 *
 * @param from the node at which a positive flow enters
 * @param to the node at which it leaves
 * @param law the head lost, in m for m³/s
 * @param least 0, or negative infinity for a link in which the flow may turn
 * @param most the flow that is asked for in m³/s, 0 or more, or infinity; 0 takes the link out of the network
 */
public record Link(int from, int to, LinkLaw law, double least, double most) {
    /** Refuses bounds that no link has; a mistake of the program, not of its user. */
    public Link {
        if (from == to || !(least == 0 || least == Double.NEGATIVE_INFINITY) || !(most >= 0)) {
            throw new IllegalArgumentException(
                    "no link leads from " + from + " to " + to + " with flows from " + least + " to " + most);
        }
    }

    /** Returns a link in which the liquid flows either way. */
    public static Link plain(int from, int to, LinkLaw law) {
        return new Link(from, to, law, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** Returns a link that lets nothing back: {@code 0 ≤ Q ⟂ law(Q) − Δh ≥ 0}. */
    public static Link check(int from, int to, LinkLaw law) {
        return new Link(from, to, law, 0, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns a link that delivers what is asked for or stands fully open.
     *
     * @param open the law with the valve fully open
     * @param demand the flow that is asked for in m³/s
     */
    public static Link terminal(int from, int to, LinkLaw open, double demand) {
        return new Link(from, to, open, 0, demand);
    }
}
