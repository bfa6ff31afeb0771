package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A caller, finder or carrier outside the roster. */
@Entity
@Table(name = "people", schema = "personal")
class Person extends Recorded {
    @Nullable
    String name;

    @Nullable
    String phone;

    @Nullable
    String email;

    @Nullable
    String address;

    /** Since when nobody who works with records is shown this person. */
    @Nullable
    Instant hiddenAt;

    @Nullable
    Instant erasedAt;

    protected Person() {}

    static Person of(CallEntry.Caller caller, Instant at) {
        var person = new Person();
        person.happenedAt(at);
        person.name = caller.name();
        person.phone = caller.phone();
        person.email = caller.email();
        person.address = caller.address();
        return person;
    }

    static Person of(OutsidePeople.Contact contact, Instant at) {
        var person = new Person();
        person.happenedAt(at);
        person.name = contact.name();
        person.phone = contact.phone();
        return person;
    }

    /** What is known of the caller now; null where nothing is. */
    void correct(CallEntry.@Nullable Caller caller, String reason) {
        name = caller == null ? null : caller.name();
        phone = caller == null ? null : caller.phone();
        email = caller == null ? null : caller.email();
        address = caller == null ? null : caller.address();
        revisedBecause(reason);
    }
}
