package org.benchlore.kb.knowledge;

/** What a message speaks of, put into words only where there is something to say: most packs are sound. */
final class Subject {
    private final Object[] parts;

    private Subject(Object... parts) {
        this.parts = parts;
    }

    /** Texts and other subjects, one behind the other. */
    static Subject of(Object... parts) {
        return new Subject(parts);
    }

    private record Quoted(String text) {
        @Override
        public String toString() {
            return Problems.quote(text);
        }
    }

    /** As {@link Problems#quote}. */
    static Object quoted(String text) {
        return new Quoted(text);
    }

    @Override
    public String toString() {
        StringBuilder words = new StringBuilder();
        for (Object part : parts) {
            words.append(part);
        }
        return words.toString();
    }
}
