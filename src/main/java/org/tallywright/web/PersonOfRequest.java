package org.tallywright.web;

import java.util.Optional;

/** Looks up the person of a session as he is now; implemented where people are kept. */
public interface PersonOfRequest {
    /** Empty when the account is gone, inactive, or has signed out everywhere since. */
    Optional<SignedIn> current(SignedIn remembered);
}
