package org.tallywright.proof;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
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

/** Four rules that the module graph does not know. */
class ArchitectureTest {
    private static final String ROOT = "org.tallywright.";
    private static final Set<String> CLOCKS = Set.of(
            Instant.class.getName(),
            LocalDate.class.getName(),
            LocalDateTime.class.getName(),
            LocalTime.class.getName(),
            ZonedDateTime.class.getName());

    private final JavaClasses ours = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.tallywright");

    @Test
    void enginesKnowNoFramework() {
        noClasses()
                .that()
                .resideInAPackage("..engine..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.springframework..", "jakarta..", "java.sql..", "org.hibernate..")
                .check(ours);
    }

    /** The tools of pages that lie in modules' web packages, such as forms and controllers; not the open module itself. */
    @Test
    void theDomainDoesNotKnowItsPages() {
        noClasses()
                .that(new DescribedPredicate<JavaClass>("are outside web packages") {
                    @Override
                    public boolean test(JavaClass type) {
                        return !inWebPackage(type);
                    }
                })
                .should(new ArchCondition<JavaClass>("use a module's web package") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        for (Dependency use : type.getDirectDependenciesFromSelf()) {
                            if (inWebPackage(use.getTargetClass())) {
                                events.add(SimpleConditionEvent.satisfied(type, use.getDescription()));
                            }
                        }
                    }
                })
                .check(ours);
    }

    private static boolean inWebPackage(JavaClass type) {
        return type.getPackageName().startsWith(ROOT)
                && type.getPackageName().substring(ROOT.length()).matches("\\w+\\.web(\\..*)?");
    }

    @Test
    void rowsAndRepositoriesStayInTheirModule() {
        classes()
                .that()
                .areAnnotatedWith(Entity.class)
                .or()
                .areAssignableTo(Repository.class)
                .should(new ArchCondition<JavaClass>("be used by their own module only") {
                    @Override
                    public void check(JavaClass type, ConditionEvents events) {
                        for (Dependency use : type.getDirectDependenciesToSelf()) {
                            if (!module(use.getOriginClass()).equals(module(type))) {
                                events.add(SimpleConditionEvent.violated(type, use.getDescription()));
                            }
                        }
                    }
                })
                .check(ours);
    }

    private static String module(JavaClass type) {
        String name = type.getPackageName();
        return name.startsWith(ROOT) ? name.substring(ROOT.length()).replaceAll("\\..*", "") : name;
    }

    /**
     * The shop's zone comes from its settings and the moment from the clock: neither from the machine. Only a shop that is
     * being opened, and has no settings yet, is offered the machine's zone.
     */
    @Test
    void nobodyAsksTheMachineForItsZoneOrTime() {
        noClasses()
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
                })
                .check(ours);
    }
}
