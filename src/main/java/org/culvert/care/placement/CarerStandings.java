package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.culvert.roster.HolderStandings;

/** Tells the rooms below what carers told of their premises and their supervision. */
@ApplicationScoped
class CarerStandings implements HolderStandings {
    private final CarerService.Profiles profiles;

    CarerStandings(CarerService.Profiles profiles) {
        this.profiles = profiles;
    }

    @Override
    public Optional<Standing> standingOn(UUID memberId, LocalDate day) {
        return profiles.find("memberId", memberId).firstResultOptional().map(profile -> profile.standingOn(day));
    }
}
