package headrace.chart;

import headrace.chart.paint.Box;
import headrace.chart.paint.LabelPlacer.Candidate;
import headrace.chart.paint.Track;
import java.awt.Shape;
import java.util.ArrayList;
import java.util.List;

/**
 * The places that the label of a mark would like, best first in cost.
 *
 * @param width of the label in pixels
 * @param height of the label in pixels
 * @param gap between the label and what it names
 */
record Candidates(double width, double height, double gap) {
    private static final int STATIONS = 40;

    /** How far a label beyond the end of a line may be moved up or down, in its heights: a frame may end just there. */
    private static final double BESIDE_ITS_END = 0.6;

    /** Returns places beyond the end of a line and on both sides of it, rather towards its end. */
    List<Candidate> beside(Track line) {
        List<Candidate> found = new ArrayList<>();
        double[] end = line.at(1);
        double[] begin = line.at(0);
        double forward = end[2] >= 0 ? 1 : -1;
        found.add(new Candidate(around(end[0] + forward * (gap + width / 2), end[1]), 0));
        for (double side : new double[] {-1, 1}) {
            found.add(new Candidate(
                    around(end[0] + forward * (gap + width / 2), end[1] + side * BESIDE_ITS_END * height), 4));
        }
        found.add(new Candidate(around(begin[0] - forward * (gap + width / 2), begin[1]), 30));
        for (int i = 0; i <= STATIONS; i++) {
            double share = (double) i / STATIONS;
            double[] at = line.at(share);
            double cost = 12 + 22 * Math.abs(share - 0.85);
            double up = at[2] >= 0 ? 1 : -1;
            addSide(found, at, up, cost);
            addSide(found, at, -up, cost + 2);
        }
        return found;
    }

    /** Adds the box that touches the line with its corner, and the one that touches it with its middle. */
    private void addSide(List<Candidate> found, double[] at, double side, double cost) {
        double awayX = side * at[3];
        double awayY = -side * at[2];
        double clear = 0.6 * gap;
        double cornerX = at[0] + awayX * clear + Math.signum(awayX) * width / 2;
        double cornerY = at[1] + awayY * clear + Math.signum(awayY) * height / 2;
        found.add(new Candidate(around(cornerX, cornerY), cost));
        double reach = Math.abs(awayX) * width / 2 + Math.abs(awayY) * height / 2 + clear;
        found.add(new Candidate(around(at[0] + awayX * reach, at[1] + awayY * reach), cost));
    }

    /** Returns places set into a line, rather where it runs level. */
    List<Candidate> setInto(Track line) {
        List<Candidate> found = new ArrayList<>();
        for (int i = 1; i < STATIONS; i++) {
            double share = (double) i / STATIONS;
            double[] at = line.at(share);
            double cost = 12 * Math.abs(share - 0.5) + 6 * Math.abs(at[3]);
            found.add(new Candidate(around(at[0], at[1]), cost));
        }
        return found;
    }

    /** Returns places around a point, rather to its upper right. */
    List<Candidate> around(Track point, double radius) {
        List<Candidate> found = new ArrayList<>();
        double x = point.x(0);
        double y = point.y(0);
        for (double far : new double[] {1, 2, 3.5}) {
            double reach = radius + far * gap;
            double right = x + reach + width / 2;
            double left = x - reach - width / 2;
            double above = y - reach - height / 2;
            double below = y + reach + height / 2;
            double cost = 16 * (far - 1);
            double aside = 0.7 * (reach + height / 2);
            found.add(new Candidate(around(right, y), cost));
            found.add(new Candidate(around(right - 0.3 * reach, y - aside), cost + 1));
            found.add(new Candidate(around(right - 0.3 * reach, y + aside), cost + 2));
            found.add(new Candidate(around(left, y), cost + 3));
            found.add(new Candidate(around(left + 0.3 * reach, y - aside), cost + 3));
            found.add(new Candidate(around(left + 0.3 * reach, y + aside), cost + 4));
            found.add(new Candidate(around(x, above), cost + 3));
            found.add(new Candidate(around(x, below), cost + 4));
        }
        return found;
    }

    /** Returns places wholly inside an area, rather in its middle. */
    List<Candidate> inside(Shape area) {
        List<Candidate> found = new ArrayList<>();
        java.awt.geom.Rectangle2D bounds = area.getBounds2D();
        int steps = 12;
        for (int i = 1; i < steps; i++) {
            for (int j = 1; j < steps; j++) {
                double x = bounds.getX() + bounds.getWidth() * i / steps;
                double y = bounds.getY() + bounds.getHeight() * j / steps;
                Box box = around(x, y);
                if (area.contains(box.x(), box.y(), box.width(), box.height())) {
                    found.add(new Candidate(box, 3.0 * (Math.abs(i - steps / 2) + Math.abs(j - steps / 2))));
                }
            }
        }
        return found;
    }

    private Box around(double x, double y) {
        return new Box(x - width / 2, y - height / 2, width, height);
    }
}
