package org.benchlore.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.KnowledgeBaseBuilder;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.importing.SourceText;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Nearest;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options and helpers that all commands share. */
abstract class BenchCommand implements Callable<Integer> {
    private static final int LOOK_THROUGH = 200;

    /** Notes beyond this are refused before they are read into memory. */
    private static final long MAX_INPUT = 16L << 20;

    final Bench bench;

    @Option(
            names = "--home",
            paramLabel = "DIR",
            description =
                    "Where the bench's cases and own packs live (default: $BENCHLORE_HOME, else the data folder).")
    @Nullable
    Path home;

    @Option(
            names = "--pack",
            paramLabel = "FILE",
            description = "A further pack to read after those that ship and those in HOME/packs.")
    List<Path> packs = new ArrayList<>();

    @Option(names = "--json", description = "Answer as JSON, one line.")
    boolean json;

    BenchCommand(Bench bench) {
        this.bench = bench;
    }

    /** A command that refuses {@code --json}. */
    interface WithoutJson {}

    /** Refuses {@code --json} where the answer is none that one line of JSON could hold. */
    void noJson(String remedy) {
        if (json) {
            throw new UsageException(remedy);
        }
    }

    /** Home by option, environment or platform. */
    Path homeDir() {
        if (home != null) {
            return home;
        }
        String set = bench.environment().get("BENCHLORE_HOME");
        if (set != null && !set.isBlank()) {
            try {
                return Path.of(set);
            } catch (InvalidPathException e) {
                throw new UsageException(
                        "BENCHLORE_HOME '" + set + "' is no path (" + e.getReason() + "); set another");
            }
        }
        String os = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        Path user = Path.of(System.getProperty("user.home", "."));
        if (os.contains("win")) {
            String appData = bench.environment().get("LOCALAPPDATA");
            return (appData == null ? user : Path.of(appData)).resolve("Benchlore");
        }
        if (os.contains("mac")) {
            return user.resolve("Library/Application Support/Benchlore");
        }
        String data = bench.environment().get("XDG_DATA_HOME");
        return (data == null || data.isBlank() ? user.resolve(".local/share") : Path.of(data)).resolve("benchlore");
    }

    KnowledgeBase open() {
        KnowledgeBaseBuilder builder =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(homeDir());
        packs.forEach(builder::pack);
        return builder.open();
    }

    /** Words as given, or standard input for a lone "-". */
    String words(List<String> words) {
        if (!words.equals(List.of("-"))) {
            return String.join(" ", words);
        }
        try {
            byte[] bytes = System.in.readNBytes((int) MAX_INPUT + 1);
            if (bytes.length > MAX_INPUT) {
                throw new BadInputException("standard input: more than 16 MiB; split it");
            }
            StringWriter text = new StringWriter(bytes.length);
            SourceText.reader(new ByteArrayInputStream(bytes)).transferTo(text);
            if (text.getBuffer().indexOf("\0") >= 0) {
                throw new BadInputException("standard input: this is not text (it holds zero bytes); give a text file");
            }
            return text.toString();
        } catch (IOException e) {
            throw new BadInputException("standard input: cannot be read (" + e.getMessage() + "); try again");
        }
    }

    /** Why a file cannot be used; many file systems say no more than its name. */
    static String why(IOException e) {
        return e instanceof FileSystemException named && named.getReason() == null
                ? e.getClass()
                        .getSimpleName()
                        .replaceAll("Exception$", "")
                        .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
                        .toLowerCase(Locale.ROOT)
                : String.valueOf(e.getMessage());
    }

    static DeviceScope scope(@Nullable String text) {
        if (text != null && text.length() > CaseEvent.Opened.MAX_UNIT) {
            throw new UsageException("the device scope is longer than " + CaseEvent.Opened.MAX_UNIT
                    + " characters; write class/family/model/revision");
        }
        try {
            return text == null ? DeviceScope.ANY : DeviceScope.parse(text);
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    /** Refuses a serial number or tag that no store takes. */
    static void requireTag(String unit) {
        if (unit.length() > CaseEvent.Opened.MAX_UNIT) {
            throw new UsageException("--unit is longer than " + CaseEvent.Opened.MAX_UNIT
                    + " characters; give its serial number or tag");
        }
    }

    /** Says so where no pack and no recent case knows such a device; it is taken all the same. */
    void warnOfUnknown(KnowledgeBase kb, DeviceScope scope) {
        if (scope.depth() == 0) {
            return;
        }
        Set<String> known = new TreeSet<>();
        Stream.of(
                        kb.knowledge().devices().stream().map(Device::scope),
                        kb.knowledge().causes().stream().map(Cause::scope),
                        kb.cases(LOOK_THROUGH).stream().map(CaseHistory::scope))
                .flatMap(scopes -> scopes)
                .filter(s -> s.depth() > 0)
                .forEach(s -> known.add(s.path().get(0)));
        String given = scope.path().get(0);
        if (!known.contains(given)) {
            bench.tell("no pack and no case knows a device '" + Page.clean(given) + "'; "
                    + Nearest.remedy(given, known, "it is taken as a new one"));
        }
    }

    /** Findings given as SYMPTOM=STATE, checked against the packs. */
    static List<Finding> findings(KnowledgeBase kb, List<String> given) {
        List<Finding> findings = new ArrayList<>();
        for (String text : given) {
            int at = text.indexOf('=');
            if (at < 1) {
                throw new UsageException("--finding '" + text + "' is not SYMPTOM=STATE; see 'benchlore search'");
            }
            String symptom = text.substring(0, at);
            String state = text.substring(at + 1);
            List<String> states = kb
                    .knowledge()
                    .symptom(symptom)
                    .orElseThrow(() -> new UsageException("no symptom '" + symptom + "'; "
                            + nearest(
                                    symptom,
                                    kb.knowledge().symptoms().stream()
                                            .map(s -> s.id())
                                            .toList())))
                    .states()
                    .stream()
                    .map(s -> s.id())
                    .toList();
            if (!states.contains(state)) {
                throw new UsageException("symptom '" + symptom + "' has no state '" + state + "'; use one of "
                        + String.join(", ", states));
            }
            findings.add(Finding.of(symptom, state));
        }
        return findings;
    }

    /** "Did you mean" for an id. */
    static String nearest(String given, Collection<String> known) {
        return Nearest.id(given, known)
                .map(near -> "did you mean '" + near + "'?")
                .orElse("try 'benchlore search'");
    }
}
