package org.tallywright.people;

import java.util.List;
import java.util.Optional;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.LockedException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;
import org.tallywright.web.SignedIn;

/** Checks name and password. An unknown name costs the same time and gives the same answer as a wrong password. */
@Component
class SignInCheck implements AuthenticationProvider {
    private final Accounts accounts;
    private final Persons persons;
    private final PasswordEncoder passwords;
    private final SignInThrottle throttle;
    private final String nobody;

    SignInCheck(Accounts accounts, Persons persons, PasswordEncoder passwords, SignInThrottle throttle) {
        this.accounts = accounts;
        this.persons = persons;
        this.passwords = passwords;
        this.throttle = throttle;
        this.nobody = passwords.encode("nobody signs in with this");
    }

    @Override
    public Authentication authenticate(Authentication asked) {
        String name = PersonWords.signInNameAsTyped(asked.getName());
        String address = asked.getDetails() instanceof WebAuthenticationDetails web ? web.getRemoteAddress() : "";
        if (throttle.mustWait(name, address)) {
            throw new LockedException("too many tries");
        }
        Optional<SignedIn> person = matching(name, String.valueOf(asked.getCredentials()));
        throttle.record(name, address, person.isEmpty());
        SignedIn me = person.orElseThrow(() -> new BadCredentialsException("no match"));
        return UsernamePasswordAuthenticationToken.authenticated(
                me, null, List.of(new SimpleGrantedAuthority("ROLE_" + me.role().name())));
    }

    private Optional<SignedIn> matching(String name, String password) {
        Optional<Account> account = accounts.findBySignInNameIgnoreCase(name);
        boolean right =
                passwords.matches(password, account.map(Account::passwordHash).orElse(nobody));
        return account.filter(found -> right)
                .flatMap(found -> persons.findById(found.personId())
                        .filter(Person::active)
                        .map(person -> new SignedIn(person.id(), person.name(), person.role(), found.sessionEpoch())));
    }

    @Override
    public boolean supports(Class<?> authentication) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(authentication);
    }
}
