package headrace.kernel.selfcheck;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.install.Installation;
import headrace.kernel.outside.InstalledKernel;
import headrace.kernel.selfcheck.Finding.State;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each fault is planted into an installed kernel, and the check for it is to find it. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SelfCheckTest {
    @TempDir
    static Path prefix;

    @TempDir
    Path own;

    private static String description;

    @BeforeAll
    static void install() throws IOException {
        description = Files.readString(InstalledKernel.below(prefix).description());
    }

    private List<Finding> checked(String described, String language) throws Exception {
        Files.writeString(own.resolve("kernel.json"), described);
        List<Finding> told = new ArrayList<>();
        List<Finding> all = SelfCheck.of(new Installation(own), language, told::add);
        assertEquals(told, all);
        assertEquals(10, all.size());
        for (Finding each : all) {
            assertEquals(
                    each.state() == State.WRONG,
                    !each.wrong().isEmpty() && !each.mend().isEmpty(),
                    each.check());
        }
        return all;
    }

    private static List<String> wrong(List<Finding> findings) {
        return findings.stream()
                .filter(each -> each.state() == State.WRONG)
                .map(Finding::check)
                .toList();
    }

    private static long untried(List<Finding> findings) {
        return findings.stream().filter(each -> each.state() == State.UNTRIED).count();
    }

    private static String classPath() {
        int number = 0;
        while (!argument(number).equals("\"-cp\"")) {
            number++;
        }
        return argument(number + 1);
    }

    private static String argument(int number) {
        return com.google.gson.JsonParser.parseString(description)
                .getAsJsonObject()
                .getAsJsonArray("argv")
                .get(number)
                .toString();
    }

    @Test
    void an_installed_kernel_is_well_in_ten_ways() throws Exception {
        List<Finding> all = checked(description, "groovy");
        assertEquals(List.of(), wrong(all));
        assertEquals(0, untried(all));
    }

    @Test
    void where_no_kernel_or_no_description_is_nothing_else_is_tried() throws Exception {
        for (String text : List.of("", "{}", "[]", "{\"argv\": []}", "{\"argv\": 7}")) {
            List<Finding> all = checked(text, "groovy");
            assertEquals(List.of("Front ends find the kernel"), wrong(all));
            assertEquals(9, untried(all));
        }
        List<Finding> none = SelfCheck.of(new Installation(own.resolve("none")), "groovy", finding -> {});
        assertTrue(none.get(0).mend().contains("headrace install"), none.get(0).mend());
    }

    @Test
    void a_java_that_is_gone_and_a_missing_file_are_named() throws Exception {
        String java = argument(0);
        String path = classPath();
        String longer = path.substring(0, path.length() - 1) + File.pathSeparator + "/gone-dsl/lost.jar\"";
        List<Finding> all =
                checked(description.replace(java, "\"/no/such/java\"").replace(path, longer), "groovy");
        assertEquals(List.of("Its Java is there", "Its files are there"), wrong(all));
        assertTrue(all.get(1).wrong().contains("/no/such/java"), all.get(1).wrong());
        assertTrue(all.get(2).wrong().contains("gone-dsl"), all.get(2).wrong());
        assertEquals(7, untried(all));
    }

    @Test
    void a_process_that_ends_at_once_is_told_with_its_last_words() throws Exception {
        List<Finding> all = checked(description.replace("\"kernel\"", "\"colonel\""), "groovy");
        assertEquals(List.of("It starts and answers"), wrong(all));
        assertTrue(all.get(3).wrong().contains("has ended"), all.get(3).wrong());
        assertTrue(all.get(3).wrong().contains("colonel"), all.get(3).wrong());
    }

    @Test
    void a_kernel_that_does_not_understand_its_cells_is_told_with_what_it_said() throws Exception {
        List<Finding> all = checked(description, "java"); // cells of Java for a kernel of Groovy
        assertEquals(
                List.of("A cell understands the words of a script", "A chart is drawn"),
                wrong(all),
                "the other cells are Groovy as well");
        assertTrue(all.get(6).wrong().contains("m3ph"), all.get(6).wrong());
    }
}
