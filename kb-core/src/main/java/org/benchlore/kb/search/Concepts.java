package org.benchlore.kb.search;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.lucene.analysis.Analyzer;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Symptom;

/**
 * The packs' names and other names, found in any text, longest first. Documents and queries are both marked with the
 * ids found, so that "5VSB" finds what speaks of the standby rail. There are no other synonyms than the packs teach.
 */
final class Concepts {
    private record Name(String concept, DeviceScope scope) {}

    private final Analyzer analyzer;
    private final Map<List<String>, Name> names = new HashMap<>();
    private final Map<String, Integer> longest = new HashMap<>(); // name, by its first word

    Concepts(Analyzer analyzer, Knowledge knowledge) {
        this.analyzer = analyzer;
        for (Symptom symptom : knowledge.symptoms()) {
            add(symptom.name(), symptom.id(), symptom.scope());
            symptom.called().forEach(name -> add(name, symptom.id(), symptom.scope()));
        }
        for (Cause cause : knowledge.causes()) {
            add(cause.name(), cause.id(), cause.scope());
            cause.aliases().forEach(name -> add(name, cause.id(), cause.scope()));
        }
        for (Device device : knowledge.devices()) {
            device.nets().forEach(net -> add(net.net(), net.symptomId(), device.scope()));
            for (Device.Code code : device.codes()) {
                add(code.code(), code.symptomId(), device.scope());
                code.spelled().forEach(spelling -> add(spelling, code.symptomId(), device.scope()));
            }
        }
    }

    /** Ids of the symptoms and causes that the words name, with how often; a family's own names count within it. */
    SortedMap<String, Integer> in(List<Word> words, DeviceScope scope) {
        SortedMap<String, Integer> found = new TreeMap<>();
        List<String> terms = words.stream().map(Word::term).toList();
        int at = 0;
        while (at < terms.size()) {
            int length = Math.min(longest.getOrDefault(terms.get(at), 0), terms.size() - at);
            Name name = null;
            while (length > 0 && name == null) {
                Name candidate = names.get(terms.subList(at, at + length));
                if (candidate != null && candidate.scope.relatedTo(scope)) {
                    name = candidate;
                } else {
                    length--;
                }
            }
            if (name != null) {
                found.merge(name.concept, 1, Integer::sum);
            }
            at += Math.max(1, length);
        }
        return found;
    }

    private void add(String name, String concept, DeviceScope scope) {
        List<String> terms = Word.of(analyzer, name).stream().map(Word::term).toList();
        if (!terms.isEmpty()) {
            names.putIfAbsent(terms, new Name(concept, scope)); // packs keep a name to one symptom
            longest.merge(terms.get(0), terms.size(), Math::max);
        }
    }
}
