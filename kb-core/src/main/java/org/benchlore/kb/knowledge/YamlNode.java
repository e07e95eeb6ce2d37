package org.benchlore.kb.knowledge;

import java.util.Collections;
import java.util.List;
import java.util.Map;

/** A piece of YAML with its place: what {@link YamlText} makes of a pack. */
sealed interface YamlNode {
    Place place();

    /** What it is, for "expected a list, found …". */
    String kind();

    /**
     * A scalar.
     *
     * @param plain written without quotes
     */
    record Text(Place place, String value, boolean plain) implements YamlNode {
        /** Nothing written where a value was due. */
        boolean missing() {
            return plain && value.length() <= 4 && (value.isEmpty() || value.equals("~") || value.equals("null"));
        }

        @Override
        public String kind() {
            return missing() ? "nothing" : "the text " + Problems.quote(value);
        }
    }

    /** A list. */
    record Items(Place place, List<YamlNode> items) implements YamlNode {
        public Items {
            items = List.copyOf(items);
        }

        @Override
        public String kind() {
            return "a list";
        }
    }

    /** Keys with values, in the order written. */
    record Table(Place place, Map<String, Field> fields) implements YamlNode {
        /** @param fields the table's from now on */
        public Table {
            fields = Collections.unmodifiableMap(fields);
        }

        @Override
        public String kind() {
            return "keys with values";
        }
    }

    /** Something already reported; whoever reads it stays silent. */
    record Refused(Place place) implements YamlNode {
        @Override
        public String kind() {
            return "something refused";
        }
    }

    /** A value and where its key stands. */
    record Field(Place key, YamlNode value) {}
}
