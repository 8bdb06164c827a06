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

    void say(String name, String words, Set<OptionLine> lines) {
        this.name = name;
        this.words = words;
        this.lines.retainAll(lines);
        this.lines.addAll(lines);
    }

    boolean says(String name, String words, Set<OptionLine> lines) {
        return this.name.equals(name) && this.words.equals(words) && this.lines.equals(lines);
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
