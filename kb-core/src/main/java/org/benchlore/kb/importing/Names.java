package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/** The packs' causes, fixes and tests by what people call them. Immutable and thread-safe. */
final class Names {
    /** Least share of the words that must belong to the name: "replaced the fan fuse" is not about the fan. Our choice. */
    private static final double EXPLAINED = 0.5;

    /** Least share of a fix's name where the cause is known already and only its own fixes are in question. Our choice. */
    private static final double HINTED = 0.3;

    /** Kinds of work that people call by each other's names. */
    private static final Set<Work> REPAIRS = EnumSet.of(Work.REPAIR, Work.REPLACE, Work.SOLDER, Work.RESEAT);

    private static final PhraseTable<Work> FIX_VERBS = new PhraseTable<>();

    static {
        for (Work work : Work.values()) {
            work.named().forEach(verb -> FIX_VERBS.add(verb, work));
        }
    }

    private final Knowledge knowledge;
    private final NameIndex causes;
    private final NameIndex fixes;
    private final NameIndex tests;
    private final Map<String, Set<Work>> kinds = new HashMap<>();

    Names(Knowledge knowledge) {
        this.knowledge = knowledge;
        Map<String, List<Set<String>>> causeNames = new TreeMap<>();
        for (Cause cause : knowledge.causes()) {
            List<Set<String>> names = new ArrayList<>();
            Stream.concat(Stream.of(cause.name()), cause.aliases().stream())
                    .forEach(name -> names.addAll(NameIndex.readings(name)));
            causeNames.put(cause.id(), names);
        }
        Map<String, List<Set<String>>> fixNames = new TreeMap<>();
        for (Fix fix : knowledge.fixes()) {
            List<Token> words = PhraseTable.words(fix.name());
            int object = objectOf(words, kinds.computeIfAbsent(fix.id(), id -> EnumSet.noneOf(Work.class)));
            fixNames.put(fix.id(), NameIndex.readings(from(fix.name(), words, object)));
        }
        Map<String, List<Set<String>>> testNames = new TreeMap<>();
        for (BenchTest test : knowledge.tests()) {
            List<Token> words = PhraseTable.words(test.name());
            testNames.put(test.id(), NameIndex.readings(from(test.name(), words, 1)));
        }
        this.causes = new NameIndex(causeNames);
        this.fixes = new NameIndex(fixNames);
        this.tests = new NameIndex(testNames);
    }

    private static String from(String name, List<Token> words, int word) {
        return word < words.size() ? name.substring(words.get(word).start()) : "";
    }

    /** Where the object of a fix's name begins, "the fan" of "Clean or replace the fan"; the verbs go into a set. */
    private static int objectOf(List<Token> words, Set<Work> verbs) {
        int at = 0;
        while (at < words.size()) {
            Optional<PhraseTable.Match<Work>> verb = FIX_VERBS.longest(words, at);
            if (verb.isPresent()) {
                verbs.add(verb.get().value());
                at = verb.get().to();
            } else if (at > 0
                    && Set.of("or", "and", "out").contains(words.get(at).surface())) {
                at++;
            } else {
                break;
            }
        }
        return at;
    }

    /** Whether an entry can be meant in a case of this scope. */
    private static boolean holds(DeviceScope entry, DeviceScope scope) {
        return entry.contains(scope);
    }

    /** The cause whose id a text is. */
    Optional<String> causeId(String text) {
        return knowledge.cause(text).map(Cause::id);
    }

    /** The fix whose id words are. */
    Optional<String> fixId(List<Token> words) {
        String id = String.join("-", words.stream().map(Token::surface).toList());
        return knowledge.fix(id).map(Fix::id);
    }

    /** Whether a fix is one of those for a cause. */
    boolean treats(String fixId, String causeId) {
        return knowledge.causesFixedBy(fixId).stream().anyMatch(c -> c.id().equals(causeId));
    }

