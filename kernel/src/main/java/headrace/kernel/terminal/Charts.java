package headrace.kernel.terminal;

/** How the shell shows a chart. */
public enum Charts {
    /** As a picture where the terminal says that it can, else in dots; in words where the output is no terminal. */
    AUTO,
    /** As a picture, whatever the terminal says. */
    PICTURE,
    /** In dots of Braille and letters. */
    DOTS,
    /** In words. */
    WORDS
}
