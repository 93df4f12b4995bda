package headrace.kernel.headless.page;

import java.util.Optional;

/**
 * What a page says about the run beside the cells.
 *
 * @param file the name of the file that was run, without its folder
 * @param sha256 the SHA-256 of that file in hexadecimal
 * @param incomplete a sentence that says why the run did not come to its end; empty if it did
 * @param edition what it was made with
 */
public record PageFacts(String file, String sha256, Optional<String> incomplete, Edition edition) {}