    /**
     * The cause that words name.
     *
     * @param outright whether they are said to be the cause, so that a part alone may stand for its fault
     */
    Optional<String> cause(Set<String> said, boolean outright, DeviceScope scope) {
        if (said.size() < 2 || !(outright || said.stream().anyMatch(NameWords::fault))) {
            return Optional.empty();
        }
        return named(causes, said, id -> knowledge.cause(id).map(Cause::scope), id -> true, scope);
    }

    /** The test that words name. */
    Optional<String> test(Set<String> said, DeviceScope scope) {
        return said.size() < 2
                ? Optional.empty()
                : named(tests, said, id -> knowledge.test(id).map(BenchTest::scope), id -> true, scope);
    }

    /** The fix that words name, as work of one kind; empty {@code work} for any kind. */
    Optional<String> fix(Optional<Work> work, Set<String> said, DeviceScope scope) {
        return named(fixes, said, id -> knowledge.fix(id).map(Fix::scope), id -> alike(work, id), scope);
    }

    private static Optional<String> named(
            NameIndex index,
            Set<String> said,
            Function<String, Optional<DeviceScope>> scopeOf,
            Predicate<String> allowed,
            DeviceScope scope) {
        return index.named(
                        said,
                        id -> scopeOf.apply(id).filter(s -> holds(s, scope)).isPresent() && allowed.test(id),
                        id -> scopeOf.apply(id).map(DeviceScope::depth).orElse(0))
                .filter(fit -> fit.explains() >= EXPLAINED)
                .map(NameIndex.Fit::id);
    }

    /** Whether words name something that a cause is about, though not so that they name it. */
    boolean hints(String causeId, Set<String> said) {
        return causes.fits(said.stream().filter(t -> !NameWords.fault(t)).collect(Collectors.toSet()), 0).stream()
                .anyMatch(fit -> fit.id().equals(causeId));
    }

    /** The fix for a cause that is known: the only one of its fixes of that kind, or the only one that the words hint at. */
    Optional<String> fixFor(String causeId, Optional<Work> work, Set<String> said) {
        List<String> own = knowledge.cause(causeId).map(Cause::fixedBy).stream()
                .flatMap(List::stream)
                .map(Remedy::fixId)
                .distinct()
                .filter(id -> alike(work, id))
                .toList();
        Set<String> hinted = new HashSet<>();
        fixes.fits(said, HINTED).stream()
                .map(NameIndex.Fit::id)
                .filter(own::contains)
                .forEach(hinted::add);
        if (hinted.size() == 1) {
            return hinted.stream().findFirst();
        }
        boolean thingless = said.stream().noneMatch(this::isThing);
        return thingless && own.size() == 1 ? Optional.of(own.get(0)) : Optional.empty();
    }

    private boolean alike(Optional<Work> work, String fixId) {
        Set<Work> named = kinds.getOrDefault(fixId, Set.of());
        return named.isEmpty()
                || work.isEmpty()
                || named.contains(work.get())
                || (REPAIRS.contains(work.get())
                        && named.stream().anyMatch(REPAIRS::contains)
                        && (work.get() == Work.REPAIR || named.contains(Work.REPAIR)));
    }

    /** Whether any fix or cause has a word in its name. */
    boolean isThing(String term) {
        return fixes.knows(term) || causes.knows(term);
    }

    /** Whether words name a part by its reference on the board, such as C412. */
    static boolean isPart(Token word) {
        String text = word.surface();
        if (word.kind() != Kind.CODE || text.length() < 2 || text.length() > 6) {
            return false;
        }
        int letters = 0;
        while (letters < text.length() && Character.isLetter(text.charAt(letters))) {
            letters++;
        }
        return letters >= 1
                && letters <= 3
                && letters < text.length()
                && text.chars().skip(letters).allMatch(Character::isDigit);
    }

    /** The cause that a fix is meant for: the one concluded, if the fix treats it, else the only one it treats. */
    Optional<String> meantFor(String fixId, Optional<String> concluded, DeviceScope scope) {
        List<String> treats = knowledge.causesFixedBy(fixId).stream()
                .filter(c -> holds(c.scope(), scope))
                .map(Cause::id)
                .toList();
        return concluded
                .filter(treats::contains)
                .or(() -> treats.stream().filter(id -> treats.size() == 1).findFirst());
    }
}
