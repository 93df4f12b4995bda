package headrace.control;

import headrace.circuit.ClosingPlace;
import headrace.circuit.solve.LoopView;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Lets a law of the user's own look at the branches that it named, and at no other. */
final class SeenBranches {
    private final String law;
    private final ClosingPlace place;
    private final Map<String, Integer> links = new LinkedHashMap<>();

    SeenBranches(String law, List<String> branches, ClosingPlace place) {
        this.law = law;
        this.place = place;
        branches.forEach(branch -> links.put(branch, place.link(branch)));
    }

    /** Returns what is seen of a loop as it stands. */
    LoopState.Seen in(LoopView loop) {
        return new LoopState.Seen() {
            @Override
            public Head pumpHead() {
                return Head.metres(loop.head());
            }

            @Override
            public Head head(String branch) {
                return Head.metres(loop.headAcross(link(branch)));
            }

            @Override
            public Flow flow(String branch) {
                return Flow.cubicMetresPerSecond(loop.flow(link(branch)));
            }

            @Override
            public Ratio opening(String branch) {
                int link = link(branch);
                return Ratio.of(place.opening(link, loop.flow(link), loop.headAcross(link))
                        .orElseThrow(() -> new Refusal(
                                ControlProblem.NOTHING_SEEN_OF_CIRCUIT,
                                "The control law '" + law + "' asked for the opening of '" + branch + "'",
                                "That branch has no control valve",
                                "Look at its head or flow, or give it a control valve")));
            }
        };
    }

    private int link(String branch) {
        Integer link = links.get(branch);
        if (link == null) {
            List<String> names = List.copyOf(links.keySet());
            throw new Refusal(
                    ControlProblem.NOTHING_SEEN_OF_CIRCUIT,
                    "The control law '" + law + "' asked for '" + branch + "'",
                    "It says that it observes " + Nearest.either(names),
                    Nearest.sentence(Nearest.to(branch, names), "Add the branch to what it observes"));
        }
        return link;
    }
}
