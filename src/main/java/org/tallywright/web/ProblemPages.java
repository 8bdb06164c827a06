package org.tallywright.web;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.validation.BindException;
import org.springframework.web.bind.ServletRequestBindingException;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.resource.NoResourceFoundException;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;

/** Turns what a controller did not answer itself into a page with one clear sentence and a way on. */
@ControllerAdvice
@Order(0)
class ProblemPages {
    private static final String PAGE = "problem";

    private final ShellAdvice frame;

    ProblemPages(ShellAdvice frame) {
        this.frame = frame;
    }

    @ExceptionHandler({NotHere.class, NoResourceFoundException.class})
    @ResponseStatus(HttpStatus.NOT_FOUND)
    String notHere(Exception problem, Model model) {
        String sentence = problem instanceof NotHere here ? here.sentence() : "There is no such page here.";
        return page(model, "Not here", sentence);
    }

    /** An id or date in the address that cannot be one names nothing. */
    @ExceptionHandler(MethodArgumentTypeMismatchException.class)
    @ResponseStatus(HttpStatus.NOT_FOUND)
    String noSuchAddress(Model model) {
        return page(model, "Not here", "There is no such page here.");
    }

    @ExceptionHandler({BindException.class, ServletRequestBindingException.class})
    @ResponseStatus(HttpStatus.BAD_REQUEST)
    String notReadable(Model model) {
        return page(
                model,
                "Not understood",
                "The form did not arrive as this page sends it. Go back, reload and try again.");
    }

    @ExceptionHandler({Refused.class, NotUnderstood.class})
    @ResponseStatus(HttpStatus.UNPROCESSABLE_ENTITY)
    String refused(Exception problem, Model model) {
        return page(model, "Not saved", String.valueOf(problem.getMessage()));
    }

    @ExceptionHandler(Stale.class)
    @ResponseStatus(HttpStatus.CONFLICT)
    String stale(Stale problem, Model model, HttpServletRequest request) {
        model.addAttribute("rows", problem.rows());
        model.addAttribute("theirs", cameFrom(request));
        return page(model, "Changed meanwhile", problem.sentence());
    }

    /** The page of the form, which shows what is kept now; an address that only takes forms would lead nowhere. */
    private static @Nullable String cameFrom(HttpServletRequest request) {
        try {
            String path = URI.create(String.valueOf(request.getHeader(HttpHeaders.REFERER)))
                    .getPath();
            return path != null && path.startsWith("/") && !path.startsWith("//") ? path : null;
        } catch (IllegalArgumentException notAnAddress) {
            return null;
        }
    }

    /** Two saves met in the database; the second changed nothing. */
    @ExceptionHandler(OptimisticLockingFailureException.class)
    @ResponseStatus(HttpStatus.CONFLICT)
    String metInTheDatabase(Model model) {
        model.addAttribute("rows", List.of());
        return page(
                model,
                "Changed meanwhile",
                "Somebody saved this at the same moment. Nothing was overwritten; open it again.");
    }

    /** A rule of the database said no where the page had no better word for it. */
    @ExceptionHandler(DataIntegrityViolationException.class)
    @ResponseStatus(HttpStatus.UNPROCESSABLE_ENTITY)
    String againstTheRules(Model model) {
        return page(
                model,
                "Not saved",
                "This does not fit what is already here, so nothing was changed. Go back and check what you typed.");
    }

    private String page(Model model, String title, String sentence) {
        model.addAttribute("shell", frame.shell(SignedInArgument.current()));
        model.addAttribute("title", title);
        model.addAttribute("sentence", sentence);
        return PAGE;
    }
}
