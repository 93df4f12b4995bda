package headrace.architecture;

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

/** Holds the plan of the packages: each may use the JDK, the rows above its own, and the libraries of its own row. */
@AnalyzeClasses(packages = "headrace", importOptions = DoNotIncludeTests.class)
class DslArchitectureTest {
    private static final String[] JDK = {"java..", "javax..", "org.w3c.dom..", "org.xml.sax.."};

    /** The plan, from the ground up. */
    private static final List<Row> PLAN = List.of(
            new Row("problem"),
            new Row("work"),
            new Row("record"),
            new Row("units"),
            new Row("numeric", "org.hipparchus.."),
            new Row("chart"),
            new Row("liquid", "com.hummeling.if97.."),
            new Row("curve"),
            new Row("drive"),
            new Row("pump"),
            new Row("circuit"),
            new Row("operation"),
            new Row("estimate"),
            new Row("control"),
            new Row("dynamics"),
            new Row("energy"),
            new Row("economics"),
            new Row("rule"),
            new Row("selection"),
            new Row("commission"),
            new Row("trend"),
            new Row("lesson"),
            new Row("data", "org.apache.commons.csv.."),
            new Row("report"),
            new Row("script", "groovy..", "groovyjarjarasm..", "org.codehaus.groovy..", "org.apache.groovy.."));

    @ArchTest
    static final ArchRule packages_form_no_cycle =
            slices().matching("headrace.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule every_package_is_in_the_plan = classes()
            .should()
            .resideInAnyPackage(PLAN.stream().map(Row::name).toArray(String[]::new))
            .because("a package outside the plan would be a way around its rules");

    @ArchTest
    static final ArchRule only_the_script_package_knows_groovy = noClasses()
            .that()
            .resideOutsideOfPackage("headrace.script..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("groovy..", "org.codehaus.groovy..", "org.apache.groovy..")
            .because("the numeric core must be usable and testable without a script");

    @ArchTest
    static final ArchRule nobody_prints_past_the_door_that_shows = noClasses()
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .because("a calculation never knows that it is in a notebook");

    @ArchTest
    static void each_package_uses_only_what_stands_above_it(JavaClasses all) {
        List<String> allowed = new ArrayList<>(List.of(JDK));
        for (Row row : PLAN) {
            allowed.add(row.name());
            List<String> here = new ArrayList<>(allowed);
            here.addAll(row.outside());
            classes()
                    .that(resideInAPackage(row.name()))
                    .should()
                    .onlyDependOnClassesThat(resideInAnyPackage(here.toArray(String[]::new)))
                    .allowEmptyShould(true)
                    .because("the plan names what " + row.name() + " may use")
                    .check(all);
        }
    }

    /** A package of the plan, and the outside packages that it alone may use. */
    private record Row(String name, List<String> outside) {
        Row(String name, String... outside) {
            this("headrace." + name + "..", List.of(outside));
        }
    }
}
