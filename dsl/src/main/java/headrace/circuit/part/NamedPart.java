package headrace.circuit.part;

/** A part whose name can be changed, so that a branch can say which of many it is. */
public interface NamedPart extends Part {
    /** Returns this part under another name. */
    NamedPart named(String other);
}
