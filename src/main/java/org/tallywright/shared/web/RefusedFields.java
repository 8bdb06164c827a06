package org.tallywright.shared.web;

import org.jspecify.annotations.Nullable;
import org.springframework.beans.PropertyAccessException;
import org.springframework.validation.BindingResult;
import org.springframework.validation.DefaultBindingErrorProcessor;
import org.springframework.validation.FieldError;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.InitBinder;
import org.tallywright.shared.Problem;

/** Where a typed value refuses itself, its own sentence stands beside the field and what was typed stays in it. */
@ControllerAdvice
class RefusedFields {
    @InitBinder
    void sayWhy(WebDataBinder binder) {
        binder.setBindingErrorProcessor(new DefaultBindingErrorProcessor() {
            @Override
            public void processPropertyAccessException(PropertyAccessException ex, BindingResult result) {
                Problem problem = problemIn(ex);
                String field = ex.getPropertyName();
                if (problem == null || field == null) {
                    super.processPropertyAccessException(ex, result);
                    return;
                }
                result.addError(new FieldError(
                        result.getObjectName(), field, ex.getValue(), true, null, null, problem.sentence()));
            }
        });
    }

    static @Nullable Problem problemIn(Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof Problem problem) {
                return problem;
            }
        }
        return null;
    }
}
