package headrace.script;

import headrace.problem.Problem;

/** What can be wrong with how a word of a script is used. */
public enum ScriptProblem implements Problem {
    /** A word, a variable or a property that does not exist. */
    UNKNOWN_WORD,
    /** A word was called with other arguments than it takes. */
    WRONG_ARGUMENTS,
    /** A choice by name that the word does not offer. */
    UNKNOWN_CHOICE,
    /** A choice that the word cannot do without. */
    MISSING_CHOICE,
    /** A value of another type or kind than is wanted. */
    WRONG_VALUE,
    /** A bare number where its unit decides what it means. */
    NUMBER_WITHOUT_UNIT,
    /** A pressure where a head is wanted: it becomes one only in a liquid. */
    PRESSURE_FOR_HEAD,
    /** A version of the script language that is not known. */
    UNKNOWN_LANGUAGE_VERSION
}
