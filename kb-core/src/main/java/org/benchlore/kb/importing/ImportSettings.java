package org.benchlore.kb.importing;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Optional;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * How to read a source.
 *
 * @param kind how it is written
 * @param mapping columns of a table or keys of JSON objects; empty to guess
 * @param dates how dates with slashes are meant where the mapping does not say
 * @param undated the day of cases that name none; empty to leave it unknown, which is kept as 1970-01-01
 * @param device what units are whose record names no device the packs know
 */
public record ImportSettings(
        ImportKind kind,
        Optional<ColumnMapping> mapping,
        DateOrder dates,
        Optional<LocalDate> undated,
        DeviceScope device) {
    public ImportSettings {
        requireNonNull(kind, "kind");
        requireNonNull(mapping, "mapping");
        requireNonNull(dates, "dates");
        requireNonNull(undated, "undated");
        requireNonNull(device, "device");
    }

    /** Nothing taken for granted: mapping guessed, day first, dates and devices unknown where they are not told. */
    public static ImportSettings of(ImportKind kind) {
        return new ImportSettings(kind, Optional.empty(), DateOrder.DMY, Optional.empty(), DeviceScope.ANY);
    }

    /** The same with a mapping. */
    public ImportSettings with(ColumnMapping columns) {
        return new ImportSettings(kind, Optional.of(columns), dates, undated, device);
    }
}
