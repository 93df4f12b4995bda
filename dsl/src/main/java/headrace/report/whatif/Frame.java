package headrace.report.whatif;

import headrace.problem.Refusal;
import headrace.report.Reports;
import headrace.report.Shown;
import java.awt.image.RenderedImage;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is drawn at one position of all controls.
 *
 * @param at the index of the position of each control
 * @param arrangement how its parts stand
 * @param parts what is drawn, in order; at least one
 */
public record Frame(List<Integer> at, Arrangement arrangement, List<FramePart> parts) {
    private static final int MOST_IN_A_ROW = 4;
    private static final int MOST_TABS = 8;

    /** How the parts of a frame stand. */
    public enum Arrangement {
        /** There is one. */
        ALONE,
        /** Side by side, to be compared. */
        ROW,
        /** One behind the other, each with its name on a tab. */
        TABS,
        /** There is nothing to draw: the one part says why. */
        REFUSED
    }

    /** Keeps the positions and parts from changing. */
    public Frame {
        at = List.copyOf(at);
        parts = List.copyOf(parts);
    }

    /**
     * Returns what is drawn of a value: a map of results behind tabs, a list of results side by side, anything else
     * alone.
     */
    static Frame of(List<Integer> at, Object given) {
        Object value = Reports.opened(given);
        if (value instanceof Map<?, ?> named) {
            List<Part> parts = named.entrySet().stream()
                    .limit(MOST_TABS)
                    .map(each -> Part.of(String.valueOf(each.getKey()), each.getValue()))
                    .toList();
            if (parts.stream().anyMatch(Part::isDrawn)) {
                return several(at, Arrangement.TABS, parts, named.size(), MOST_TABS);
            }
        }
        Part whole = Part.of("", value);
        if (value instanceof Collection<?> list && whole.report.isEmpty()) {
            List<Part> parts = list.stream()
                    .limit(MOST_TABS)
                    .map(each -> Part.of("", each))
                    .toList();
            if (parts.stream().anyMatch(Part::isDrawn)) {
                return several(at, Arrangement.ROW, parts, list.size(), MOST_IN_A_ROW);
            }
        }
        return new Frame(at, Arrangement.ALONE, List.of(whole.made()));
    }

    /** Returns a frame that says why there is nothing to draw. */
    static Frame refused(List<Integer> at, Refusal refusal) {
        return saying(at, refusal, refusal.getMessage());
    }

    /** Returns a frame that says how the calculation failed. */
    static Frame failed(List<Integer> at, Throwable failure) {
        String message = failure.getMessage() == null ? "" : ": " + failure.getMessage();
        return saying(at, failure, failure.getClass().getSimpleName() + message);
    }

    private static Frame saying(List<Integer> at, Throwable why, String text) {
        return new Frame(at, Arrangement.REFUSED, List.of(new FramePart("", why, Shown.line(text))));
    }

    /** Returns whether another frame has the same parts, so that one can be drawn in the place of the other. */
    public boolean isLike(Frame other) {
        return arrangement == other.arrangement && names().equals(other.names());
    }

    private List<String> names() {
        return parts.stream().map(FramePart::name).toList();
    }

    private static Frame several(List<Integer> at, Arrangement arrangement, List<Part> parts, int all, int most) {
        if (all > most) {
            throw new Refusal(
                    WhatIfProblem.TOO_MANY_PARTS,
                    "Asked for a what-if that draws " + all + " things at once",
                    "It draws up to " + MOST_IN_A_ROW + " side by side, from a list, and up to " + MOST_TABS
                            + " behind tabs, from a map",
                    "Let the block return fewer, or make two what-ifs of it");
        }
        return new Frame(at, arrangement, parts.stream().map(Part::made).toList());
    }

    /** A value with its report, which is made once: it is most of the work of a drawing. */
    private record Part(String name, Object value, Optional<Shown> report) {
        static Part of(String name, Object given) {
            Object value = Reports.opened(given);
            return new Part(name, value, Reports.of(value));
        }

        /** A map or list is taken apart only for what has something to draw: one of numbers stays what it is. */
        boolean isDrawn() {
            return report.isPresent() || isPicture();
        }

        /** A picture, or what a library that is not known here may draw. */
        private boolean isPicture() {
            return value instanceof RenderedImage
                    || value != null && !value.getClass().getName().matches("(java|javax|groovy|headrace)\\..*");
        }

        FramePart made() {
            return new FramePart(name, value, report.orElseGet(() -> Shown.line(String.valueOf(value))));
        }
    }
}
