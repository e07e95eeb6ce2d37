/**
 * Case histories: the events that are their only truth ({@link org.benchlore.kb.cases.CaseEvent}, read this first), the
 * history folded from them, the durable store, import and export.
 *
 * <pre>{@code
 * try (CaseStore store = CaseStore.open(Path.of("bench"))) {
 *     CaseIds ids = new CaseIds(Clock.systemUTC(), new SecureRandom());
 *     String caseId = ids.caseId(store::hasCase);
 *     Head head = new Head(ids.eventId(), caseId, Instant.now());
 *     store.append(List.of(new Opened(head, DeviceScope.ANY, "dead", "", CaseHistory.OWN, false))); // durable now
 *     CaseHistory history = store.history(caseId).orElseThrow();
 * }
 * }</pre>
 */
@NullMarked
package org.benchlore.kb.cases;

import org.jspecify.annotations.NullMarked;
