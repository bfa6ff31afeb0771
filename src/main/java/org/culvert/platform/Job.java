package org.culvert.platform;

import java.util.UUID;

/**
 * Work that takes longer than a request and that any node may do, or do again after another has died. A bean of this type
 * is found by {@link JobQueue}.
 */
public interface Job {
    /** Name under which the work is queued; it must not change while any is. */
    String name();

    /**
     * Does one piece of work, from its beginning. It may have been begun before, elsewhere.
     *
     * @throws RuntimeException if it is to be tried again later
     */
    void run(UUID id);

    /** Hears that the work has failed so often that it will not be tried again. */
    void gaveUp(UUID id, String reason);
}
