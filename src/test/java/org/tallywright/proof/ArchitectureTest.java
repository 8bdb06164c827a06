package org.tallywright.proof;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import jakarta.persistence.Entity;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.springframework.data.repository.Repository;

/** Four rules that the module graph does not know. Each is shown an offender too, so that none is quiet because it looks at nothing. */
class ArchitectureTest {
    private static final String ROOT = "org.tallywright.";
    private static final String PLANTED = "org.tallywright.proof.planted.";
    private static final Set<String> CLOCKS = Set.of(
            Instant.class.getName(),
            LocalDate.class.getName(),
            LocalDateTime.class.getName(),
            LocalTime.class.getName(),
            ZonedDateTime.class.getName());

    private final JavaClasses ours = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.tallywright");

    private final JavaClasses planted = new ClassFileImporter().importPackages("org.tallywright.proof.planted");

    @Test
    void enginesKnowNoFramework() {
        plainEngines().check(ours);
        reports(plainEngines(), "PlantedEngine");
    }

    private static ArchRule plainEngines() {
        return noClasses()
                .that()
                .resideInAPackage("..engine..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.springframework..", "jakarta..", "java.sql..", "org.hibernate..");
    }

    @Test
    void theDomainDoesNotKnowItsPages() {
        domainWithoutPages(ROOT).check(ours);
        reports(domainWithoutPages(PLANTED), "PlantedRows.save");
    }

    /** The tools of pages that lie in modules' web packages, such as forms and controllers; not the open module itself. */
    private static ArchRule domainWithoutPages(String root) {
        return noClasses()
                .that(new DescribedPredicate<JavaClass>("are outside web packages") {
                    @Override
                    public boolean test(JavaClass type) {
                        return !inWebPackage(type, root);
                    }
                })
                .should(new ArchCondition<JavaClass>("use a module's web package") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        for (Dependency use : type.getDirectDependenciesFromSelf()) {
                            if (inWebPackage(use.getTargetClass(), root)) {
                                events.add(SimpleConditionEvent.satisfied(type, use.getDescription()));
                            }
                        }
                    }
                });
    }

    private static boolean inWebPackage(JavaClass type, String root) {
        return type.getPackageName().startsWith(root)
                && type.getPackageName().substring(root.length()).matches("\\w+\\.web(\\..*)?");
    }

    @Test
    void rowsAndRepositoriesStayInTheirModule() {
        rowsAtHome(ROOT).check(ours);
        reports(rowsAtHome(PLANTED), "PlantedReader");
    }

    private static ArchRule rowsAtHome(String root) {
        return classes()
                .that()
                .areAnnotatedWith(Entity.class)
                .or()
                .areAssignableTo(Repository.class)
                .should(new ArchCondition<JavaClass>("be used by their own module only") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        for (Dependency use : type.getDirectDependenciesToSelf()) {
                            if (!module(use.getOriginClass(), root).equals(module(type, root))) {
                                events.add(SimpleConditionEvent.violated(type, use.getDescription()));
                            }
                        }
                    }
                });
    }

    private static String module(JavaClass type, String root) {
        String name = type.getPackageName();
        return name.startsWith(root) ? name.substring(root.length()).replaceAll("\\..*", "") : name;
    }

    @Test
    void nobodyAsksTheMachineForItsZoneOrTime() {
        clocksOnly().check(ours);
        reports(clocksOnly(), "PlantedEngine.day");
    }

    /**
     * The shop's zone comes from its settings and the moment from the clock: neither from the machine. Only a shop that is
     * being opened, and has no settings yet, is offered the machine's zone.
     */
    private static ArchRule clocksOnly() {
        return noClasses()
                .that()
                .doNotHaveFullyQualifiedName("org.tallywright.setup.SetupController")
                .and()
                .doNotHaveFullyQualifiedName("org.tallywright.demo.DemoOnStart")
                .should()
                .callMethodWhere(new DescribedPredicate<JavaAccess<?>>("it asks the machine for its zone or the time") {
                    @Override
                    public boolean test(JavaAccess<?> call) {
                        String owner = call.getTargetOwner().getName();
                        boolean plain = call.getTarget().getName().equals("now")
                                && call.getTarget().getFullName().endsWith("now()");
                        return owner.equals(ZoneId.class.getName())
                                        && call.getName().equals("systemDefault")
                                || owner.equals(Clock.class.getName())
                                        && call.getName().equals("systemDefaultZone")
                                || CLOCKS.contains(owner) && plain;
                    }
                });
    }

    /** The rule breaks on the planted classes, and says so of that one. */
    private void reports(ArchRule rule, String offender) {
        assertThat(rule.evaluate(planted).getFailureReport().toString()).contains(offender);
    }
}
