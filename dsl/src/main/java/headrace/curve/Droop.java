package headrace.curve;

import headrace.units.Flow;
import headrace.units.Head;

/**
 * A head that rises with flow: the same head is then met at two flows.
 *
 * @param rise by how much the head rises, at most
 * @param foot the flow from which it rises
 * @param flowOfMaximum the flow at which it is greatest
 * @param maximum the greatest head
 */
public record Droop(Head rise, Flow foot, Flow flowOfMaximum, Head maximum) {}
