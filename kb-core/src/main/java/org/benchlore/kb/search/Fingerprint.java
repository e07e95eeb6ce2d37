package org.benchlore.kb.search;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * A hash of everything the index holds of the packs: equal packs give equal fingerprints on every machine, and an index
 * made from others is stale.
 */
final class Fingerprint {
    private final MessageDigest digest;

    private Fingerprint() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static String of(List<Draft> drafts) {
        Fingerprint print = new Fingerprint();
        for (Draft draft : drafts) {
            print.add(draft.key());
            print.add(draft.title());
            print.add(draft.scope().toString());
            draft.texts().forEach((field, passages) -> {
                print.add(field);
                passages.forEach(print::add);
            });
            draft.findings().forEach((term, weight) -> {
                print.add(term);
                print.add(Float.toString(weight.floatValue()));
            });
        }
        return HexFormat.of().formatHex(print.digest.digest());
    }

    /** Every part ends with a byte that UTF-8 does not have, so that parts cannot run into each other. */
    private void add(String part) {
        digest.update(part.getBytes(StandardCharsets.UTF_8));
        digest.update((byte) 0xFF);
    }
}
