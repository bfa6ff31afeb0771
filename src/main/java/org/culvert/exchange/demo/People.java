package org.culvert.exchange.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Organisations, members and where they keep animals, what they may hold, what they are vaccinated against. */
record People(
        List<Organisation> organisations,
        List<Member> members,
        List<Premises> premises,
        List<Authorisation> authorisations,
        List<Vaccination> vaccinations,
        List<ReleaseSite> releaseSites) {

    /** The kind is one of network, clinic, council, roadsAuthority, wildlifeAuthority. */
    record Organisation(String key, String name, String kind, String email, String phone) {}

    record Member(
            String key,
            String callSign,
            String vetRegistration,
            String givenName,
            String familyName,
            String email,
            String phone,
            String organisationKey,
            List<String> roles,
            String premisesKey) {}

    record Premises(String key, String kind, String address, Spot spot, int capacity) {}

    record Authorisation(
            String number,
            String memberKey,
            String authorisationClass,
            List<String> taxonGroups,
            LocalDate validFrom,
            LocalDate validTo,
            boolean incubation) {}

    /** An event is a first course, a booster, or an antibody test with its result. */
    record Vaccination(
            String memberKey,
            String against,
            String event,
            LocalDate date,
            @Nullable Double antibodyIuPerMl) {}

    record ReleaseSite(
            String key,
            String name,
            Spot spot,
            String habitat,
            List<String> taxonGroups,
            String catchment,
            String council,
            String park,
            boolean ownerConsents) {}

    static People make(Settings settings, Terrain terrain, List<Road> roads) {
        return new PeopleMaker(settings, terrain, roads).make();
    }

    /** An address at a domain that can never exist (RFC 2606). */
    static String email(String local) {
        return local.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", ".") + "@ulverra.example";
    }
}
