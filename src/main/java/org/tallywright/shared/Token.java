package org.tallywright.shared;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/** Something secret that is shown once: 32 random bytes as text, of which only the SHA-256 is kept. */
public final class Token {
    private static final SecureRandom RANDOM = new SecureRandom();

    private Token() {}

    public static String next() {
        byte[] bytes = new byte[32];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    public static byte[] hash(String token) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java runtime has SHA-256", impossible);
        }
    }
}
