package headrace.data;

import headrace.units.Numbers;

/** A cell of a table. */
public sealed interface Cell {
    /** The cell that holds nothing, because there is no such value. */
    Cell NOTHING = new Nothing();

    /** Returns the cell as a person reads it: numbers to four digits. */
    String print();

    /**
     * A cell of text.
     *
     * @param text the text, in one line
     */
    record Text(String text) implements Cell {
        /** Folds line breaks and other control characters into blanks. */
        public Text {
            text = text.replaceAll("\\p{Cntrl}+", " ").strip();
        }

        @Override
        public String print() {
            return text;
        }
    }

    /**
     * A cell with a number in its column's unit.
     *
     * @param value the number, finite
     */
    record Number(double value) implements Cell {
        /** Makes no difference between the two zeros. */
        public Number {
            value += 0.0;
        }

        @Override
        public String print() {
            return Numbers.print(value);
        }
    }

    /** A cell that holds nothing. */
    record Nothing() implements Cell {
        @Override
        public String print() {
            return "–";
        }
    }
}
