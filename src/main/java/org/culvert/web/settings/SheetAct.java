package org.culvert.web.settings;

import java.util.UUID;
import org.culvert.platform.FormBodies;
import org.culvert.web.acts.Act;
import org.culvert.web.forms.EntryBody;
import org.jspecify.annotations.Nullable;

/**
 * What may be done with things of a sheet, and how.
 *
 * @param shownOnce whether its answer has a secret that nobody is shown again
 */
record SheetAct<E>(Act<E> act, Taking<E> taking, boolean shownOnce) {
    /** Carries it out, and says what was made or changed, as far as that has an identifier. */
    interface Taking<E> {
        @Nullable
        Object take(UUID id, E entry);
    }

    /** In the place of an identifier where there is one thing alone, or none yet. */
    static final UUID NONE = new UUID(0, 0);

    @Nullable
    Object carryOut(UUID id, EntryBody told, FormBodies bodies) {
        return taking.take(id, told.read(bodies, act.body()));
    }
}
