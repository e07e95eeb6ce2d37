package org.benchlore.kb.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.knowledge.DeviceScope;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What people expect of a search over the packs that ship, however they put it. */
class SameFindingsTest {
    private static final Path PAIRS = Path.of("src/test/resources/org/benchlore/kb/search/same-findings.tsv");
    private static final int DEPTH = 10;
    private static final int NEAR_THE_TOP = 3;
    private static final int EVERY = 23; // a sample of the entries and cases, prime so that no order in them shows

    private static SearchTrial trial;

    @BeforeAll
    static void open() {
        trial = SearchTrial.open();
    }

    @AfterAll
    static void close() throws IOException {
        trial.close();
    }

    private static List<String> find(String words, DeviceScope scope) {
        return trial.way("benchlore").find(new GradedQuery(words, scope, Map.of()), DEPTH);
    }

    @Test
    void the_same_findings_in_other_words_find_the_same() throws IOException {
        int pairs = 0;
        int near = 0;
        int shared = 0;
        for (String line : Files.readAllLines(PAIRS, StandardCharsets.UTF_8)) {
            if (line.startsWith("#")) {
                continue;
            }
            String[] wordings = line.split("\t", -1);
            List<String> one = find(wordings[0], DeviceScope.ANY);
            List<String> other = find(wordings[1], DeviceScope.ANY);
            Set<String> both = new HashSet<>(one);
            both.retainAll(other);
            pairs++;
            shared += both.size();
            if (other.subList(0, NEAR_THE_TOP).contains(one.get(0))
                    || one.subList(0, NEAR_THE_TOP).contains(other.get(0))) {
                near++;
            }
        }
        assertThat(pairs).isGreaterThanOrEqualTo(24);
        assertThat(shared / (double) (DEPTH * pairs)).isGreaterThan(0.7); // 0.73 when this was written
        assertThat(near).isGreaterThanOrEqualTo(pairs * 2 / 3);
    }

    @Test
    void ids_and_whole_names_come_first() {
        List<String> missed = new ArrayList<>();
        for (int i = 0; i < trial.drafts().size(); i += EVERY) {
            Draft draft = trial.drafts().get(i);
            if (!find(draft.id(), draft.scope()).get(0).endsWith("/" + draft.id())) {
                missed.add(draft.id());
            }
            if (draft.kind() != HitKind.CASE
                    && !find(draft.title(), draft.scope()).get(0).equals(draft.key())) {
                missed.add(draft.title());
            }
        }
        assertThat(missed).isEmpty();
    }
}
