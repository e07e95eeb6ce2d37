package org.benchlore.kb.search;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * What to look for. Words are plain words: no character in them is an operator. With neither words nor findings the
 * query lists everything its filters let through.
 *
 * @param words as typed; only the first {@value #MAX_WORDS_LENGTH} UTF-16 units and 30 different words count
 * @param findings what the reader made of the words, or was observed; entries that speak of them rank higher and are
 *     found even where no word matches
 * @param scope only entries whose scope contains this one or lies inside it, the nearer ones first
 * @param kinds only these; empty for all
 * @param outcomes only cases that ended so; empty for all. Entries have no outcome, so a non-empty set leaves cases only
 * @param limit most hits to return, 1 to {@value #MAX_LIMIT}
 * @param offset hits to skip, 0 to {@value #MAX_OFFSET}
 */
public record SearchQuery(
        String words,
        List<Finding> findings,
        DeviceScope scope,
        Set<HitKind> kinds,
        Set<Outcome> outcomes,
        int limit,
        int offset) {
    /** Characters of {@link #words} that are looked at. */
    public static final int MAX_WORDS_LENGTH = 4000;

    /** Largest {@link #limit}. */
    public static final int MAX_LIMIT = 1000;

    /** Largest {@link #offset}. */
    public static final int MAX_OFFSET = 10_000;

    private static final int USUAL_LIMIT = 10;

    public SearchQuery {
        requireNonNull(words, "words");
        findings = List.copyOf(requireNonNull(findings, "findings"));
        requireNonNull(scope, "scope");
        kinds = copy(requireNonNull(kinds, "kinds"), HitKind.class);
        outcomes = copy(requireNonNull(outcomes, "outcomes"), Outcome.class);
        if (limit < 1 || limit > MAX_LIMIT) {
            throw new IllegalArgumentException("limit " + limit + " is outside 1 to " + MAX_LIMIT);
        }
        if (offset < 0 || offset > MAX_OFFSET) {
            throw new IllegalArgumentException("offset " + offset + " is outside 0 to " + MAX_OFFSET);
        }
    }

    /** The first ten hits of any kind, for any device. */
    public static SearchQuery of(String words) {
        return new SearchQuery(words, List.of(), DeviceScope.ANY, Set.of(), Set.of(), USUAL_LIMIT, 0);
    }

    /** The same with these findings. */
    public SearchQuery with(List<Finding> findings) {
        return new SearchQuery(words, findings, scope, kinds, outcomes, limit, offset);
    }

    /** The same for one device scope. */
    public SearchQuery in(DeviceScope scope) {
        return new SearchQuery(words, findings, scope, kinds, outcomes, limit, offset);
    }

    /** The same for these kinds only. */
    public SearchQuery only(HitKind... kinds) {
        return new SearchQuery(words, findings, scope, Set.copyOf(Arrays.asList(kinds)), outcomes, limit, offset);
    }

    /** The same for cases that ended in one of these ways. */
    public SearchQuery ended(Outcome... outcomes) {
        return new SearchQuery(words, findings, scope, kinds, Set.copyOf(Arrays.asList(outcomes)), limit, offset);
    }

    /** The same, another page of it. */
    public SearchQuery page(int limit, int offset) {
        return new SearchQuery(words, findings, scope, kinds, outcomes, limit, offset);
    }

    private static <E extends Enum<E>> Set<E> copy(Collection<E> given, Class<E> type) {
        EnumSet<E> copy = EnumSet.noneOf(type);
        copy.addAll(given);
        return Collections.unmodifiableSet(copy);
    }
}
