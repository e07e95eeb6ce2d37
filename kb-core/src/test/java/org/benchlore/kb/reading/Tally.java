package org.benchlore.kb.reading;

/** Right, found and wanted things of one kind. */
final class Tally {
    int right;
    int found;
    int wanted;

    double precision() {
        return found == 0 ? 1 : (double) right / found;
    }

    double recall() {
        return wanted == 0 ? 1 : (double) right / wanted;
    }

    double f1() {
        return found + wanted == 0 ? 1 : 2.0 * right / (found + wanted);
    }

    void add(Tally other) {
        right += other.right;
        found += other.found;
        wanted += other.wanted;
    }

    /** Right ones of all that were asked about. */
    static final class Share {
        int right;
        int of;

        void count(boolean isRight) {
            of++;
            right += isRight ? 1 : 0;
        }

        double value() {
            return of == 0 ? 1 : (double) right / of;
        }
    }
}
