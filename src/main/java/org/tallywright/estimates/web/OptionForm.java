package org.tallywright.estimates.web;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.OptionRow;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/** An option as typed: what it is called, what the client reads of it, and the lines that are ticked. */
record OptionForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String name,
        @Nullable String words,
        @Nullable String oneOf,
        @Nullable List<String> lines) {
    private static final int MOST_WORDS = 2000;

    static OptionForm blank() {
        return new OptionForm(Ids.next(), null, "", "", "", List.of());
    }

    /** @param held the lines that it holds now */
    static OptionForm of(OptionRow option, EstimateSheet held) {
        return new OptionForm(option.id(), option.version(), option.name(), option.words(), option.oneOf(), ids(held));
    }

    private static List<String> ids(EstimateSheet held) {
        return java.util.stream.Stream.of(
                        held.tasks().stream().map(EstimateSheet.TaskRow::id),
                        held.materials().stream().map(EstimateSheet.MaterialRow::id),
                        held.others().stream().map(EstimateSheet.OtherRow::id))
                .flatMap(ids -> ids)
                .map(UUID::toString)
                .toList();
    }

    public boolean holds(UUID line) {
        return lines != null && lines.contains(line.toString());
    }

    @Nullable
    OptionDraft read(FormReader read) {
        UUID own = read.field("", () -> Picked.own(id));
        String called = read.field("name", () -> Typed.requiredLine(Picked.text(name), 120));
        String said = read.field("words", () -> Typed.block(Picked.text(words), MOST_WORDS));
        String group = read.field("oneOf", () -> Typed.line(Picked.text(oneOf), 60));
        Set<UUID> held = read.field("lines", this::held);
        return own == null || called == null || said == null || group == null || held == null
                ? null
                : new OptionDraft(own, version, called, said, group, held);
    }

    private Set<UUID> held() {
        return lines == null ? Set.of() : lines.stream().map(Picked::id).collect(Collectors.toSet());
    }
}
