package org.tallywright.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;

/**
 * One save of a form, as all of them go: it is read, kept and answered with the next page; or the same page comes again with
 * 422 and everything that was typed; or, where somebody was faster, both versions are shown (409).
 *
 * <pre>
 * return new FormSave&lt;&gt;(form::read)
 *         .keeping(details -> { desk.save(details); return "redirect:/jobs"; })
 *         .beside(() -> form.beside(kept(id)))
 *         .or(response, errors -> page(form, errors, model));
 * </pre>
 *
 * @param <D> what the form says, in the terms of the domain
 */
public final class FormSave<D> {
    /** Null where something was refused. */
    @FunctionalInterface
    public interface Reading<D> {
        @Nullable
        D of(FormReader read);
    }

    private final Reading<D> reading;
    private @Nullable Function<D, String> keep;
    private @Nullable Supplier<List<Stale.Row>> beside;

    public FormSave(Reading<D> reading) {
        this.reading = reading;
    }

    /** Keeps it and says which page comes next. */
    public FormSave<D> keeping(Function<D, String> keeper) {
        keep = keeper;
        return this;
    }

    /** What is kept now beside what was typed; without it a lost update shows itself. */
    public FormSave<D> beside(Supplier<List<Stale.Row>> versions) {
        beside = versions;
        return this;
    }

    /** Saves, or lets the page come again with what was refused. */
    public String or(HttpServletResponse response, Function<FormErrors, String> again) {
        FormReader read = new FormReader();
        D details = reading.of(read);
        if (details != null && keep != null) {
            try {
                return keep.apply(details);
            } catch (Refused refused) {
                read.refuse(refused);
            } catch (Stale stale) {
                throw beside == null ? stale : new Stale(stale.what(), beside.get());
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return again.apply(read.errors());
    }
}
