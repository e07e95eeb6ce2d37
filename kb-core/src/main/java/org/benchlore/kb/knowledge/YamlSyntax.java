package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.Map;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** Turns the YAML parser's complaint into one sentence with a remedy. */
final class YamlSyntax {
    /** Parts of the parser's own message, and the usual slip behind each. */
    private static final List<Map.Entry<String, String>> REMEDIES = List.of(
            Map.entry("mapping values are not allowed", "quote the text if it holds ': ', or check the indentation"),
            Map.entry(
                    "cannot start any token",
                    "indent with spaces, not tabs, and quote text that starts with @, ` or %"),
            Map.entry("',' or ']'", "close the list with ']' and quote items that hold , [ ] { } or ': '"),
            Map.entry("',' or '}'", "close with '}' and quote values that hold , [ ] { } or ': '"),
            Map.entry("unexpected end of stream", "close the quote or bracket that was opened"),
            Map.entry("could not find expected ':'", "write 'key: value', with a space after the colon"),
            Map.entry(
                    "expected <block end>",
                    "line this up with its neighbours; quote a value that starts with a quote but goes on after it"),
            Map.entry("unknown escape character", "use single quotes, in which a backslash is only a backslash"));

    private YamlSyntax() {}

    static void report(Place place, MarkedYamlEngineException e, Problems problems) {
        String problem = String.valueOf(e.getProblem());
        String remedy = REMEDIES.stream()
                .filter(entry -> problem.contains(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("check indentation, quotes and brackets just before this place");
        int started = e.getContextMark().map(mark -> mark.getLine() + 1).orElse(place.line());
        problems.error(
                place,
                "the YAML breaks off here (" + firstSentence(problem)
                        + (started < place.line() ? ", in what starts on line " + started : "")
                        + "), so the rest of the file was not checked",
                remedy);
    }

    private static String firstSentence(String text) {
        String quoted = Problems.quote(text.strip().split("\\. ", 2)[0]);
        return quoted.substring(1, quoted.length() - 1);
    }
}
