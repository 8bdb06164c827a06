package org.tallywright.people;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface Accounts extends CrudRepository<Account, UUID> {
    Optional<Account> findBySignInNameIgnoreCase(String signInName);
}
