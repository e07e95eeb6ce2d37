package org.benchlore.kb.knowledge;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.parser.Parser;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/**
 * The text of a pack as a tree with places. Built from parser events and not by the library's composer: that one
 * recurses, so that a few thousand brackets overflow the stack, it stops at the first duplicate key or alias, where an
 * author wants to hear of all of them, and its module does not export it.
 */
final class YamlText {
    static final int MAX_CHARS = 4 << 20;
    static final int MAX_DEPTH = 24;
    static final int MAX_NODES = 400_000;

    private final String file;
    private final Problems problems;
    private final Deque<Frame> open = new ArrayDeque<>();
    private @Nullable YamlNode root;
    private int nodes;

    private YamlText(String file, Problems problems) {
        this.file = file;
        this.problems = problems;
    }

    /** The root of the one document, or empty when the file cannot be read, which is then reported. */
    static Optional<YamlNode> parse(PackSource source, Problems problems) {
        if (!PlainText.accept(source, MAX_CHARS, problems)) {
            return Optional.empty();
        }
        return new YamlText(source.name(), problems).read(source.yaml());
    }

    private Optional<YamlNode> read(String yaml) {
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setCodePointLimit(MAX_CHARS)
                .build();
        try {
            Parser events = new ParserImpl(settings, new StreamReader(settings, yaml));
            while (events.hasNext()) {
                if (!accept(events.next())) {
                    return Optional.empty();
                }
            }
        } catch (MarkedYamlEngineException e) {
            Place place =
                    e.getProblemMark().or(e::getContextMark).map(this::place).orElse(new Place(file, 1, 1));
            YamlSyntax.report(place, e, problems);
            return Optional.empty();
        } catch (YamlEngineException e) {
            problems.error(new Place(file, 1, 1), "this is not YAML", "give a pack as described in writing-packs.md");
            return Optional.empty();
        }
        if (root == null) {
            problems.error(new Place(file, 1, 1), "the file is empty", "start it with 'pack: ID'");
        }
        return Optional.ofNullable(root);
    }

    /** False when reading on makes no sense. */
    private boolean accept(Event event) {
        Place place = event.getStartMark().map(this::place).orElse(new Place(file, 1, 1));
        switch (event.getEventId()) {
            case DocumentStart -> {
                if (root != null) {
                    problems.error(place, "a second document starts here", "write one pack per file, without '---'");
                    return false;
                }
            }
            case Scalar -> {
                ScalarEvent scalar = (ScalarEvent) event;
                rejectProperties(scalar, scalar.getTag(), place);
                add(new YamlNode.Text(place, scalar.getValue(), scalar.isPlain()));
            }
            case Alias -> {
                problems.error(
                        place,
                        "alias '*" + ((AliasEvent) event).getAlias() + "' is not accepted",
                        "write the value out; packs are read without aliases");
                add(new YamlNode.Refused(place));
            }
            case SequenceStart, MappingStart -> {
                CollectionStartEvent start = (CollectionStartEvent) event;
                rejectProperties(start, start.getTag(), place);
                boolean table = event.getEventId() == Event.ID.MappingStart;
                open.push(table ? new TableFrame(place) : new ItemsFrame(place));
            }
            case SequenceEnd, MappingEnd -> add(open.pop().close());
            default -> {}
        }
        return withinLimits(place);
    }

    private boolean withinLimits(Place place) {
        if (open.size() > MAX_DEPTH) {
            problems.error(
                    place, "nested more than " + MAX_DEPTH + " levels deep", "packs need six; close the brackets");
            return false;
        }
        if (++nodes > MAX_NODES) {
            problems.error(place, "more than " + MAX_NODES + " values in one file", "split the pack");
            return false;
        }
        return true;
    }

    private void rejectProperties(NodeEvent event, Optional<String> tag, Place place) {
        event.getAnchor()
                .ifPresent(anchor -> problems.error(
                        place,
                        "anchor " + Problems.quote("&" + anchor) + " is not accepted",
                        "take it out and write repeated values out"));
        tag.ifPresent(t -> problems.error(
                place,
                "tag " + Problems.quote(t) + " is not accepted",
                "take it out; quote the value if it is meant as text"));
    }

    private void add(YamlNode node) {
        Frame frame = open.peek();
        if (frame == null) {
            root = node;
        } else {
            frame.add(node);
        }
    }

    private Place place(Mark mark) {
        return new Place(file, mark.getLine() + 1, mark.getColumn() + 1);
    }

    private interface Frame {
        void add(YamlNode node);

        YamlNode close();
    }

    private static final class ItemsFrame implements Frame {
        private final Place place;
        private final List<YamlNode> items = new ArrayList<>();

        ItemsFrame(Place place) {
            this.place = place;
        }

        @Override
        public void add(YamlNode node) {
            items.add(node);
        }

        @Override
        public YamlNode close() {
            return new YamlNode.Items(place, items);
        }
    }

    private final class TableFrame implements Frame {
        private final Place place;
        private final Map<String, YamlNode.Field> fields = new LinkedHashMap<>();
        private @Nullable YamlNode key;

        TableFrame(Place place) {
            this.place = place;
        }

        @Override
        public void add(YamlNode node) {
            if (key == null) {
                key = node;
                return;
            }
            if (key instanceof YamlNode.Text name) {
                YamlNode.Field first = fields.putIfAbsent(name.value(), new YamlNode.Field(name.place(), node));
                if (first != null) {
                    problems.error(
                            name.place(),
                            "key " + Problems.quote(name.value()) + " stands twice, first on line "
                                    + first.key().line(),
                            "keep one of them");
                }
            } else {
                problems.error(key.place(), "a key must be a word, found " + key.kind(), "write 'key: value'");
            }
            key = null;
        }

        @Override
        public YamlNode close() {
            return new YamlNode.Table(place, fields);
        }
    }
}
