package org.benchlore.kb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.importing.ImportKind;
import org.benchlore.kb.importing.ImportReview;
import org.benchlore.kb.importing.ImportSettings;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.BenchConditions;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Sheets;
import org.benchlore.kb.search.SearchQuery;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A null is refused where it is given, by the name of what it was given for. */
class NullsTest {
    private static final CaseEvent.Head HEAD = new CaseEvent.Head("e", "k", Instant.EPOCH);
    private static final List<Finding> FOUND = List.of(Finding.of("lamp", "dark"));
    private static final CaseEvent.Opened OPENED =
            new CaseEvent.Opened(HEAD, DeviceScope.ANY, "", "", CaseHistory.OWN, false);

    private static final List<Record> VALUES = List.of(
            HEAD,
            OPENED,
            new CaseEvent.Noted(HEAD, "", Reading.Source.SEEN, FOUND),
            new CaseEvent.Tested(HEAD, "look", FOUND, null, ""),
            new CaseEvent.Concluded(HEAD, "core-loose", Certainty.PROVEN, ""),
            new CaseEvent.FixApplied(HEAD, "new-lead", "lead-broken", null, ""),
            new CaseEvent.Checked(HEAD, "", CaseEvent.Checked.Result.PASSED, null, null, List.of(), ""),
            new CaseEvent.Weighed(HEAD, "new-lead", null, .5, .1, Decision.WORK, ""),
            new CaseEvent.Ended(HEAD, Outcome.FIXED, null, ""),
            new CaseEvent.Withdrawn(HEAD, null, ""),
            new CaseEvent.Corrected(HEAD, "e", OPENED),
            Finding.of("lamp", "dark"),
            RankingQuery.of(FOUND),
            SearchQuery.of("lamp"),
            BenchConditions.DEFAULT,
            ProofRecord.of(Optional.empty(), 1, 1, 1),
            DeviceScope.ANY,
            ImportSettings.of(ImportKind.DIARY),
            MemoryTest.PACK);

    @Test
    void a_value_is_not_made_with_a_null() throws ReflectiveOperationException {
        for (Record value : VALUES) {
            RecordComponent[] parts = value.getClass().getRecordComponents();
            Constructor<?> made = value.getClass()
                    .getDeclaredConstructor(
                            Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new));
            for (int i = 0; i < parts.length; i++) {
                if (parts[i].getType().isPrimitive()
                        || parts[i].getAnnotatedType().isAnnotationPresent(Nullable.class)) {
                    continue;
                }
                @Nullable Object[] given = new Object[parts.length];
                for (int k = 0; k < parts.length; k++) {
                    given[k] = k == i ? null : parts[k].getAccessor().invoke(value);
                }
                assertThatThrownBy(() -> made.newInstance(given))
                        .as(value.getClass() + " without " + parts[i].getName())
                        .isInstanceOf(InvocationTargetException.class)
                        .cause()
                        .isInstanceOf(NullPointerException.class)
                        .hasMessage(parts[i].getName());
            }
        }
    }

    private static Map<Class<?>, Object> samples(KnowledgeBase kb) throws IOException {
        Map<Class<?>, Object> samples = new HashMap<>();
        samples.put(String.class, "k");
        samples.put(int.class, 1);
        samples.put(double.class, .5);
        samples.put(boolean.class, false);
        samples.put(DeviceScope.class, DeviceScope.ANY);
        samples.put(Reading.class, kb.read("dark"));
        samples.put(RankingQuery.class, RankingQuery.of(FOUND));
        samples.put(CaseHistory.class, kb.history("k").orElseThrow());
        samples.put(BenchTest.class, new Object());
        samples.put(Risk.class, Risk.LOW);
        samples.put(BenchConditions.class, BenchConditions.DEFAULT);
        samples.put(Stakes.class, new Stakes(1, 1, 1, 1, 1));
        samples.put(ProofRecord.class, ProofRecord.of(Optional.empty(), 1, 1, 1));
        samples.put(Optional.class, Optional.empty());
        samples.put(SearchQuery.class, SearchQuery.of("lamp"));
        samples.put(List.class, List.of());
        samples.put(Collection.class, List.of());
        samples.put(CaseEvent[].class, new CaseEvent[0]);
        samples.put(Consumer.class, (Consumer<CaseEvent>) event -> {});
        samples.put(Sheets.Kind.class, Sheets.Kind.CASE);
        samples.put(Sheets.Format.class, Sheets.Format.MARKDOWN);
        samples.put(InputStream.class, InputStream.nullInputStream());
        samples.put(ImportSettings.class, ImportSettings.of(ImportKind.DIARY));
        samples.put(
                ImportReview.class,
                kb.reviewImport(
                        new ByteArrayInputStream("1.2.2023 lamp dark".getBytes(StandardCharsets.UTF_8)),
                        "diary",
                        ImportSettings.of(ImportKind.DIARY)));
        samples.put(Reader.class, new StringReader(""));
        samples.put(Appendable.class, new StringWriter());
        samples.put(Path.class, Path.of("nowhere"));
        samples.put(RankingSettings.class, RankingSettings.DEFAULT);
        samples.put(Clock.class, Clock.systemUTC());
        samples.put(RandomGenerator.class, new Random(1));
        return samples;
    }

    @Test
    void nothing_is_asked_and_nothing_told_with_a_null() throws IOException {
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(List.of(MemoryTest.PACK)).open()) {
            kb.record(OPENED);
            Map<Class<?>, Object> samples = samples(kb);
            List<String> tried = new ArrayList<>();
            for (Object asked : List.of(kb, KnowledgeBase.builder())) {
                for (Method method : asked.getClass().getDeclaredMethods()) {
                    if (Modifier.isPublic(method.getModifiers()) && !method.isSynthetic()) {
                        refuses(asked, method, samples);
                        tried.add(method.getName());
                    }
                }
            }
            assertThat(tried).contains("record", "onRecorded", "home", "proof");
        }
    }

    private static void refuses(Object asked, Method method, Map<Class<?>, Object> samples) {
        Class<?>[] types = method.getParameterTypes();
        for (int i = 0; i < types.length; i++) {
            if (types[i].isPrimitive()) {
                continue;
            }
            @Nullable Object[] given = new Object[types.length];
            for (int k = 0; k < types.length; k++) {
                assertThat(samples).as("a sample for " + method).containsKey(types[k]);
                given[k] = k == i ? null : samples.get(types[k]);
            }
            assertThatThrownBy(() -> method.invoke(asked, given))
                    .as(method + " without its argument " + i)
                    .isInstanceOf(InvocationTargetException.class)
                    .cause()
                    .isInstanceOf(NullPointerException.class)
                    .message()
                    .matches("\\w+");
        }
    }

    @Test
    void an_id_of_nothing_is_none() {
        for (String blank : List.of("", " ")) {
            assertThatThrownBy(() -> Finding.of(blank, "dark")).hasMessageContaining("blank id");
            assertThatThrownBy(() -> Finding.of("lamp", blank)).hasMessageContaining("blank id");
        }
        List<@Nullable CaseEvent> holed = new ArrayList<>();
        holed.add(null);
        try (KnowledgeBase kb = KnowledgeBase.builder()
                .packs(List.of(new PackSource("lamps.yaml", MemoryTest.PACK.yaml())))
                .open()) {
            assertThatThrownBy(() -> kb.record(holed))
                    .isInstanceOf(NullPointerException.class)
                    .hasMessage("event in events");
        }
    }
}
