package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Something that can be observed or measured, with exclusive named states.
 *
 * @param id stable, kebab-case
 * @param name as a technician calls it
 * @param about where to find it and what it means
 * @param scope where it applies
 * @param reported how readily a note mentions it unasked
 * @param quantity what it is measured in, or null when it is only seen
 * @param called names of the thing, for the reader
 * @param states at least two, exactly one of them normal, backgrounds summing to 1
 * @param negated the state that "no NAME" means, or null
 * @param bare the state that the name alone means, or null
 * @param history whether it is about what once happened to the unit, so that "last year" does not put it aside
 * @param needs parts without which a unit cannot show it, so that a test of several symptoms leaves it out
 */
public record Symptom(
        String id,
        String name,
        String about,
        DeviceScope scope,
        Reported reported,
        @Nullable Quantity quantity,
        List<String> called,
        List<State> states,
        @Nullable String negated,
        @Nullable String bare,
        boolean history,
        List<String> needs) {
    /** How readily a note mentions a symptom without being asked. */
    public enum Reported {
        /** Anybody would say so: smoke, a dead unit. */
        ALWAYS,
        /** Mostly said when it is out of the ordinary. */
        USUALLY,
        /** Only known when somebody looked or measured. */
        IF_TESTED
    }

    public Symptom {
        called = List.copyOf(called);
        states = List.copyOf(states);
        needs = List.copyOf(needs);
    }

    /**
     * Position of a state in {@link #states}.
     *
     * @return -1 if there is no such state
     */
    public int indexOf(String stateId) {
        for (int i = 0; i < states.size(); i++) {
            if (states.get(i).id().equals(stateId)) {
                return i;
            }
        }
        return -1;
    }

    /**
     * As {@link #indexOf}, for a state that must be one.
     *
     * @throws IllegalArgumentException if there is no such state; the message names those there are
     */
    public int requireState(String stateId) {
        int index = indexOf(stateId);
        if (index < 0) {
            throw new IllegalArgumentException("symptom '" + id + "' has no state '" + stateId + "'; use one of "
                    + states.stream().map(State::id).toList());
        }
        return index;
    }

    /** A state by its id; empty if there is no such state. */
    public Optional<State> state(String stateId) {
        return states.stream().filter(state -> state.id().equals(stateId)).findFirst();
    }

    /** The state a sound unit shows. */
    public State normal() {
        return states.get(normalIndex());
    }

    /** Its position in {@link #states}. */
    public int normalIndex() {
        for (int i = 0; i < states.size(); i++) {
            if (states.get(i).normal()) {
                return i;
            }
        }
        throw new IllegalStateException("symptom '" + id + "' has no normal state");
    }
}
