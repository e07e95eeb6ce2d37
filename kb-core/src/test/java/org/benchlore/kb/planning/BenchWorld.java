package org.benchlore.kb.planning;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.reading.Finding;

/** A small invented bench: two causes of a dead unit, a cause of noise, tests and fixes for them. */
final class BenchWorld {
    private static final PackSource PACK = new PackSource("bench.yaml", """
pack: bench
version: 1.0.0
licence: Apache-2.0
title: Bench
about: An invented bench.
scope: any
from: memory
symptoms:
  - id: lamp
    name: lamp
    about: Invented.
    reported: usually
    called: [lamp]
    states:
      - {id: lit, name: lit, normal: true, usual: 0.8}
      - {id: dark, name: dark, usual: 0.2}
  - id: feed
    name: feed
    about: Invented.
    reported: if-tested
    called: [feed]
    states:
      - {id: present, name: present, normal: true, usual: 0.8}
      - {id: absent, name: absent, usual: 0.2}
  - id: hum
    name: hum
    about: Invented.
    reported: usually
    called: [hum]
    states:
      - {id: silent, name: silent, normal: true, usual: 0.9}
      - {id: loud, name: loud, usual: 0.1}
causes:
  - id: lead-broken
    name: Lead broken
    kind: fault
    about: Invented.
    per-thousand: 200
    shows:
      - {symptom: lamp, states: {lit: 0.02}}
      - {symptom: feed, states: {present: 0.02}}
      - {symptom: hum, states: {silent: 0.99}}
    fixed-by:
      - {fix: replace-lead, works: 0.9}
  - id: board-dead
    name: Board dead
    kind: fault
    about: Invented.
    per-thousand: 300
    shows:
      - {symptom: lamp, states: {lit: 0.05}}
      - {symptom: feed, states: {present: 0.97}}
      - {symptom: hum, states: {silent: 0.98}}
    fixed-by:
      - {fix: replace-board, works: 0.8}
  - id: core-loose
    name: Core loose
    kind: fault
    about: Invented.
    per-thousand: 200
    shows:
      - {symptom: lamp, states: {lit: 0.97}}
      - {symptom: hum, states: {silent: 0.03}}
    fixed-by:
      - {fix: glue-core, works: 0.85}
tests:
  - id: measure-feed
    name: Measure the feed
    minutes: 5
    tools: [multimeter]
    risk: none
    misses: 0.02
    false-alarms: 0.02
    setup: Unit unplugged.
    steps: [Measure the feed at the plug.]
    expect: present
    readings:
      - {symptom: feed, state: absent, means: Look at the lead.}
fixes:
  - {id: replace-lead, name: Replace the lead, minutes: 15, risk: none, difficulty: easy, makes-worse: 0.01, tools: [],
     steps: [Replace it.], verify: [Run it for an hour.]}
  - {id: replace-board, name: Replace the board, minutes: 60, risk: low, difficulty: moderate, makes-worse: 0.02,
     tools: [screwdriver], steps: [Replace it.], verify: [Run it warm and cold., Sleep and restart.]}
  - {id: glue-core, name: Glue the core, minutes: 20, risk: low, difficulty: easy, makes-worse: 0.01, tools: [],
     steps: [Glue it.], verify: [Listen.]}
""");

    static final Knowledge KNOWLEDGE = PackReader.read(List.of(PACK));

    /** The same, all but the lead behind a cover. */
    static final Knowledge COVERED = with("""
tests:
  - {id: measure-feed, refines: true, opens: true}
fixes:
  - {id: replace-board, refines: true, opens: true}
  - {id: glue-core, refines: true, opens: true}
""");

    static final RankingModel MODEL = RankingModel.of(KNOWLEDGE, RankingSettings.DEFAULT.doubting(0));

    private BenchWorld() {}

    /** The same with a second pack laid over it. */
    static Knowledge with(String entries) {
        return PackReader.read(List.of(PACK, new PackSource("over.yaml", """
pack: over
version: 1.0.0
licence: Apache-2.0
title: Over
about: Invented.
scope: any
from: memory
""" + entries)));
    }

    static RankingQuery query(String... findings) {
        List<Finding> list = new ArrayList<>();
        for (String f : findings) {
            list.add(Finding.of(f.substring(0, f.indexOf('=')), f.substring(f.indexOf('=') + 1)));
        }
        return RankingQuery.of(list);
    }

    /** A case with one event per step: "fix:ID", "test:SYMPTOM=STATE", "minutes" ride along as 10, and outcomes by id. */
    static CaseHistory history(String id, String causeId, String... steps) {
        List<CaseEvent> events = new ArrayList<>();
        events.add(new CaseEvent.Opened(head(id, 0), DeviceScope.parse("player"), "", "", CaseHistory.OWN, false));
        events.add(new CaseEvent.Concluded(head(id, 1), causeId, Certainty.LIKELY, ""));
        int at = 2;
        for (String step : steps) {
            CaseEvent.Head head = head(id, at++);
            if (step.startsWith("fix:")) {
                events.add(new CaseEvent.FixApplied(head, step.substring(4), causeId, 10.0 + at, ""));
            } else if (step.startsWith("test:")) {
                String[] f = step.substring(5).split("=", 2);
                events.add(new CaseEvent.Tested(head, "measure-feed", List.of(Finding.of(f[0], f[1])), 8.0, ""));
            } else {
                events.add(new CaseEvent.Ended(head, Outcome.parse(step), null, ""));
            }
        }
        return CaseHistory.fold(events).orElseThrow();
    }

    private static CaseEvent.Head head(String id, int n) {
        return new CaseEvent.Head(id + "-" + n, id, Instant.ofEpochSecond(1_700_000_000L + n));
    }
}
