package headrace.kernel.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Holds the plan of the kernel's packages: whom each may use, of this project and from outside. */
@AnalyzeClasses(packages = "headrace.kernel", importOptions = DoNotIncludeTests.class)
class KernelArchitectureTest {
    private static final String JSON = "com.google.gson..";
    private static final String SOCKETS = "org.zeromq..";
    private static final String[] GROOVY = {
        "groovy..", "groovyjarjarasm..", "org.codehaus.groovy..", "org.apache.groovy..", "groovyjarjarantlr4.."
    };

    private static final String[] LANGUAGES = Stream.concat(
                    Stream.of(GROOVY),
                    Stream.of("jdk.jshell..", "javax.tools..", "javax.lang.model..", "com.sun.tools.attach.."))
            .toArray(String[]::new);

    /** The plan, from the ground up. A package of the calculations is named without {@code kernel}. */
    private static final List<Row> PLAN = List.of(
            row("display", "", "org.knowm.xchart..").calculations("data", "report", "chart", "units", "problem"),
            row("session", "display", LANGUAGES).calculations("script", "problem", "record", "work", "units"),
            row("notebook", "display", JSON).calculations("problem"),
            row("headless", "notebook session display", "org.commonmark..").calculations("problem", "lesson", "data"),
            row("terminal", "session display", "org.jline..").calculations("report", "chart", "script"),
            row("message", "display"),
            row("comm", "message"),
            row("history", "", JSON),
            row("widget", "comm message session display").calculations("report", "chart"),
            row("handler", "widget comm history message session display").calculations("problem"),
            row("wire", "message display", JSON).calculations("problem"),
            row("server", "wire handler widget comm history message session", SOCKETS)
                    .calculations("problem", "work"),
            row("install", "", JSON).calculations("problem"),
            row("selfcheck", "wire message install", SOCKETS).calculations("problem"),
            row(
                            "cli",
                            "server history wire message headless terminal install selfcheck session display",
                            "picocli..",
                            "org.jline..")
                    .calculations("problem", "lesson", "data", "report"));

    @ArchTest
    static final ArchRule packages_form_no_cycle =
            slices().matching("headrace.kernel.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule parts_of_a_package_form_no_cycle_either =
            slices().matching("headrace.kernel.(**)").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule the_text_of_a_cell_is_read_without_groovy = noClasses()
            .that()
            .resideInAPackage("headrace.kernel.session.source..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(GROOVY)
            .because("a text that is half-written is no program yet");

    @ArchTest
    static final ArchRule every_package_is_in_the_plan = classes()
            .should()
            .resideInAnyPackage(PLAN.stream().map(Row::itself).toArray(String[]::new))
            .because("a package outside the plan would be a way around its rules");

    @ArchTest
    static void each_package_uses_only_what_the_plan_gives_it(JavaClasses all) {
        for (Row row : PLAN) {
            classes()
                    .that(resideInAPackage(row.itself()))
                    .should()
                    .onlyDependOnClassesThat(resideInAnyPackage(row.allowed()))
                    .allowEmptyShould(true)
                    .because("the plan names what " + row.name() + " may use")
                    .check(all);
        }
    }

    private static Row row(String name, String kernel, String... outside) {
        return new Row(name, kernel.isEmpty() ? List.of() : List.of(kernel.split(" ")), List.of(), List.of(outside));
    }

    private record Row(String name, List<String> kernel, List<String> calculations, List<String> outside) {
        Row calculations(String... packages) {
            return new Row(name, kernel, List.of(packages), outside);
        }

        String itself() {
            return "headrace.kernel." + name + "..";
        }

        String[] allowed() {
            List<String> allowed = new ArrayList<>(
                    List.of("java..", "javax.xml.stream..", "javax.crypto..", "javax.imageio..", itself()));
            kernel.forEach(each -> allowed.add("headrace.kernel." + each + ".."));
            calculations.forEach(each -> allowed.add("headrace." + each + ".."));
            return Stream.concat(allowed.stream(), outside.stream()).toArray(String[]::new);
        }
    }
}
