package org.benchlore.kb.search;

import java.util.Iterator;
import java.util.List;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;

/** Terms that have been analysed already, on their way into the index. */
final class TermList extends TokenStream {
    private final CharTermAttribute term = addAttribute(CharTermAttribute.class);
    private final List<String> terms;
    private Iterator<String> rest;

    TermList(List<String> terms) {
        this.terms = terms;
        this.rest = terms.iterator();
    }

    @Override
    public void reset() {
        rest = terms.iterator();
    }

    @Override
    public boolean incrementToken() {
        if (!rest.hasNext()) {
            return false;
        }
        clearAttributes();
        term.append(rest.next());
        return true;
    }
}
