package org.benchlore.kb.cases;

import java.util.List;
import org.benchlore.kb.knowledge.KnowledgeBaseException;

/**
 * A listener failed on hearing of what was recorded. The events are on disk and count; mend the listener, and do not record
 * them again. What it threw first is the cause.
 */
public final class ListenerException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    private final transient List<CaseEvent> recorded;

    ListenerException(String where, List<CaseEvent> recorded, CaseEvent heard, RuntimeException thrown) {
        super(
                where + ": all is recorded, but a listener failed on event '"
                        + heard.head().eventId() + "' (" + thrown + "); mend the listener, and do not record again",
                thrown);
        this.recorded = List.copyOf(recorded);
    }

    /** The events that are recorded and were new; of an import, those of the batch at which a listener failed first. */
    public List<CaseEvent> recorded() {
        return recorded;
    }
}
