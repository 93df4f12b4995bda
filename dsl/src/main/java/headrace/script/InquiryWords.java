package headrace.script;

import headrace.data.inquiry.Inquiry;

/** Words about what somebody asks for. */
public final class InquiryWords implements Words {
    @Override
    public String subject() {
        return "Inquiry";
    }

    /** Reads an inquiry. */
    @Word(
            help =
                    "What a line of text asks for: flow, head, liquid, number of pumps, heat load, temperatures and supply, as"
                            + " values with units, and what had to be assumed.",
            example = "inquiry('480 gpm @ 62 ft, 30 % PG, 3 duty')")
    public static Inquiry inquiry(Object text) {
        return Inquiry.read(
                Wanted.object(CharSequence.class, text, "the text of inquiry").toString());
    }
}
