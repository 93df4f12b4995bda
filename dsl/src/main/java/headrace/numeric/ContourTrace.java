package headrace.numeric;

import headrace.numeric.FieldSamples.Sample;
import java.util.ArrayList;
import java.util.List;

/** Follows one level through the cells of a grid. */
final class ContourTrace {
    private final FieldSamples samples;
    private final double level;
    private final ContourJoin join;

    /**
     * The part of a cell that lies inside the field.
     *
     * @param corners in order around it
     * @param sides of the whole grid, each from the corner of its number to the next
     */
    private record Part(List<Sample> corners, List<Long> sides) {
        Sample corner(int index) {
            return corners.get(index % corners.size());
        }

        Sample middle(FieldSamples samples) {
            return middleOf(corners, samples);
        }

        /** Returns the middle of the corners that belong to the grid, for a part that ends at the field's edge. */
        Sample base(FieldSamples samples) {
            Sample middle = middleOf(corners.subList(1, corners.size() - 1), samples);
            return middle.inside() ? middle : corners.get(1);
        }

        private static Sample middleOf(List<Sample> some, FieldSamples samples) {
            return samples.at(
                    some.stream().mapToDouble(Sample::x).average().orElseThrow(),
                    some.stream().mapToDouble(Sample::y).average().orElseThrow());
        }
    }

    ContourTrace(FieldSamples samples, double level) {
        this.samples = samples;
        this.level = level;
        this.join = new ContourJoin(level, samples.grid());
    }

    List<Contour> contours() {
        return join.contours();
    }

    /** Walks around a cell; each run of corners inside the field, with the edge of the field, is a part to cut. */
    void cell(int i, int j) {
        if (isPassedBy(i, j)) {
            return;
        }
        List<Sample> corners = List.of(
                samples.corner(i, j), samples.corner(i + 1, j), samples.corner(i + 1, j + 1), samples.corner(i, j + 1));
        List<Long> sides = List.of(lying(i, j), standing(i + 1, j), lying(i, j + 1), standing(i, j));
        if (corners.stream().allMatch(Sample::inside)) {
            cut(new Part(corners, sides));
            return;
        }
        for (int start = 0; start < 4; start++) {
            if (corners.get(start).inside() && !corners.get((start + 3) % 4).inside()) {
                cut(run(corners, sides, start));
            }
        }
    }

    /** Most cells lie inside the field and on one side of the level: seen at once, before anything is made of them. */
    private boolean isPassedBy(int i, int j) {
        boolean above = isAbove(samples.corner(i, j));
        for (int corner = 0; corner < 4; corner++) {
            Sample at = samples.corner(i + corner % 2, j + corner / 2);
            if (!at.inside() || isAbove(at) != above) {
                return false;
            }
        }
        return true;
    }

    private Part run(List<Sample> corners, List<Long> sides, int start) {
        List<Sample> part = new ArrayList<>();
        List<Long> keys = new ArrayList<>();
        int before = (start + 3) % 4;
        part.add(samples.edge(corners.get(start), corners.get(before)));
        keys.add(sides.get(before));
        int at = start;
        for (; corners.get(at % 4).inside(); at++) {
            part.add(corners.get(at % 4));
            keys.add(sides.get(at % 4));
        }
        part.add(samples.edge(corners.get((at - 1) % 4), corners.get(at % 4)));
        keys.add(ContourJoin.ALONE);
        return new Part(part, keys);
    }

    /** Adds the steps of the contour through a part; at a saddle the value in the middle decides what joins. */
    private void cut(Part part) {
        int count = part.corners().size();
        int above = (int) part.corners().stream().filter(this::isAbove).count();
        if (above == 0 || above == count) {
            return;
        }
        boolean middle = isAbove(part.middle(samples));
        for (int side = 0; side < count; side++) {
            if (isAbove(part.corner(side)) == middle && isAbove(part.corner(side + 1)) != middle) {
                int back = side + 1;
                while (isAbove(part.corner(back + 1)) != middle) {
                    back++;
                }
                join.step(crossing(part, side), crossing(part, back % count));
            }
        }
    }

    /** Returns the key of the point where the level crosses a side, which is searched for if it is not known yet. */
    private long crossing(Part part, int side) {
        long key = part.sides().get(side);
        if (join.knows(key)) {
            return key;
        }
        boolean above = isAbove(part.corner(side));
        double low = 0;
        double high = 1;
        for (int i = 0; i < FieldSamples.HALVINGS; i++) {
            double share = (low + high) / 2;
            if (isAbove(onSide(part, side, share)) == above) {
                low = share;
            } else {
                high = share;
            }
        }
        Sample point = onSide(part, side, low);
        return join.point(key, point.x(), point.y());
    }

    /** Returns a point of a side; where the field ends within the cell, the point of its edge behind that. */
    private Sample onSide(Part part, int side, double share) {
        Sample point = samples.between(part.corner(side), part.corner(side + 1), share);
        if (part.sides().get(side) != ContourJoin.ALONE) {
            return point;
        }
        Sample base = part.base(samples);
        Sample beyond = samples.between(base, point, 2);
        return beyond.inside() ? point : samples.edge(base, beyond);
    }

    private boolean isAbove(Sample sample) {
        return sample.value() >= level;
    }

    private long lying(int i, int j) {
        return 2L * ((long) j * (samples.grid().cells() + 1) + i);
    }

    private long standing(int i, int j) {
        return lying(i, j) + 1;
    }
}
