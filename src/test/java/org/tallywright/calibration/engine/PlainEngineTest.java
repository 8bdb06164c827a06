package org.tallywright.calibration.engine;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The engine is plain Java: it can be measured, tested and read without the program around it. */
class PlainEngineTest {

    private final JavaClasses engine = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.tallywright.calibration.engine");

    @Test
    void dependsOnNothingButTheLanguageAndTheNumbers() {
        classes()
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        "org.tallywright.calibration.engine..",
                        "java..",
                        "org.ejml..",
                        "org.hipparchus..",
                        "org.jspecify..")
                .check(engine);
    }
}
