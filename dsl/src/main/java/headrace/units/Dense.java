package headrace.units;

/** What has a density, so that a head and a pressure can be told from each other in it: a liquid, or a density. */
public interface Dense {
    /** Returns the density. */
    Density density();
}
