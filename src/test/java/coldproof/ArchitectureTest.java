package coldproof;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.time.Instant;
import java.util.Random;

/** Keeps the rooms as DEVELOPERS.md draws them: what each may use, of ours and of others. An exception is one line with its reason. */
@AnalyzeClasses(packages = "coldproof", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String[] PURE = {
        "coldproof.quantity..", "coldproof.stats..", "coldproof.physics..", "coldproof.plan..", "coldproof.study..", "coldproof.trace..",
        "coldproof.reason.."
    };

    private static ArchRule onlyUses(String room, String... allowed) {
        String[] all = new String[allowed.length + 2];
        all[0] = room;
        all[1] = "java..";
        System.arraycopy(allowed, 0, all, 2, allowed.length);
        return classes().that().resideInAPackage(room).should().onlyDependOnClassesThat().resideInAnyPackage(all).allowEmptyShould(true);
    }

    @ArchTest
    static final ArchRule quantity = onlyUses("coldproof.quantity..");

    @ArchTest
    static final ArchRule stats = onlyUses("coldproof.stats..", "org.apache.commons.math3..");

    @ArchTest
    static final ArchRule physics = onlyUses("coldproof.physics..", "coldproof.quantity..");

    @ArchTest
    static final ArchRule plan = onlyUses("coldproof.plan..", "coldproof.quantity..");

    @ArchTest
    static final ArchRule study = onlyUses("coldproof.study..", "coldproof.quantity..", "coldproof.plan..");

    @ArchTest
    static final ArchRule trace = onlyUses("coldproof.trace..", "coldproof.quantity..", "coldproof.stats..");

    @ArchTest
    static final ArchRule reason = onlyUses("coldproof.reason..", "coldproof.quantity..", "coldproof.stats..", "coldproof.physics..",
            "coldproof.plan..", "coldproof.study..", "coldproof.trace..");

    @ArchTest
    static final ArchRule files = onlyUses("coldproof.files..", "coldproof.quantity..", "coldproof.stats..", "coldproof.physics..",
            "coldproof.plan..", "coldproof.study..", "coldproof.trace..", "coldproof.reason.safety..", "coldproof.reason.ledger..",
            "coldproof.reason.rehearse..", "tools.jackson..", "de.siegmar..");

    @ArchTest
    static final ArchRule machine = onlyUses("coldproof.machine..", "coldproof.quantity..", "coldproof.trace..", "oshi..");

    /** One room knows the library of the sensors; it is loaded with it, by name, and by nothing else. */
    @ArchTest
    static final ArchRule nothingElseKnowsTheLibraryOfTheSensors = noClasses().that().resideOutsideOfPackage("coldproof.machine.library..").should()
            .dependOnClassesThat().resideInAnyPackage("coldproof.machine.library..", "oshi..", "com.sun.jna..");

    @ArchTest
    static final ArchRule report = onlyUses("coldproof.report..", "coldproof.quantity..", "coldproof.stats..", "coldproof.physics..",
            "coldproof.plan..", "coldproof.study..", "coldproof.trace..", "coldproof.reason..", "tools.jackson..");

    @ArchTest
    static final ArchRule jobsKnowNoFace = noClasses().that().resideInAPackage("coldproof.job..").should().dependOnClassesThat()
            .resideInAnyPackage("coldproof.face..", "picocli..", "org.jline..", "tools.jackson..", "de.siegmar..").allowEmptyShould(true);

    @ArchTest
    static final ArchRule facesReachFilesAndMachineThroughJobs = noClasses().that().resideInAPackage("coldproof.face..").should()
            .dependOnClassesThat().resideInAnyPackage("coldproof.files..", "coldproof.machine..", "tools.jackson..", "de.siegmar..")
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule theTwoFacesNeverMeet = noClasses().that().resideInAPackage("coldproof.face.cli..").should()
            .dependOnClassesThat().resideInAPackage("coldproof.face.console..").allowEmptyShould(true);

    @ArchTest
    static final ArchRule theConsoleKnowsNoCommandLine = noClasses().that().resideInAPackage("coldproof.face.console..").should()
            .dependOnClassesThat().resideInAnyPackage("coldproof.face.cli..", "picocli..").allowEmptyShould(true);

    @ArchTest
    static final ArchRule pureRoomsTouchNothingOutside = noClasses().that().resideInAnyPackage(PURE).should().dependOnClassesThat()
            .resideInAnyPackage("java.io..", "java.nio.file..", "java.net..").allowEmptyShould(true);

    @ArchTest
    static final ArchRule pureRoomsTakeTimeAndChanceFromOutside = noClasses().that().resideInAnyPackage(PURE).should()
            .callMethod(System.class, "currentTimeMillis").orShould().callMethod(System.class, "nanoTime")
            .orShould().callMethod(Instant.class, "now").orShould().callConstructor(Random.class)
            .orShould().callMethod(Math.class, "random").allowEmptyShould(true);

    @ArchTest
    static final ArchRule roomsFormNoCircles = SlicesRuleDefinition.slices().matching("coldproof.(*)..").should().beFreeOfCycles();
}
