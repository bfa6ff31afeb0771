package org.culvert.call;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** People outside of the roster whom the rooms above have to do with; they are kept and erased as callers are. */
@ApplicationScoped
public class OutsidePeople {
    /** How somebody is called and reached. */
    public record Contact(@Nullable String name, @Nullable String phone) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<Person, UUID> {}

    private final Rows rows;

    OutsidePeople(Rows rows) {
        this.rows = rows;
    }

    /** @param at when the network first had to do with them */
    @Transactional
    public UUID enter(Contact contact, Instant at) {
        Person person = Person.of(contact, at);
        rows.persistAndFlush(person);
        return person.id();
    }

    /** Those of some people who are neither hidden nor erased. */
    @Transactional
    public Map<UUID, Contact> contactsById(Collection<UUID> ids) {
        return rows.list("id in ?1 and hiddenAt is null and erasedAt is null", ids).stream()
                .collect(Collectors.toMap(Person::id, person -> new Contact(person.name, person.phone)));
    }
}
