package org.culvert.roster;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Where members keep animals and under whom they work, for the room that keeps it to tell those below. */
public interface HolderStandings {
    /**
     * @param premises as authorisations call them; null: not told
     * @param supervisorId under whom the member works; null: nobody
     */
    record Standing(@Nullable String premises, @Nullable UUID supervisorId) {}

    /** What is told of a member on a day; empty where nothing is. */
    Optional<Standing> standingOn(UUID memberId, LocalDate day);
}
