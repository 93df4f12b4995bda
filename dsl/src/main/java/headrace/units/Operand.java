package headrace.units;

/** What arithmetic can be done with beside plain numbers: a quantity, money, a price of energy. */
public interface Operand {
    /** Returns what this is, as it stands in a sentence, such as {@code flow}. */
    String what();
}
