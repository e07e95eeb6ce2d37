package org.benchlore.kb.importing;

import com.google.common.base.CharMatcher;
import com.google.common.base.Splitter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.importing.CaseTeller.Vocabulary;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.importing.ImportDraft.Told;
import org.benchlore.kb.importing.RawRecord.Part;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.analysis.Token;

/**
 * Which unit a record is about.
 *
 * @param scope the device, or the one assumed
 * @param unit serial number or tag, or empty
 * @param date the day that stands in its head, where no line or heading begins with one
 * @param complaint what a label says is the owner's word, or empty
 * @param told what was understood
 * @param places words of the heading in each text, which say nothing of the fault
 * @param kept what labels say of the unit that nothing else keeps, such as a make and model that no pack
 *     knows, or a day without a year
 */
record Heading(
        DeviceScope scope,
        String unit,
        Optional<LocalDate> date,
        String complaint,
        List<Told> told,
        Map<Part, List<Stretch>> places,
        List<String> kept) {
    private static final int LONGEST_UNIT = 80;

    /** Serial number and device are looked for up to here: further down they may be those of another unit. */
    private static final int LONGEST_HEAD = 300;

    static Heading of(RawRecord record, Vocabulary vocabulary, ImportSettings settings) {
        DeviceScope assumed = settings.device();
        DeviceNames devices = vocabulary.devices();
        List<Told> told = new ArrayList<>();
        Map<Part, List<Stretch>> places = new LinkedHashMap<>();
        DeviceScope scope = device(record, devices, told, places).orElseGet(() -> {
            if (told.isEmpty()) {
                named(record, vocabulary.units())
                        .ifPresent(name -> told.add(new Told(Item.DEVICE, "", Wording.cut(name))));
            }
            if (assumed.depth() > 0) {
                told.add(new Told(Item.DEVICE, assumed.toString(), ""));
            }
            return assumed;
        });
        String unit = unit(record, told, places);
        return new Heading(
                scope,
                unit,
                date(record, settings.dates(), places),
                labelled(record, ImportField.COMPLAINT),
                told,
                places,
                kept(record, scope, unit, devices));
    }

    private static Optional<LocalDate> date(RawRecord record, DateOrder order, Map<Part, List<Stretch>> places) {
        boolean dated = record.date().isPresent()
                || record.parts().stream().anyMatch(p -> p.date().isPresent());
        Optional<Part> first =
                record.parts().stream().filter(p -> p.field().wordy()).findFirst();
        if (dated || first.isEmpty()) {
            return Optional.empty();
        }
        Part part = first.get();
        Optional<DateScan.Found> found = DateScan.within(part.text().substring(0, head(part.text())), order);
        found.ifPresent(
                day -> places.computeIfAbsent(part, p -> new ArrayList<>()).add(new Stretch(day.start(), day.end())));
        return found.flatMap(DateScan.Found::date);
    }

    private static List<String> kept(RawRecord record, DeviceScope scope, String unit, DeviceNames devices) {
        List<String> kept = new ArrayList<>();
        record.parts().stream()
                .filter(p -> p.field() == ImportField.DATE)
                .map(Part::text)
                .forEach(kept::add);
        String device = labelled(record, ImportField.DEVICE);
        if (path(device).isEmpty()) {
            List<Token> words = PhraseTable.words(device);
            List<Stretch> said =
                    devices.find(words, true).map(DeviceNames.Found::places).orElse(List.of());
            Set<String> steps =
                    new HashSet<>(Splitter.on(CharMatcher.anyOf("/-")).splitToList(scope.toString()));
            boolean more = words.stream()
                    .anyMatch(w -> !steps.contains(w.surface())
                            && said.stream().noneMatch(s -> s.start() <= w.start() && w.end() <= s.end()));
            if (more) {
                kept.add(device);
            }
        }
        String label = labelled(record, ImportField.UNIT);
        List<Stretch> number = UnitScan.first(label).stream()
                .map(f -> new Stretch(f.start(), f.end()))
                .toList();
        String rest = Stretch.blank(label, 0, label.length(), number);
        if (!label.equals(unit) && (number.isEmpty() || rest.chars().anyMatch(Character::isLetterOrDigit))) {
            kept.add(label);
        }
        return kept;
    }

    private static Optional<DeviceScope> device(
            RawRecord record, DeviceNames devices, List<Told> told, Map<Part, List<Stretch>> places) {
        String label = labelled(record, ImportField.DEVICE);
        if (!label.isEmpty()) {
            Optional<DeviceScope> named = path(label)
                    .or(() -> devices.find(PhraseTable.words(label), true).map(DeviceNames.Found::scope));
            told.add(new Told(Item.DEVICE, named.map(DeviceScope::toString).orElse(""), Wording.cut(label)));
            if (named.isPresent()) {
                return named;
            }
        }
        for (Part part : record.parts()) {
            if (part.field().wordy() || part.field() == ImportField.UNIT) {
                Optional<DeviceNames.Found> found = devices.find(
                        part.field().wordy() ? part.words(head(part.text())) : PhraseTable.words(part.text()), false);
                if (found.isPresent()) {
                    List<Stretch> words = found.get().places();
                    places.computeIfAbsent(part, p -> new ArrayList<>()).addAll(words);
                    String said = part.text()
                            .substring(
                                    words.get(0).start(),
                                    words.get(words.size() - 1).end());
                    told.add(new Told(Item.DEVICE, found.get().scope().toString(), Wording.cut(said)));
                    return found.map(DeviceNames.Found::scope);
                }
            }
        }
        return Optional.empty();
    }

    /** The make and model that the first text begins with, where no pack knows them. */
    private static Optional<String> named(RawRecord record, UnitNames units) {
        return record.parts().stream()
                .filter(p -> p.field().wordy())
                .findFirst()
                .flatMap(p -> units.atHead(p.text(), p.clauses()).map(found -> found.in(p.text())));
    }

    private static Optional<DeviceScope> path(String label) {
        try {
            return label.indexOf('/') > 0 ? Optional.of(DeviceScope.parse(label)) : Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static String unit(RawRecord record, List<Told> told, Map<Part, List<Stretch>> places) {
        String label = record.parts().stream()
                .filter(p -> p.field() == ImportField.UNIT)
                .map(p -> p.text().strip())
                .reduce("", (a, b) -> b); // of "Ticket: 5521" and "Serial: 4471" the nearer one
        if (!label.isEmpty()) {
            return take(UnitScan.labelled(label), label, told);
        }
        for (Part part : record.parts()) {
            Optional<UnitScan.Found> found = UnitScan.first(part.text().substring(0, head(part.text())));
            if (found.isPresent()) {
                Stretch place = new Stretch(found.get().start(), found.get().end());
                places.computeIfAbsent(part, p -> new ArrayList<>()).add(place);
                return take(found.get().unit(), part.text().substring(place.start(), place.end()), told);
            }
        }
        return "";
    }

    private static String take(String number, String words, List<Told> told) {
        String unit = number.length() <= LONGEST_UNIT ? number : number.substring(0, LONGEST_UNIT);
        told.add(new Told(Item.UNIT, unit, Wording.cut(words)));
        return unit;
    }

    private static String labelled(RawRecord record, ImportField field) {
        return String.join(
                " ",
                record.parts().stream()
                        .filter(p -> p.field() == field)
                        .map(p -> p.text().strip())
                        .toList());
    }

    /** Where the head of a text ends. */
    private static int head(String text) {
        int end = text.indexOf('\n', Math.min(text.length(), 1));
        return Math.min(LONGEST_HEAD, end < 0 ? text.length() : end);
    }
}
