package org.culvert.platform.account;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.UUID;

@ApplicationScoped
class AccountRepository implements PanacheRepositoryBase<Account, UUID> {
    Optional<Account> findByUsername(String username) {
        return find("username", username).firstResultOptional();
    }
}
