package org.tallywright.proof;

import java.util.Set;

/**
 * One row of the authorisation files: who may use a method on a pattern. {@code open} is everybody; a role may be held to
 * one of the choices that the pattern spells out, as in {@code helper:uses}.
 */
record Route(String method, String pattern, Set<String> roles) {
    String key() {
        return method + " " + pattern;
    }

    boolean open() {
        return roles.contains("open");
    }

    boolean admits(Reader reader, String path) {
        return open()
                || roles.contains(reader.code())
                || roles.stream()
                        .filter(role -> role.startsWith(reader.code() + ":"))
                        .anyMatch(role -> path.contains("/" + role.substring(role.indexOf(':') + 1)));
    }
}
