package org.benchlore.kb.report;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.EntryKind;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What the search of the pages looks through, as a script: a page opened as a file may run a script beside it and may not
 * fetch one. The words of the texts are folded here as {@code search.js} folds what is typed: lower case, compatibility forms,
 * no accents, the sign of a number as a word, cut where letters and digits meet.
 */
final class SearchData {
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");
    /** A sign, and no hyphen. */
    private static final Pattern MINUS = Pattern.compile("(?<![\\p{L}\\p{N}])[-\u2212](?=\\p{N})");

    private static final Pattern WORD = Pattern.compile("\\p{L}+|\\p{N}+");
    private static final int ABOUT = 160;

    private SearchData() {}

    /** A script that sets {@code benchloreIndex}: kinds, and per entry kind, id, name, note, about, other names, phrases, words. */
    static String script(PageList list) {
        ObjectNode root = JsonNodes.object();
        ArrayNode kinds = root.putArray("kinds");
        PageList.KINDS.forEach(kind -> kinds.add(kind.id()));
        ArrayNode entries = root.putArray("entries");
        for (int i = 0; i < PageList.KINDS.size(); i++) {
            EntryKind kind = PageList.KINDS.get(i);
            for (PageList.Item item : list.of(kind)) {
                ArrayNode entry = entries.addArray();
                entry.add(i).add(item.id()).add(Escape.clean(item.name())).add(Escape.clean(item.note()));
                entry.add(opening(Escape.clean(item.about())));
                ArrayNode aliases = entry.addArray();
                item.aliases().forEach(alias -> aliases.add(Escape.clean(alias)));
                entry.add(phrases(item)).add(words(item));
            }
        }
        // nothing in a text may end the script element or a line of it, should somebody paste this into a page
        String json = JsonNodes.write(root)
                .replace("<", "\\u003c")
                .replace(">", "\\u003e")
                .replace("\u2028", "\\u2028")
                .replace("\u2029", "\\u2029");
        return "\"use strict\";\nconst benchloreIndex = " + json.replace("],[", "],\n[") + ";\n";
    }

    /** The first sentences, cut at a word. */
    private static String opening(String text) {
        if (text.length() <= ABOUT) {
            return text;
        }
        int cut = text.lastIndexOf(' ', ABOUT);
        return text.substring(0, cut > 0 ? cut : ABOUT) + " …";
    }

    private static String phrases(PageList.Item item) {
        return item.phrases().stream()
                .map(phrase -> String.join(" ", folded(phrase)))
                .distinct()
                .collect(Collectors.joining("|"));
    }

    /** Words of the texts and phrases that the names do not have, each once, in order. */
    private static String words(PageList.Item item) {
        TreeSet<String> words = new TreeSet<>();
        item.texts().forEach(text -> words.addAll(folded(text)));
        item.phrases().forEach(phrase -> words.addAll(folded(phrase)));
        words.removeAll(folded(item.name()));
        item.aliases().forEach(alias -> words.removeAll(folded(alias)));
        return String.join(" ", words);
    }

    static List<String> folded(String text) {
        String plain = MARKS.matcher(Normalizer.normalize(text.toLowerCase(Locale.ROOT), Normalizer.Form.NFKD))
                .replaceAll("");
        List<String> words = new ArrayList<>();
        Matcher matcher = WORD.matcher(MINUS.matcher(plain).replaceAll("minus "));
        while (matcher.find()) {
            words.add(matcher.group());
        }
        return words;
    }
}
