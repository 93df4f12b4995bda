package headrace.kernel.session;

import java.util.List;

/**
 * What could stand at the cursor.
 *
 * @param start where the replaced text begins, in UTF-16 units
 * @param end where it ends
 * @param candidates what could stand there, best first
 */
public record Completion(int start, int end, List<Candidate> candidates) {
    /** Keeps the candidates from changing. */
    public Completion {
        candidates = List.copyOf(candidates);
    }

    /**
     * One thing that could stand at the cursor.
     *
     * @param text what is put in place
     * @param type what it is: {@code word}, {@code unit}, {@code choice}, {@code variable}, {@code method},
     *     {@code property}, {@code keyword} or {@code path}
     * @param signature how it is called, or empty
     */
    public record Candidate(String text, String type, String signature) {}
}
