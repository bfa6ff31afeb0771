package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Optional;
import org.culvert.platform.Paging;
import org.culvert.platform.ledger.TagSource;

/** The tag of an account as administrators read it: whoever takes a role away has seen which there are. */
@ApplicationScoped
class AccountTag implements TagSource {
    private final AccountService accounts;
    private final EntityManager entities;

    AccountTag(AccountService accounts, EntityManager entities) {
        this.accounts = accounts;
        this.entities = entities;
    }

    @Override
    public String kind() {
        return "account";
    }

    @Override
    public void lock(String id) {
        entities.createNativeQuery("select id from accounts where id = ?1 for update")
                .setParameter(1, Paging.uuid("id", id))
                .getResultList();
    }

    @Override
    public Optional<Object> show(String id) {
        return Optional.of(accounts.getAccount(Paging.uuid("id", id)));
    }
}
