package org.tallywright.daylog;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.tallywright.web.SignedIn;

/**
 * A whole day sheet to be saved.
 *
 * @param answers keys of the questions that were answered "it is right"
 * @param objections what was found wrong before it came here; nothing is saved while there is one
 * @param mayMove whether an entry of this person's other days is moved to this day; else it is refused
 */
public record SaveDay(
        UUID person,
        LocalDate date,
        SignedIn by,
        List<TypedRow> rows,
        Set<String> answers,
        List<Objection> objections,
        boolean mayMove) {
    public SaveDay {
        rows = List.copyOf(rows);
        answers = Set.copyOf(answers);
        objections = List.copyOf(objections);
    }

    public SaveDay(UUID person, LocalDate date, SignedIn by, List<TypedRow> rows, Set<String> answers) {
        this(person, date, by, rows, answers, List.of(), false);
    }
}
