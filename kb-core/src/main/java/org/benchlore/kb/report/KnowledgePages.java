package org.benchlore.kb.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.QualityReport;
import org.benchlore.kb.knowledge.QualityReport.Neighbour;
import org.benchlore.kb.ranking.RankingModel;

/**
 * The packs as static pages to browse, for people and for other shop tools to link to: one page per entry, lists by kind and
 * area, a front page that searches. The page of {@code benchlore:cause/ID} is {@code cause/ID.html}; that of a device scope
 * has full stops for its slashes. {@code index.html#q=WORDS} shows what is found for words, {@code index.html#benchlore:KIND/ID}
 * goes to an entry.
 *
 * <p>The pages need no server: they work opened as files, load nothing from elsewhere, print on A4, fit a phone and follow the
 * reader's light or dark setting. Only the front page runs a script. Every text of the packs is escaped. They hold nothing of
 * any case, and the same packs give the same bytes. Immutable and thread-safe.
 */
public final class KnowledgePages {
    private final Knowledge knowledge;
    private final RankingModel packs;

    /**
     * Pages over some packs.
     *
     * @param packs the packs' opinion alone; what it has learnt from cases would show
     */
    public KnowledgePages(Knowledge knowledge, RankingModel packs) {
        this.knowledge = knowledge;
        this.packs = packs;
    }

    /**
     * What was done to a folder.
     *
     * @param files how many it now holds
     * @param changed how many of them are new or different
     * @param removed how many of an earlier time went
     */
    public record Written(int files, int changed, int removed) {}

    /**
     * Writes all pages into a folder that is new, empty, or was written so before. Each file is replaced in one step.
     *
     * @throws ForeignFilesException if that would overwrite what is not ours; nothing is changed then
     * @throws IOException if it cannot be written
     */
    public Written write(Path folder) throws IOException {
        return new PageFolder(folder).write(files());
    }

    /** All pages by file name. */
    SortedMap<String, String> files() {
        PageList list = new PageList(knowledge);
        List<EntryKind> kinds =
                PageList.KINDS.stream().filter(kind -> !list.of(kind).isEmpty()).toList();
        PageFrame frame = new PageFrame(knowledge, kinds);
        IndexPages indexes = new IndexPages(knowledge, list, frame);
        TreeMap<String, String> files = new TreeMap<>();
        files.put("index.html", indexes.front());
        kinds.forEach(kind -> files.put(PageFrame.listName(kind), indexes.list(kind)));
        files.put(PageFrame.INDEX, SearchData.script(list));
        files.put(PageFrame.SCRIPT, resource(PageFrame.SCRIPT));
        files.put(PageFrame.STYLE, resource(PageFrame.STYLE));
        entries(frame, files);
        return Collections.unmodifiableSortedMap(files);
    }

    private void entries(PageFrame frame, Map<String, String> files) {
        Map<String, List<Neighbour>> alike = new LinkedHashMap<>();
        QualityReport.of(knowledge).lookalikes().forEach(l -> alike.put(l.cause(), l.others()));
        CausePage causes = new CausePage(knowledge, frame, alike);
        SymptomPage symptoms = new SymptomPage(knowledge, frame, packs);
        ActionPages actions = new ActionPages(knowledge, frame);
        OtherPages others = new OtherPages(knowledge, frame);
        knowledge.causes().forEach(e -> files.put(PageList.path(EntryKind.CAUSE, e.id()), causes.write(e)));
        knowledge.symptoms().forEach(e -> files.put(PageList.path(EntryKind.SYMPTOM, e.id()), symptoms.write(e)));
        knowledge.tests().forEach(e -> files.put(PageList.path(EntryKind.TEST, e.id()), actions.test(e)));
        knowledge.fixes().forEach(e -> files.put(PageList.path(EntryKind.FIX, e.id()), actions.fix(e)));
        knowledge.cautions().forEach(e -> files.put(PageList.path(EntryKind.CAUTION, e.id()), others.caution(e)));
        knowledge
                .devices()
                .forEach(
                        e -> files.put(PageList.path(EntryKind.DEVICE, e.scope().toString()), others.device(e)));
    }

    /** A file that lies beside this class. */
    static String resource(String name) {
        try (InputStream in = KnowledgePages.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the kb-core jar");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
