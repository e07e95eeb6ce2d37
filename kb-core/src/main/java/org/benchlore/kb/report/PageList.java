package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Pack;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/** Every entry that gets a page, with where it is and what it is found by. */
final class PageList {
    /** In the order in which they are shown. */
    static final List<EntryKind> KINDS = List.of(
            EntryKind.CAUSE, EntryKind.SYMPTOM, EntryKind.TEST, EntryKind.FIX, EntryKind.CAUTION, EntryKind.DEVICE);

    private static final Pattern ABBREVIATED = Pattern.compile("^(Esd|Uv)\\b");

    private final Knowledge knowledge;
    private final Map<EntryKind, List<Item>> items = new LinkedHashMap<>();

    /**
     * One entry.
     *
     * @param id for a device its scope
     * @param name with a capital
     * @param note a few words beside the name in lists, or empty
     * @param about the first thing to read of it
     * @param aliases other names
     * @param phrases whole phrases that mean it
     * @param texts what else it is found by
     */
    record Item(
            EntryKind kind,
            String id,
            String name,
            String note,
            String about,
            List<String> aliases,
            List<String> phrases,
            List<String> texts) {
        Item {
            aliases = List.copyOf(aliases);
            phrases = List.copyOf(phrases);
            texts = List.copyOf(texts);
        }

        String path() {
            return PageList.path(kind, id);
        }
    }

    PageList(Knowledge knowledge) {
        this.knowledge = knowledge;
        KINDS.forEach(kind -> items.put(kind, new ArrayList<>()));
        knowledge.causes().forEach(this::cause);
        knowledge.symptoms().forEach(this::symptom);
        knowledge.tests().forEach(this::test);
        knowledge.fixes().forEach(this::fix);
        knowledge
                .cautions()
                .forEach(c -> add(new Item(
                        EntryKind.CAUTION,
                        c.id(),
                        cautionName(c.id()),
                        Hazards.name(c.hazard()),
                        c.text(),
                        List.of(),
                        List.of(),
                        List.of())));
        knowledge.devices().forEach(this::device);
        items.values()
                .forEach(list -> list.sort(
                        Comparator.comparing((Item item) -> item.name()).thenComparing(Item::id)));
    }

    /** Path of a page from the top folder; the same shape as the entry's link, {@code benchlore:KIND/ID}. */
    static String path(EntryKind kind, String id) {
        return kind.id() + "/" + id.replace('/', '.') + ".html";
    }

    static String cautionName(String id) {
        String words = Terms.capital(id.replace('-', ' '));
        return ABBREVIATED.matcher(words).replaceFirst(m -> m.group().toUpperCase(Locale.ROOT));
    }

    List<Item> of(EntryKind kind) {
        return items.getOrDefault(kind, List.of());
    }

    /** Those of one pack. */
    List<Item> of(EntryKind kind, Pack pack) {
        return of(kind).stream()
                .filter(item -> pack(item).filter(pack::equals).isPresent())
                .toList();
    }

    Optional<Pack> pack(Item item) {
        return knowledge.packOf(item.kind(), item.id());
    }

    private void add(Item item) {
        items.getOrDefault(item.kind(), new ArrayList<>()).add(item);
    }

    private void cause(Cause c) {
        List<String> texts = new ArrayList<>(List.of(c.about()));
        texts.addAll(c.fools());
        add(new Item(
                EntryKind.CAUSE,
                c.id(),
                Terms.capital(c.name()),
                (c.kind() == Cause.Kind.INNOCENT ? "innocent, " : "") + number(c.perThousand()) + " in 1000",
                c.about(),
                c.aliases(),
                List.of(),
                texts));
    }

    private void symptom(Symptom s) {
        List<String> texts = new ArrayList<>(List.of(s.about()));
        List<String> phrases = new ArrayList<>();
        for (State state : s.states()) {
            texts.add(state.name());
            phrases.addAll(state.phrases());
        }
        for (Device device : knowledge.devices()) {
            device.nets().stream().filter(n -> n.symptomId().equals(s.id())).forEach(n -> texts.add(n.net()));
            device.codes().stream().filter(c -> c.symptomId().equals(s.id())).forEach(c -> texts.add(c.code()));
        }
        add(new Item(EntryKind.SYMPTOM, s.id(), Terms.capital(s.name()), "", s.about(), s.called(), phrases, texts));
    }

    private void test(BenchTest t) {
        List<String> texts = new ArrayList<>(t.steps());
        texts.addAll(t.tools());
        texts.add(t.expect());
        texts.addAll(t.fools());
        t.readings().forEach(r -> texts.add(r.means()));
        add(new Item(
                EntryKind.TEST,
                t.id(),
                Terms.capital(t.name()),
                minutes(t.minutes()),
                t.setup(),
                List.of(),
                List.of(),
                texts));
    }

    private void fix(Fix f) {
        List<String> texts = new ArrayList<>(f.steps());
        texts.addAll(f.parts());
        texts.addAll(f.verify());
        texts.addAll(f.fools());
        String about = f.steps().isEmpty() ? "" : f.steps().get(0);
        add(new Item(
                EntryKind.FIX,
                f.id(),
                Terms.capital(f.name()),
                minutes(f.minutes()) + ", " + Terms.words(f.difficulty()),
                about,
                List.of(),
                List.of(),
                texts));
    }

    private void device(Device d) {
        List<String> names = new ArrayList<>(d.called());
        names.addAll(d.calledFirst());
        d.codes().forEach(c -> names.add(c.code()));
        d.codes().forEach(c -> names.addAll(c.spelled()));
        d.nets().forEach(n -> names.add(n.net()));
        List<String> texts = new ArrayList<>();
        d.codes().forEach(c -> texts.add(c.means()));
        d.lamps().forEach(l -> texts.addAll(l.says()));
        String scope = d.scope().toString();
        add(new Item(
                EntryKind.DEVICE,
                scope,
                Terms.capital(d.name()),
                d.invented() ? "invented" : "",
                scope,
                names,
                List.of(),
                texts));
    }

    /** A number with one decimal at most where it is large, two significant digits where it is small. */
    static String number(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e6) {
            return String.format(Locale.ROOT, "%.0f", value);
        }
        return value >= 1 ? String.format(Locale.ROOT, "%.1f", value) : String.format(Locale.ROOT, "%.2g", value);
    }

    /** Parts of a unit in words. */
    static String parts(List<String> ids) {
        return String.join(", ", ids).replace('-', ' ');
    }

    static String minutes(double minutes) {
        return minutes >= 90 && minutes % 30 == 0 ? number(minutes / 60) + " h" : number(minutes) + " min";
    }
}
