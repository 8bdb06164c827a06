package org.tallywright.estimates;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.HashSet;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A named group of lines that the client may take or leave. */
@Entity
@Table(name = "estimate_option")
class EstimateOption {
    @Id
    private UUID id;

    private UUID jobId;
    private String name;
    private String words;
    private String oneOf = "";
    private int position;

    @ElementCollection
    @CollectionTable(name = "estimate_option_line", joinColumns = @JoinColumn(name = "option_id"))
    private Set<OptionLine> lines = new HashSet<>();

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected EstimateOption() {}

    @SuppressWarnings("NullAway.Init")
    EstimateOption(UUID id, UUID jobId, int position) {
        this.id = id;
        this.jobId = jobId;
        this.position = position;
    }

    void say(OptionDraft said, Set<OptionLine> lines) {
        name = said.name();
        words = said.words();
        oneOf = said.oneOf();
        this.lines.retainAll(lines);
        this.lines.addAll(lines);
    }

    boolean says(OptionDraft said, Set<OptionLine> lines) {
        return name.equals(said.name())
                && words.equals(said.words())
                && oneOf.equals(said.oneOf())
                && this.lines.equals(lines);
    }

    Set<OptionLine> lines() {
        return Set.copyOf(lines);
    }

    /** Its lines are in no option any more. */
    void free() {
        lines.clear();
    }

    Set<UUID> taskIds() {
        return lines.stream().map(OptionLine::taskId).filter(Objects::nonNull).collect(Collectors.toSet());
    }

    String name() {
        return name;
    }

    String words() {
        return words;
    }

    String oneOf() {
        return oneOf;
    }

    int count() {
        return lines.size();
    }

    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen);
    }

    boolean isOf(UUID job) {
        return jobId.equals(job);
    }
}
