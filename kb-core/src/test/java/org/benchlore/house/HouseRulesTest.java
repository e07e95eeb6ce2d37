package org.benchlore.house;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;
import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** The rules that a review would otherwise repeat. {@code HouseRulesBiteTest} shows that each can fail. */
@AnalyzeClasses(packages = "org.benchlore.kb", importOptions = ImportOption.DoNotIncludeTests.class)
class HouseRulesTest {
    private static final String ROOT = "org.benchlore.kb";

    /** From the ground up; a floor may use those before it. */
    private static final List<String> FLOORS =
            List.of("knowledge", "reading", "cases", "importing", "ranking", "planning", "search", "report");

    @ArchTest
    static final ArchRule no_package_cycles =
            slices().matching(ROOT + ".(*)..").should().beFreeOfCycles().because("the house has floors, not a web");

    @ArchTest
    static final ArchRule imports_go_down = classes()
            .that()
            .resideInAPackage(ROOT + "..")
            .should(onlyUseLowerFloors())
            .because("an import goes down the table of floors, never up")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule nothing_uses_the_front_door = noClasses()
            .that()
            .resideInAnyPackage(FLOORS.stream().map(f -> ROOT + "." + f + "..").toArray(String[]::new))
            .should()
            .dependOnClassesThat()
            .resideInAPackage(ROOT)
            .because("the front door stands over the rooms")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule lucene_behind_one_door = noClasses()
            .that(DescribedPredicate.not(resideInAnyPackage(ROOT + ".search..", ROOT + ".reading.analysis..")))
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.apache.lucene..")
            .because("a new Lucene is then a change in two packages")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule jdbc_only_in_the_store = noClasses()
            .that(DescribedPredicate.not(resideInAPackage(ROOT + ".cases..")))
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "javax.sql..", "org.sqlite..")
            .because("events have one store")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule jackson_only_at_the_edges = noClasses()
            .that(DescribedPredicate.not(resideInAnyPackage(ROOT + ".cases..", ROOT + ".report..")))
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("tools.jackson..", "com.fasterxml.jackson..")
            .because("text becomes objects and back at the edges only")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule yaml_only_in_packs = noClasses()
            .that(DescribedPredicate.not(resideInAPackage(ROOT + ".knowledge..")))
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.snakeyaml..")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule arithmetic_is_pure = noClasses()
            .that()
            .resideInAnyPackage(ROOT + ".ranking..", ROOT + ".planning..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.io..", "java.nio..", "java.sql..", "java.time..", "java.util.random..")
            .because("a ranking is a pure function of packs, cases and query")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule no_printing_no_exit = noClasses()
            .that()
            .resideInAPackage(ROOT + "..")
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .callMethod(System.class, "exit", int.class)
            .orShould()
            .callMethod(Throwable.class, "printStackTrace")
            .because("a library is a guest")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule logging_is_the_platforms = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "java.util.logging..", "org.slf4j..", "org.apache.logging..", "org.apache.commons.logging..")
            .because("the host picks the sink")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule own_exceptions_have_one_root = classes()
            .that()
            .areAssignableTo(Throwable.class)
            .and()
            .arePublic()
            .should()
            .beAssignableTo(KnowledgeBaseException.class)
            .because("a host catches one type")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule records_hold_no_arrays = fields().that()
            .areDeclaredInClassesThat()
            .areRecords()
            .and()
            .areNotStatic()
            .and()
            .areDeclaredInClassesThat()
            .arePublic()
            .should(notBeArrays())
            .because("arrays break equals and leak")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule no_ambient_time_chance_or_locale = noClasses()
            .should()
            .callMethod(java.time.Instant.class, "now")
            .orShould()
            .callMethod(java.time.LocalDate.class, "now")
            .orShould()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(Math.class, "random")
            .orShould()
            .callMethod(String.class, "toLowerCase")
            .orShould()
            .callMethod(String.class, "toUpperCase")
            .orShould()
            .callMethod(String.class, "getBytes")
            .because("clock, seed, locale and charset are given")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule no_threads_or_service_lookup = noClasses()
            .should()
            .dependOnClassesThat()
            .areAssignableTo(java.util.concurrent.Executor.class)
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(java.util.ServiceLoader.class)
            .orShould()
            .callConstructor(Thread.class)
            .orShould()
            .callConstructor(Thread.class, Runnable.class)
            .because("the host owns its process")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule public_classes_are_final = classes()
            .that()
            .arePublic()
            .and()
            .areNotInterfaces()
            .and()
            .areNotEnums()
            .and(DescribedPredicate.not(DescribedPredicate.describe(
                    "are the root exception", (JavaClass c) -> c.isEquivalentTo(KnowledgeBaseException.class))))
            .should()
            .haveModifier(JavaModifier.FINAL)
            .because("inheritance is a promise nobody asked for")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule public_signatures_name_only_jdk_and_ours = methods()
            .that()
            .arePublic()
            .and()
            .areDeclaredInClassesThat()
            .arePublic()
            .and()
            .areDeclaredInClassesThat()
            .resideOutsideOfPackage(ROOT + ".reading.analysis..")
            .should(nameOnlyJdkAndOurs())
            .because("a host must not be tied to our libraries' versions")
            .allowEmptyShould(false);

    static ArchCondition<JavaClass> onlyUseLowerFloors() {
        return new ArchCondition<>("use only lower floors") {
            @Override
            public void check(JavaClass item, ConditionEvents events) {
                int own = floor(item);
                item.getDirectDependenciesFromSelf().forEach(d -> {
                    int other = floor(d.getTargetClass());
                    if (own >= 0 && other > own) {
                        events.add(SimpleConditionEvent.violated(item, d.getDescription()));
                    }
                });
            }
        };
    }

    private static int floor(JavaClass type) {
        String name = type.getPackageName();
        for (int i = 0; i < FLOORS.size(); i++) {
            if (name.equals(ROOT + "." + FLOORS.get(i)) || name.startsWith(ROOT + "." + FLOORS.get(i) + ".")) {
                return i;
            }
        }
        return -1;
    }

    static ArchCondition<JavaField> notBeArrays() {
        return new ArchCondition<>("not be arrays") {
            @Override
            public void check(JavaField item, ConditionEvents events) {
                if (item.getRawType().isArray()) {
                    events.add(SimpleConditionEvent.violated(item, item.getFullName() + " is an array"));
                }
            }
        };
    }

    static ArchCondition<JavaMethod> nameOnlyJdkAndOurs() {
        return new ArchCondition<>("name only JDK types and ours") {
            @Override
            public void check(JavaMethod item, ConditionEvents events) {
                check(item, item.getReturnType(), events);
                item.getParameterTypes().forEach(t -> check(item, t, events));
            }

            private void check(JavaMethod item, JavaType type, ConditionEvents events) {
                type.getAllInvolvedRawTypes().forEach(raw -> {
                    String name = raw.getBaseComponentType().getPackageName();
                    boolean fine = name.isEmpty() || name.startsWith("java.") || name.startsWith(ROOT);
                    if (!fine) {
                        events.add(SimpleConditionEvent.violated(item, item.getFullName() + " names " + raw.getName()));
                    }
                });
            }
        };
    }
}
