package org.tallywright.measuring;

import jakarta.persistence.Embeddable;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** A stud, an outlet or a reveal of an opening. */
@Embeddable
public class Mark {
    /** What a mark marks. */
    public enum Kind {
        STUD,
        OUTLET,
        REVEAL;

        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private String kind;
    private String name;
    private Length across;
    private @Nullable Length up;

    @SuppressWarnings("NullAway.Init")
    protected Mark() {}

    /**
     * @param across from the left corner to the middle; of a reveal its width
     * @param up from the floor to the middle, of an outlet
     */
    public Mark(Kind kind, String name, Length across, @Nullable Length up) {
        this.kind = kind.code();
        this.name = name;
        this.across = across;
        this.up = up;
    }

    public Kind kind() {
        return Kind.valueOf(kind.toUpperCase(Locale.ROOT));
    }

    public String name() {
        return name;
    }

    public Length across() {
        return across;
    }

    public @Nullable Length up() {
        return up;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Mark mark
                && kind.equals(mark.kind)
                && name.equals(mark.name)
                && across.equals(mark.across)
                && Objects.equals(up, mark.up);
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind, name, across, up);
    }
}
