package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.benchlore.kb.knowledge.QualityReport.AmbiguityGroup;
import org.benchlore.kb.knowledge.QualityReport.Coverage;
import org.benchlore.kb.knowledge.QualityReport.Isolation;

/** Coverage, fault detection and fault isolation out of the D-matrix. */
final class Testability {
    private final Knowledge knowledge;
    private final DependencyMatrix matrix;
    private final List<List<Cause>> groups;

    Testability(Knowledge knowledge, DependencyMatrix matrix) {
        this.knowledge = knowledge;
        this.matrix = matrix;
        this.groups = matrix.ambiguityGroups(knowledge.causes());
    }

    /**
     * A cause as the formulas see it.
     *
     * @param weight how often it occurs, above 0
     * @param detected whether a test shows that something is wrong
     * @param group size of its ambiguity group, itself included
     */
    record Weighed(double weight, boolean detected, int group) {}

    /** The formulas of {@link Isolation}. */
    static Isolation isolation(Collection<Weighed> causes) {
        double all = sum(causes, cause -> true);
        double detected = sum(causes, Weighed::detected);
        if (detected == 0) {
            return new Isolation(0, 0, 0, 0, 0);
        }
        double sizes = causes.stream()
                .filter(Weighed::detected)
                .mapToDouble(cause -> cause.weight() * cause.group())
                .sum();
        return new Isolation(
                detected / all,
                within(causes, 1) / detected,
                within(causes, 2) / detected,
                within(causes, 3) / detected,
                sizes / detected);
    }

    private static double within(Collection<Weighed> causes, int most) {
        return sum(causes, cause -> cause.detected() && cause.group() <= most);
    }

    private static double sum(Collection<Weighed> causes, Predicate<Weighed> which) {
        return causes.stream().filter(which).mapToDouble(Weighed::weight).sum();
    }

    /** All causes, each in the largest group that it meets on any device. */
    Isolation overall(boolean weighted) {
        Map<String, Integer> sizes = new HashMap<>();
        groups.forEach(group -> group.forEach(cause -> sizes.merge(cause.id(), group.size(), Math::max)));
        return isolation(knowledge.causes().stream()
                .map(cause -> weighed(cause, sizes.getOrDefault(cause.id(), 1), weighted))
                .toList());
    }

    int largestGroup() {
        int alone = knowledge.causes().isEmpty() ? 0 : 1;
        return groups.stream().mapToInt(List::size).max().orElse(alone);
    }

    private Weighed weighed(Cause cause, int group, boolean weighted) {
        return new Weighed(weighted ? cause.perThousand() : 1, matrix.detected(cause), group);
    }

    /** Groups of two or more, the largest first. */
    List<AmbiguityGroup> groups() {
        return groups.stream()
                .sorted(Comparator.comparingInt((List<Cause> group) -> -group.size())
                        .thenComparing(group -> group.get(0).id()))
                .map(group -> {
                    List<String> reasons = group.stream()
                            .map(Cause::alike)
                            .filter(reason -> !reason.isEmpty())
                            .toList();
                    return new AmbiguityGroup(
                            group.stream().map(Cause::id).toList(), reasons, reasons.size() >= group.size() - 1);
                })
                .toList();
    }

    /** A line for each scope that some entry or device names, the widest first. */
    List<Coverage> coverage() {
        TreeSet<DeviceScope> scopes =
                new TreeSet<>(Comparator.comparingInt(DeviceScope::depth).thenComparing(Comparator.naturalOrder()));
        knowledge.causes().forEach(entry -> scopes.add(entry.scope()));
        knowledge.symptoms().forEach(entry -> scopes.add(entry.scope()));
        knowledge.tests().forEach(entry -> scopes.add(entry.scope()));
        knowledge.fixes().forEach(entry -> scopes.add(entry.scope()));
        knowledge.devices().stream().filter(device -> !device.onlyKind()).forEach(device -> scopes.add(device.scope()));
        return scopes.stream().map(this::coverage).toList();
    }

    private Coverage coverage(DeviceScope scope) {
        List<Cause> causes = knowledge.causes().stream()
                .filter(cause -> cause.scope().contains(scope))
                .toList();
        List<Symptom> symptoms = knowledge.symptoms().stream()
                .filter(symptom -> symptom.scope().contains(scope))
                .toList();
        List<Weighed> weighted = new ArrayList<>();
        List<Weighed> counted = new ArrayList<>();
        int largest = 0;
        for (List<Cause> group : matrix.byRow(causes)) {
            largest = Math.max(largest, group.size());
            group.forEach(cause -> {
                weighted.add(weighed(cause, group.size(), true));
                counted.add(weighed(cause, group.size(), false));
            });
        }
        return new Coverage(
                scope,
                causes.size(),
                (int) causes.stream()
                        .filter(cause -> cause.scope().equals(scope))
                        .count(),
                share(
                        causes,
                        cause -> cause.confirmedBy().stream()
                                .anyMatch(id -> knowledge
                                        .test(id)
                                        .filter(test -> test.scope().contains(scope))
                                        .isPresent())),
                share(
                        causes,
                        cause -> cause.fixedBy().stream()
                                .anyMatch(remedy -> knowledge
                                        .fix(remedy.fixId())
                                        .filter(fix -> fix.scope().contains(scope))
                                        .isPresent())),
                share(
                        symptoms,
                        symptom -> knowledge.testsRevealing(symptom.id()).stream()
                                .anyMatch(test -> test.scope().contains(scope))),
                largest,
                isolation(weighted),
                isolation(counted));
    }

    private static <T> double share(List<T> all, Predicate<T> which) {
        return all.isEmpty() ? 0 : (double) all.stream().filter(which).count() / all.size();
    }
}
