package org.culvert.roster;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.jspecify.annotations.Nullable;

/** Corrects the roster; what it was before stays in the revisions. */
@ApplicationScoped
public class RosterCorrector {
    private final RosterService.Organisations organisations;
    private final RosterService.Members members;
    private final RosterService.MemberPersons persons;
    private final RosterService roster;

    RosterCorrector(
            RosterService.Organisations organisations,
            RosterService.Members members,
            RosterService.MemberPersons persons,
            RosterService roster) {
        this.organisations = organisations;
        this.members = members;
        this.persons = persons;
        this.roster = roster;
    }

    @Transactional
    public void correctOrganisation(UUID id, RosterCorrections.OrganisationCorrection correction) {
        requireDegrees("latitude", correction.latitude().value(), 90);
        requireDegrees("longitude", correction.longitude().value(), 180);
        organisations
                .findByIdOptional(id)
                .orElseThrow(() -> new NotFoundException("organisation", id))
                .correct(correction);
        organisations.flush();
    }

    @Transactional
    public void correctMember(UUID id, RosterCorrections.MemberCorrection correction) {
        requireDegrees("homeLatitude", correction.homeLatitude().value(), 90);
        requireDegrees("homeLongitude", correction.homeLongitude().value(), 180);
        UUID organisation = correction.organisationId().value();
        if (organisation != null) {
            roster.getOrganisation(organisation);
        }
        Member member = members.findByIdOptional(id).orElseThrow(() -> new NotFoundException("member", id));
        member.correct(correction);
        boolean personal = correction.name().isMade()
                || correction.phone().isMade()
                || correction.email().isMade()
                || correction.homeLatitude().isMade()
                || correction.homeLongitude().isMade();
        if (personal) {
            persons.findById(member.personId).correct(correction);
        }
        members.flush();
    }

    private static void requireDegrees(String field, @Nullable Double degrees, int most) {
        if (degrees != null && !(Math.abs(degrees) <= most)) {
            throw InvalidException.of(field, "There is no such place.", "degrees from -" + most + " to " + most);
        }
    }
}
