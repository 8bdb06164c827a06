package org.tallywright.people;

import java.util.Map;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.shared.Refused;

/** How passwords are kept: Argon2id with the framework's current parameters, named in the hash so they can be raised. */
@Configuration(proxyBeanMethods = false)
class Passwords {
    private static final int SHORTEST = 10;
    private static final int LONGEST = 200;

    @Bean
    PasswordEncoder passwordEncoder() {
        return new DelegatingPasswordEncoder(
                "argon2", Map.of("argon2", Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8()));
    }

    static String checked(String password, String signInName) {
        if (password.length() < SHORTEST) {
            throw new Refused(
                    "password", "Use at least " + SHORTEST + " characters; a few words are easy to remember.");
        }
        if (password.length() > LONGEST) {
            throw new Refused("password", "Use at most " + LONGEST + " characters.");
        }
        if (password.equalsIgnoreCase(signInName)) {
            throw new Refused("password", "The password must differ from the sign-in name.");
        }
        return password;
    }
}
