package org.tallywright.web;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;

/**
 * Reads the fields of one submitted form and gathers every refusal, so that the page can show them all at once.
 *
 * <pre>
 * FormReader read = new FormReader();
 * Length width = read.field("width", () -> Length.parse(form.width(), units));
 * if (read.refused()) { model.addAttribute("errors", read.errors()); return "jobs/piece"; }
 * </pre>
 */
public final class FormReader {
    private final FormErrors errors = new FormErrors();

    /** The value read, or null with the refusal kept under that field's name. */
    public <T> @Nullable T field(String name, Supplier<T> value) {
        try {
            return value.get();
        } catch (NotUnderstood notUnderstood) {
            refuse(name, notUnderstood.sentence());
        } catch (Refused refused) {
            refuse(name, refused.sentence());
        }
        return null;
    }

    /** As {@link #field}, where an empty box means that there is no value. */
    public <T> @Nullable T optional(String name, @Nullable String typed, Supplier<T> value) {
        return typed == null || typed.isBlank() ? null : field(name, value);
    }

    /** The first refusal of a field stays. */
    public void refuse(String name, String sentence) {
        if (errors.get(name) == null) {
            errors.put(name, sentence);
        }
    }

    /** A rule of the domain said no after all fields were read. */
    public void refuse(Refused refused) {
        refuse(refused.field() == null ? "" : refused.field(), refused.sentence());
    }

    public boolean refused() {
        return !errors.isEmpty();
    }

    /** What was refused, field by field. */
    public FormErrors errors() {
        return errors;
    }
}
