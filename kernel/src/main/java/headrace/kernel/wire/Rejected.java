package headrace.kernel.wire;

/** A message that is dropped unanswered, because an honest front end would not have sent it. */
public final class Rejected extends Exception {
    private static final long serialVersionUID = 1L;

    private final Reason reason;

    /** Why a message is dropped. */
    public enum Reason {
        /** Frames are missing. */
        INCOMPLETE("it has too few frames"),
        /** It carries no signature. */
        UNSIGNED("it is not signed"),
        /** Its signature does not belong to it. */
        FORGED("its signature is wrong"),
        /** It was received before. */
        REPEATED("it was received before"),
        /** A frame that is to be a JSON object is not. */
        GARBLED("it cannot be read");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** Returns the reason as the end of a sentence. */
        public String words() {
            return words;
        }
    }

    Rejected(Reason reason) {
        super(reason.words(), null, false, false);
        this.reason = reason;
    }

    /** Returns why. */
    public Reason reason() {
        return reason;
    }
}
