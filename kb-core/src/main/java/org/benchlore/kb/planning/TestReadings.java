package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.ranking.StateTable;

/**
 * What a test reads given each cause: P(state | cause) seen through the test's errors. A miss reads normal, a false alarm
 * one of the abnormal states, each as likely. Immutable.
 */
final class TestReadings {
    /** Joint readings beyond this are not enumerated: the symptoms that tell least are left out. */
    static final int MAX_READINGS = 64;

    /** Joint readings per test in the cost of repair. */
    static final int READINGS = 12;

    /** One symptom as a test reads it. */
    static final class Read {
        final Symptom symptom;
        /** [reading][cause]. */
        final double[][] given;
        /** Per cause, the sum over readings of r ln r; adds up over independent symptoms. */
        final double[] logs;

        Read(Symptom symptom, double[][] given) {
            this.symptom = symptom;
            this.given = given;
            this.logs = new double[given[0].length];
            for (double[] row : given) {
                for (int c = 0; c < logs.length; c++) {
                    logs[c] += row[c] > 0 ? row[c] * Math.log(row[c]) : 0;
                }
            }
        }

        /** Information about the cause in nats. */
        double nats(double[] posterior) {
            double nats = dot(logs, posterior);
            for (double[] row : given) {
                nats -= plogp(dot(row, posterior));
            }
            return Math.max(0, nats);
        }
    }

    final BenchTest test;
    final double minutes;
    final List<Read> reads;

    private TestReadings(BenchTest test, double minutes, List<Read> reads) {
        this.test = test;
        this.minutes = minutes;
        this.reads = reads;
    }

    static TestReadings of(BenchTest test, Knowledge knowledge, BenchRecord record, Tables tables) {
        TestErrors errors = record.errors(test);
        List<Read> reads = new ArrayList<>();
        for (String id : test.reveals()) {
            Symptom symptom = knowledge.symptom(id).orElseThrow();
            reads.add(new Read(symptom, seen(errors, symptom, tables.of(id))));
        }
        return new TestReadings(test, record.testMinutes(test), List.copyOf(reads));
    }

    /** Where P(state | cause) comes from. */
    interface Tables {
        StateTable of(String symptomId);
    }

    private static double[][] seen(TestErrors errors, Symptom symptom, StateTable table) {
        int states = table.states();
        double[][] seen = new double[states][table.causes()];
        for (int x = 0; x < states; x++) {
            for (int y = 0; y < states; y++) {
                double reads = errors.reads(symptom, x, y);
                for (int c = 0; reads > 0 && c < seen[y].length; c++) {
                    seen[y][c] += reads * table.given(x, c);
                }
            }
        }
        return seen;
    }

    /** A test with what is not yet known of it, and what that tells. */
    static final class Open {
        final TestReadings of;
        /** Reads not yet known that fit into the joint, the most telling first. */
        final List<Read> reads;

        final double nats;
        /** Its minutes, and of the opening what no fix would need anyhow. */
        final double time;

        Open(TestReadings of, List<Read> reads, double nats, double time) {
            this.of = of;
            this.reads = reads;
            this.nats = nats;
            this.time = time;
        }

        /** Whether another test, this one among them, looks at a symptom that this one settles. */
        boolean shares(Open other) {
            for (Read own : reads) {
                for (Read theirs : other.reads) {
                    if (own.symptom.id().equals(theirs.symptom.id())) {
                        return true;
                    }
                }
            }
            return false;
        }

        double natsPerMinute() {
            return nats / time;
        }

        /** P(reading | cause) of the joint readings, as many as the cost of repair takes in. */
        double[][] joint() {
            List<Read> fit = jointReads();
            double[][] joint = fit.get(0).given;
            for (Read read : fit.subList(1, fit.size())) {
                joint = product(joint, read.given);
            }
            return joint;
        }

        /** The reads behind {@link #joint}, the last one running fastest. */
        List<Read> jointReads() {
            List<Read> fit = new ArrayList<>();
            int readings = 1;
            for (Read read : reads) {
                if (fit.isEmpty() || readings * read.given.length <= READINGS) {
                    fit.add(read);
                    readings *= read.given.length;
                }
            }
            return fit;
        }
    }

    /** A test with what it can tell at most: what its symptoms tell one by one, which together they never exceed. */
    static final class Hope {
        final TestReadings of;
        final double nats;
        private final List<Read> reads;
        private final double time;

        private Hope(TestReadings of, double nats, List<Read> reads, double time) {
            this.of = of;
            this.nats = nats;
            this.reads = reads;
            this.time = time;
        }

        double natsPerMinute() {
            return nats / time;
        }

        /** What it really tells; given the cause its symptoms are independent. */
        Open open(double[] posterior) {
            if (reads.size() <= 1) {
                return new Open(of, reads, nats, time);
            }
            double[][] scaled = {posterior};
            double together = 0;
            for (Read read : reads) {
                together += dot(read.logs, posterior);
                scaled = product(scaled, read.given);
            }
            for (double[] row : scaled) {
                together -= plogp(Trouble.sum(row));
            }
            return new Open(of, reads, Math.max(0, Math.min(nats, together)), time);
        }
    }

    /**
     * What this test can still tell; the known symptoms are settled.
     *
     * @param opening minutes of opening the unit that count if the test needs it
     */
    Hope hope(Set<String> known, double[] posterior, double opening) {
        record Worth(Read read, double nats) {}
        List<Worth> worth = new ArrayList<>(reads.size());
        for (Read read : reads) {
            if (!known.contains(read.symptom.id())) {
                worth.add(new Worth(read, read.nats(posterior)));
            }
        }
        worth.sort((a, b) -> Double.compare(b.nats(), a.nats()));
        List<Read> fits = new ArrayList<>();
        int readings = 1;
        double nats = 0;
        for (Worth w : worth) {
            if (readings * w.read().given.length <= MAX_READINGS) {
                readings *= w.read().given.length;
                fits.add(w.read());
                nats += w.nats();
            }
        }
        return new Hope(this, nats, List.copyOf(fits), minutes + (test.opens() ? opening : 0));
    }

    private static double[][] product(double[][] a, double[][] b) {
        double[][] product = new double[a.length * b.length][];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                double[] row = Arrays.copyOf(a[i], a[i].length);
                for (int c = 0; c < row.length; c++) {
                    row[c] *= b[j][c];
                }
                product[i * b.length + j] = row;
            }
        }
        return product;
    }

    private static double plogp(double p) {
        return p > 0 ? p * Math.log(p) : 0;
    }

    /** Four sums at once keep the processor's adders busy. */
    static double dot(double[] a, double[] b) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int i = 0;
        for (; i + 3 < a.length; i += 4) {
            s0 += a[i] * b[i];
            s1 += a[i + 1] * b[i + 1];
            s2 += a[i + 2] * b[i + 2];
            s3 += a[i + 3] * b[i + 3];
        }
        for (; i < a.length; i++) {
            s0 += a[i] * b[i];
        }
        return s0 + s1 + (s2 + s3);
    }
}
