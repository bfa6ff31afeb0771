package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.animal.CaseCorrections;
import org.culvert.care.placement.CarerService;
import org.culvert.clinic.profile.ProfileService;
import org.culvert.platform.personal.PeopleResource;
import org.culvert.platform.personal.PeopleService;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.RosterCorrections;
import org.culvert.roster.RosterCorrector;
import org.culvert.roster.RosterService;
import org.culvert.roster.VaccinationService;
import org.culvert.web.acts.Act;
import org.culvert.web.settings.Sheet.Purpose;

/** Who belongs to the network, and what they hold: looked at on the roster, entered and corrected here. */
@ApplicationScoped
class PeopleSheets implements SheetSource {
    private static final String ROSTER = "/roster";

    private final RosterService roster;
    private final RosterCorrector corrector;
    private final AuthorisationService authorisations;
    private final VaccinationService vaccinations;
    private final CarerService carers;
    private final ProfileService clinics;
    private final PeopleService people;

    PeopleSheets(
            RosterService roster,
            RosterCorrector corrector,
            AuthorisationService authorisations,
            VaccinationService vaccinations,
            CarerService carers,
            ProfileService clinics,
            PeopleService people) {
        this.roster = roster;
        this.corrector = corrector;
        this.authorisations = authorisations;
        this.vaccinations = vaccinations;
        this.carers = carers;
        this.clinics = clinics;
        this.people = people;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                organisations(),
                members(),
                authorisations(),
                ordered(),
                vaccinations(),
                absences(),
                carers(),
                clinics(),
                people());
    }

    private Sheet organisations() {
        return Sheet.of("organisations", Purpose.people, () -> roster.listOrganisations(null))
                .titled("name", "kind")
                .home(ROSTER)
                .one(roster::getOrganisation)
                .entered(
                        RosterService.OrganisationEntry.class,
                        entry -> roster.createOrganisation(entry).id())
                .corrected("organisation", RosterCorrections.OrganisationCorrection.class, (id, correction) -> {
                    corrector.correctOrganisation(id, correction);
                    return id;
                });
    }

    private Sheet members() {
        return Sheet.of("members", Purpose.people, roster::listMembers)
                .titled("callSign")
                .home(ROSTER)
                .one(roster::getMember)
                .entered(
                        RosterService.MemberEntry.class,
                        entry -> roster.createMember(entry).id())
                .corrected("member", RosterCorrections.MemberCorrection.class, (id, correction) -> {
                    corrector.correctMember(id, correction);
                    return id;
                })
                .act(
                        new Act<>(
                                "absences",
                                "POST /api/members/{id}/absences",
                                null,
                                true,
                                CarerService.AbsenceEntry.class,
                                Set.of()),
                        (id, entry) -> {
                            carers.addAbsence(id, entry);
                            return id;
                        });
    }

    private Sheet authorisations() {
        return Sheet.of("authorisations", Purpose.people, () -> authorisations.list(null, null))
                .titled("number", "taxonGroup")
                .lastDay()
                .home(ROSTER)
                .one(authorisations::get)
                .entered(AuthorisationService.AuthorisationEntry.class, entry -> {
                    authorisations.create(entry);
                    return entry.memberId();
                })
                .corrected(
                        "authorisation",
                        RosterCorrections.AuthorisationCorrection.class,
                        (id, correction) ->
                                authorisations.correct(id, correction).memberId());
    }

    private Sheet ordered() {
        return Sheet.of(
                        "ordered-authorisations",
                        Purpose.people,
                        () -> authorisations.list(null, null).stream()
                                .filter(one -> one.byOrder() != null)
                                .toList())
                .readBy("GET /api/authorisations")
                .titled("number", "taxonGroup")
                .lastDay()
                .home(ROSTER)
                .entered(AuthorisationService.OrderedAuthorisations.class, entry -> {
                    authorisations.createByOrder(entry);
                    return null;
                });
    }

    private Sheet vaccinations() {
        return Sheet.of("vaccinations", Purpose.people, List::<UUID>of)
                .readBy("GET /api/members/{id}/vaccinations")
                .titled("against", "givenOn")
                .home(ROSTER)
                .one(vaccinations::get)
                .entered(VaccinationService.VaccinationEntry.class, entry -> {
                    vaccinations.create(entry);
                    return entry.memberId();
                })
                .corrected(
                        "vaccination",
                        RosterCorrections.VaccinationCorrection.class,
                        (id, correction) -> vaccinations.correct(id, correction).memberId());
    }

    private Sheet absences() {
        return Sheet.of("absences", Purpose.people, List::<UUID>of)
                .readBy("GET /api/absences/{id}")
                .titled("from", "until")
                .home(ROSTER)
                .one(carers::getAbsence)
                .changed(
                        "withdrawal",
                        "absence",
                        CaseCorrections.Withdrawal.class,
                        (id, why) -> carers.withdrawAbsence(id, why.reason()).memberId());
    }

    private Sheet carers() {
        return Sheet.of("carer-profiles", Purpose.people, () -> carers.listProfiles(null))
                .titled("memberId", "premises")
                .home(ROSTER)
                .one(carers::getProfile)
                .entered(CarerService.CarerProfileEntry.class, entry -> {
                    carers.enterProfile(entry);
                    return entry.memberId();
                })
                .corrected(
                        "carer-profile",
                        CarerService.CarerProfileCorrection.class,
                        (id, correction) ->
                                carers.correctProfile(id, correction).memberId());
    }

    private Sheet clinics() {
        return Sheet.of("clinic-profiles", Purpose.people, clinics::listProfiles)
                .readBy("GET /api/clinic-profiles/{id}")
                .titled("clinicId", "phone")
                .home(ROSTER)
                .one(clinics::getProfile)
                .entered(ProfileService.ProfileEntry.class, entry -> {
                    clinics.enter(entry);
                    return entry.clinicId();
                })
                .corrected(
                        "clinic-profile",
                        ProfileService.ProfileCorrection.class,
                        (id, correction) -> clinics.correct(id, correction).clinicId());
    }

    /** They are looked for on a page of their own: nobody is shown a list of callers. */
    private Sheet people() {
        return Sheet.of("people", Purpose.people, List::<UUID>of)
                .readBy("GET /api/people/{id}")
                .titled("name", "kind")
                .home("/roster/people")
                .one(people::getPerson)
                .changed(
                        "hiding",
                        "person",
                        PeopleResource.ReasonEntry.class,
                        (id, why) -> people.hide(id, why.reason()))
                .changed(
                        "showing",
                        "person",
                        PeopleResource.ReasonEntry.class,
                        (id, why) -> people.show(id, why.reason()))
                .changed(
                        "erasure-request",
                        "person",
                        PeopleResource.ErasureRequestEntry.class,
                        (id, asked) -> people.requestErasure(id, asked.askedAt(), asked.reason()));
    }
}
