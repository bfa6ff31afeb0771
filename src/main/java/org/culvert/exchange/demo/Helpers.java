package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.culvert.care.placement.CarerSearch;
import org.culvert.platform.Role;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Finds clinics and carers for the demo's stories. */
@ApplicationScoped
class Helpers {
    private final RosterService roster;
    private final RosterLoader loader;
    private final CarerSearch carers;
    private final Clock clock;

    Helpers(RosterService roster, RosterLoader loader, CarerSearch carers, Clock clock) {
        this.roster = roster;
        this.loader = loader;
        this.carers = carers;
        this.clock = clock;
    }

    /** A clinic and its vet. */
    record Clinic(UUID id, String name, String vetName, String vetRegistration) {}

    Instant now() {
        return clock.instant();
    }

    Clinic nearestClinic(DemoRegion region, Spot spot) {
        People.Organisation nearest = region.people().organisations().stream()
                .filter(organisation -> organisation.kind().equals("clinic"))
                .min(Comparator.comparingDouble(
                        organisation -> region.settings().ground().distance(spot, clinicSpot(region, organisation))))
                .orElseThrow();
        return clinic(region, nearest.key());
    }

    Clinic clinic(DemoRegion region, String key) {
        String name = region.people().organisations().stream()
                .filter(organisation -> organisation.key().equals(key))
                .map(People.Organisation::name)
                .findFirst()
                .orElseThrow();
        People.Member vet = region.people().members().stream()
                .filter(member -> member.organisationKey().equals(key)
                        && !member.vetRegistration().isEmpty())
                .findFirst()
                .orElseThrow();
        UUID id = roster.listOrganisations("clinic").stream()
                .filter(organisation -> organisation.name().equals(name))
                .map(RosterService.OrganisationView::id)
                .findFirst()
                .orElseThrow();
        return new Clinic(id, name, vet.givenName() + ' ' + vet.familyName(), vet.vetRegistration());
    }

    private static Spot clinicSpot(DemoRegion region, People.Organisation organisation) {
        return region.people().premises().stream()
                .filter(premises -> premises.key().equals("P-" + organisation.key()))
                .map(People.Premises::spot)
                .findFirst()
                .orElseThrow();
    }

    /** One of the three carers who can best take an animal, or null. */
    @Nullable
    UUID findCarer(UUID caseId, Instant at, Dice dice) {
        List<UUID> best = carers.findCarers(caseId, at).stream()
                .filter(option -> option.answer().equals("canTake"))
                .limit(3)
                .map(CarerSearch.CarerOption::memberId)
                .toList();
        return best.isEmpty() ? null : dice.pick(best);
    }

    /** The member whom the account of a role belongs to, or null where none does. */
    @Nullable
    UUID memberWithAccount(DemoRegion region, String role) {
        return region.people().members().stream()
                .filter(member -> member.roles().contains(role))
                .findFirst()
                .map(member -> RosterLoader.required(loader.members(region), member.key()))
                .orElse(null);
    }

    /** Who takes an animal, and whether a rule of the network's own speaks against it. */
    record Taker(UUID memberId, boolean needsReason) {}

    /** The carer who has an account of the demo, where no law is against it; else who can best take an animal; or null. */
    @Nullable
    Taker carerToday(DemoRegion region, UUID caseId, Instant at) {
        UUID own = memberWithAccount(region, Role.CARER);
        List<CarerSearch.CarerOption> options = carers.findCarers(caseId, at);
        return options.stream()
                .filter(option ->
                        option.memberId().equals(own) && !option.answer().equals("canNotTake"))
                .findFirst()
                .or(() -> options.stream()
                        .filter(option -> option.answer().equals("canTake"))
                        .findFirst())
                .map(option -> new Taker(option.memberId(), option.answer().equals("needsReason")))
                .orElse(null);
    }

    /** The carer who has an account of the demo, where authorised for a group on the day; else any who is. */
    UUID carerWithAccount(DemoRegion region, String group, Instant at, Dice dice) {
        List<String> keys = authorised(region, group, at, false);
        return region.people().members().stream()
                .filter(member -> member.roles().contains(Role.CARER))
                .findFirst()
                .map(People.Member::key)
                .filter(keys::contains)
                .or(() -> keys.isEmpty() ? Optional.empty() : Optional.of(dice.pick(keys)))
                .map(key -> RosterLoader.required(loader.members(region), key))
                .orElseThrow(() -> new IllegalStateException("nobody of the region may hold " + group));
    }

    /** Whoever may incubate eggs of a group on the day, other than one member. */
    UUID incubator(DemoRegion region, String group, Instant at, @Nullable UUID other) {
        var members = loader.members(region);
        return authorised(region, group, at, true).stream()
                .map(key -> RosterLoader.required(members, key))
                .filter(id -> !id.equals(other))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("nobody of the region may incubate eggs of " + group));
    }

    private static List<String> authorised(DemoRegion region, String group, Instant at, boolean incubation) {
        LocalDate day = at.atZone(region.settings().zone()).toLocalDate();
        return region.people().authorisations().stream()
                .filter(authorisation -> authorisation.taxonGroups().contains(group)
                        && (!incubation || authorisation.incubation())
                        && !authorisation.validFrom().isAfter(day)
                        && !authorisation.validTo().isBefore(day.plusDays(1)))
                .map(People.Authorisation::memberKey)
                .distinct()
                .toList();
    }
}
