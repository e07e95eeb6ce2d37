package org.benchlore.house;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.lang.reflect.Field;
import java.util.Arrays;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.ranking.planted.Planted;
import org.benchlore.kb.report.Json;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A rule that cannot fail is no rule: each is broken by a planted class. */
class HouseRulesBiteTest {
    static Stream<Field> rules() {
        return Arrays.stream(HouseRulesTest.class.getDeclaredFields())
                .filter(f -> f.isAnnotationPresent(ArchTest.class))
                // A planted cycle would need two more packages; the floors below imply its absence.
                .filter(f -> !f.getName().equals("no_package_cycles"));
    }

    @ParameterizedTest
    @MethodSource("rules")
    void each_rule_sees_the_planted_violation(Field rule) throws IllegalAccessException {
        JavaClasses planted = new ClassFileImporter()
                .importClasses(
                        Planted.class,
                        Planted.Leaky.class,
                        Planted.OwnRootException.class,
                        KnowledgeBase.class,
                        Json.class);
        rule.setAccessible(true);

        assertThat(((ArchRule) rule.get(null)).evaluate(planted).hasViolation()).isTrue();
    }
}
