package org.tallywright.web;

import java.io.Serializable;
import java.util.Arrays;
import java.util.UUID;
import org.springframework.security.core.AuthenticatedPrincipal;

/**
 * The person behind a request. Controllers take it as a parameter. Read anew for each request, so a changed role or
 * "sign out everywhere" holds at once.
 *
 * @param epoch the account's count of "sign out everywhere"; a session of an older one is refused
 */
public record SignedIn(UUID personId, String name, Role role, int epoch)
        implements AuthenticatedPrincipal, Serializable {
    public SignedIn(UUID personId, String name, Role role) {
        this(personId, name, role, 0);
    }

    /** The key of this person's sessions. */
    @Override
    public String getName() {
        return personId.toString();
    }

    public boolean is(Role... roles) {
        return Arrays.asList(roles).contains(role);
    }

    /** Prices to the client, margins, cost. */
    public boolean seesMoney() {
        return role == Role.OWNER;
    }

    /** Wages and burden. */
    public boolean seesWages() {
        return role == Role.OWNER || role == Role.BOOKKEEPER;
    }

    /** Estimated hours, and the hours of others on a job. */
    public boolean seesEstimates() {
        return role == Role.OWNER || role == Role.LEAD;
    }
}
