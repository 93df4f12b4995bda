package headrace.data.inquiry;

import headrace.problem.Problem;

/** What can be wrong with the text of an inquiry, and what an inquiry can have to say about itself. */
public enum InquiryProblem implements Problem {
    /** A part of the text that says nothing known. */
    UNREADABLE_INQUIRY,
    /** Something is said twice. */
    SAID_TWICE,
    /** A value that no inquiry can have. */
    INQUIRY_VALUE_NOT_POSSIBLE,
    /** Note: heat load and temperature difference ask for another flow than was stated. */
    HEAT_DISAGREES_WITH_FLOW
}
