package org.benchlore.cli;

import java.util.Locale;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.Estimate;
import org.benchlore.kb.ranking.Evaluation;

/** An evaluation as plain text. */
final class EvaluationPage {
    private static final int CHART = 40;
    private static final int REVIEWS = 10;

    private final Knowledge knowledge;
    private final Page page;

    EvaluationPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
    }

    void print(Evaluation evaluation) {
        page.heading("Replay of " + evaluation.scored() + (evaluation.scored() == 1 ? " ended case" : " ended cases")
                + ", each ranked before it was learnt");
        if (evaluation.tooFew()) {
            page.caution("Fewer than " + Evaluation.FEW
                    + " cases: too few to tell. Look at the intervals (90 %) before believing a figure.");
        } else if (!evaluation.tells()) {
            page.caution("Whether learning helps cannot be told yet: the interval of the gain holds 0.");
        }
        page.blank();
        page.line("                  first right      among first 3   log-loss  Brier  calibration error");
        figures("most frequent", evaluation.baseline());
        figures("packs alone", evaluation.packs());
        figures("cases alone", evaluation.cases());
        figures("both", evaluation.both());
        Estimate gain = evaluation.gain();
        page.hanging(
                2,
                4,
                "What the cases taught gave the true cause " + times(gain.value())
                        + " times the share that the packs alone give it"
                        + (Double.isFinite(gain.low())
                                ? " (90 %: " + times(gain.low()) + " to " + times(gain.high()) + ")."
                                : "; one case gives no interval."));
        page.blank();
        chart(evaluation);
        page.blank();
        curve(evaluation);
        if (!evaluation.reviews().isEmpty()) {
            page.blank();
            reviews(evaluation);
        }
    }

    /** A gain in nats as the factor that it is, in the geometric mean over the cases. */
    private static String times(double nats) {
        return String.format(Locale.ROOT, "%.1f", Math.exp(nats));
    }

    private void figures(String name, Evaluation.Figures figures) {
        page.line(String.format(
                Locale.ROOT,
                "  %-13s %s %s   %8.2f %6.2f  %.2f",
                name,
                share(figures.top1()),
                share(figures.top3()),
                figures.logLoss().value(),
                figures.brier().value(),
                figures.calibrationError()));
    }

    private static String share(Estimate e) {
        return String.format(Locale.ROOT, "%3.0f %% (%2.0f to %3.0f)", 100 * e.value(), 100 * e.low(), 100 * e.high());
    }

    /** "#" is what was said, "o" what came true, "(" and ")" how far that may be off. */
    private void chart(Evaluation evaluation) {
        page.heading("Is 70 % seven in ten? # said, o came true, ( ) 90 % interval");
        for (Evaluation.Bin bin : evaluation.calibration()) {
            char[] bar = ".".repeat(CHART + 1).toCharArray();
            put(bar, bin.right().low(), '(');
            put(bar, bin.right().high(), ')');
            put(bar, bin.said(), '#');
            put(bar, bin.right().value(), 'o');
            page.line(String.format(
                    Locale.ROOT,
                    "  %3.0f-%3.0f %% |%s| said %3.0f %%, right %3.0f %%, %d %s",
                    100 * bin.from(),
                    100 * bin.to(),
                    new String(bar),
                    100 * bin.said(),
                    100 * bin.right().value(),
                    bin.cases(),
                    bin.cases() == 1 ? "case" : "cases"));
        }
    }

    private static void put(char[] bar, double share, char mark) {
        bar[(int) Math.round(share * CHART)] = mark;
    }

    private void curve(Evaluation evaluation) {
        page.heading("As cases came in (log-loss, less is better)");
        page.line("       cases   packs   cases    both   first right");
        for (Evaluation.Stretch s : evaluation.curve()) {
            page.line(String.format(
                    Locale.ROOT,
                    "  %4d-%5d  %6.2f  %6.2f  %6.2f   %3.0f %%",
                    s.from(),
                    s.to(),
                    s.packs(),
                    s.cases(),
                    s.both(),
                    100 * s.top1()));
        }
    }

    private void reviews(Evaluation evaluation) {
        page.heading("Entries to review: opinion and experience disagree");
        TestPage names = new TestPage(knowledge, page);
        int shown = 0;
        for (Evaluation.Review r : evaluation.reviews()) {
            if (shown++ == REVIEWS) {
                break;
            }
            String cause = knowledge.cause(r.causeId()).map(Cause::name).orElse(r.causeId()) + " [" + r.causeId() + "]";
            String what = r.symptomId().isEmpty()
                    ? "share of all units"
                    : (r.linked() ? "" : "no opinion on ") + names.state(r.symptomId(), r.stateId());
            page.hanging(
                    2,
                    4,
                    String.format(
                            Locale.ROOT,
                            "%s: %s; packs %s, cases %s (%.1f cases, %+.0f dB)",
                            cause,
                            what,
                            percent(r.opinion()),
                            percent(r.experience()),
                            r.cases(),
                            r.decibans()));
        }
    }

    private static String percent(double p) {
        return String.format(Locale.ROOT, p < 0.1 ? "%.1f %%" : "%.0f %%", 100 * p);
    }
}
