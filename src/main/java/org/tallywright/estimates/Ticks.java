package org.tallywright.estimates;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/**
 * The options that came with a form, as sent.
 *
 * @param options ids that were ticked
 * @param oneOf of each group the id that was picked, or empty for none of them
 */
public record Ticks(
        @Nullable List<String> options, @Nullable List<@Nullable String> oneOf) {
    private Stream<String> all() {
        return Stream.concat(
                options == null ? Stream.of() : options.stream(),
                oneOf == null ? Stream.of() : oneOf.stream().filter(id -> id != null && !id.isBlank()));
    }

    public boolean holds(UUID option) {
        return all().anyMatch(option.toString()::equals);
    }

    /** @throws Refused where one is no id at all */
    public Set<UUID> ids() {
        Set<UUID> ids = new HashSet<>();
        try {
            all().forEach(id -> ids.add(UUID.fromString(id)));
        } catch (IllegalArgumentException notAnId) {
            throw new Refused("options", "Tick options of this bid only.");
        }
        return ids;
    }
}
