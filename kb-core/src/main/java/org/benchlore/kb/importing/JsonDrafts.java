package org.benchlore.kb.importing;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseRecord;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.importing.ImportDraft.Told;
import org.benchlore.kb.reading.Finding;

/** Drafts of cases that come as events, gathered from the lines that tell of them. */
final class JsonDrafts {
    private final Map<String, List<CaseRecord>> byCase = new LinkedHashMap<>();

    void add(CaseRecord record) {
        byCase.computeIfAbsent(caseId(record), id -> new ArrayList<>()).add(record);
    }

    /** Whether an earlier line told of its case. */
    boolean knows(CaseRecord record) {
        return byCase.containsKey(caseId(record));
    }

    /** Cases told of so far. */
    int count() {
        return byCase.size();
    }

    private static String caseId(CaseRecord record) {
        return record.events().get(0).head().caseId();
    }

    /** In order of the first line that tells of them. */
    List<ImportDraft> drafts() {
        List<ImportDraft> drafts = new ArrayList<>();
        byCase.forEach((caseId, records) -> {
            Teller teller = new Teller();
            records.forEach(r -> r.events().forEach(e -> e.fold(teller)));
            Set<Item> unknown = EnumSet.allOf(Item.class);
            unknown.remove(Item.TEST);
            teller.told.forEach(t -> unknown.remove(t.item()));
            drafts.add(new ImportDraft(
                    records.get(0).line(),
                    caseId,
                    records,
                    teller.told,
                    teller.kinds,
                    unknown,
                    List.of(),
                    List.of(),
                    false));
        });
        return drafts;
    }

    private static final class Teller implements CaseEvent.Fold<Boolean> {
        private final List<Told> told = new ArrayList<>();
        private List<String> kinds = List.of();

        private boolean add(Item item, String id, String words) {
            return told.add(new Told(item, id, Wording.cut(words)));
        }

        private boolean findings(List<Finding> findings) {
            findings.forEach(f -> add(Item.FINDING, f.symptomId() + "=" + f.state(), ""));
            return true;
        }

        @Override
        public Boolean opened(CaseEvent.Opened event) {
            add(
                    Item.DATE,
                    event.head().at().atOffset(ZoneOffset.UTC).toLocalDate().toString(),
                    "");
            if (event.scope().depth() > 0) {
                add(Item.DEVICE, event.scope().toString(), "");
                kinds = event.scope().path().subList(0, 1);
            }
            return event.unit().isEmpty() || add(Item.UNIT, event.unit(), "");
        }

        @Override
        public Boolean noted(CaseEvent.Noted event) {
            return findings(event.findings());
        }

        @Override
        public Boolean tested(CaseEvent.Tested event) {
            add(Item.TEST, event.testId(), event.note());
            return findings(event.findings());
        }

        @Override
        public Boolean concluded(CaseEvent.Concluded event) {
            return add(Item.CAUSE, event.causeId(), event.note());
        }

        @Override
        public Boolean fixApplied(CaseEvent.FixApplied event) {
            return add(Item.FIX, event.fixId(), event.note());
        }

        @Override
        public Boolean checked(CaseEvent.Checked event) {
            return true;
        }

        @Override
        public Boolean weighed(CaseEvent.Weighed event) {
            return true;
        }

        @Override
        public Boolean ended(CaseEvent.Ended event) {
            return add(Item.OUTCOME, event.outcome().id(), event.note());
        }

        @Override
        public Boolean withdrawn(CaseEvent.Withdrawn event) {
            return true;
        }

        @Override
        public Boolean corrected(CaseEvent.Corrected event) {
            return event.replacement().fold(this);
        }
    }
}
