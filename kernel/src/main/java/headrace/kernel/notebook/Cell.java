package headrace.kernel.notebook;

import java.util.List;

/** One cell of a notebook. */
public sealed interface Cell {
    /** Returns the cell's name in the file, unique in its notebook; empty until the cell stands in one. */
    String id();

    /** Returns what the file says about the cell beside its text. */
    Fields metadata();

    /** Returns the text of the cell. */
    String source();

    /** Returns whether the cell carries a tag. */
    default boolean isTagged(String tag) {
        return metadata().texts("tags").contains(tag);
    }

    /** Returns a cell of code that has not run. */
    static Code code(String source) {
        return new Code("", Fields.NONE, source, 0, List.of());
    }

    /** Returns a cell of Markdown text. */
    static Markdown markdown(String source) {
        return new Markdown("", Fields.NONE, source, Fields.NONE);
    }

    /**
     * Code, and what it left behind when it ran.
     *
     * @param count the number of the cell in the run, from 1; 0 if it has not run
     * @param outputs what it left behind, in order
     */
    record Code(String id, Fields metadata, String source, int count, List<CellOutput> outputs) implements Cell {
        /** Keeps the outputs from changing. */
        public Code {
            outputs = List.copyOf(outputs);
        }

        /** Returns the cell with something else said about it. */
        public Code with(Fields said) {
            return new Code(id, said, source, count, outputs);
        }

        /** Returns the cell as it is after a run. */
        public Code ran(int number, List<CellOutput> left) {
            return new Code(id, metadata, source, number, left);
        }
    }

    /**
     * Text in Markdown.
     *
     * @param attachments pictures that the text shows: file name to media types
     */
    record Markdown(String id, Fields metadata, String source, Fields attachments) implements Cell {}

    /**
     * Text that is neither run nor rendered.
     *
     * @param attachments as for Markdown
     */
    record Raw(String id, Fields metadata, String source, Fields attachments) implements Cell {}
}
