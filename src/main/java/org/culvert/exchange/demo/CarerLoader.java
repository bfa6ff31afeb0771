package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.care.placement.CarerService;
import org.culvert.platform.Role;
import org.jspecify.annotations.Nullable;

/** Loads what carers can take, who is away, and which animals are kept apart or in company. */
@ApplicationScoped
class CarerLoader {
    private static final String PRACTICE = "common practice, no source";

    private final RosterLoader roster;
    private final CarerService carers;

    CarerLoader(RosterLoader roster, CarerService carers) {
        this.roster = roster;
        this.carers = carers;
    }

    void load(DemoRegion region) {
        Map<String, UUID> members = roster.members(region);
        LocalDate lastDay = region.settings().lastDay();
        List<People.Member> holders = region.people().members().stream()
                .filter(member -> member.roles().contains(Role.CARER))
                .toList();
        for (People.Member holder : holders) {
            int places = region.people().premises().stream()
                    .filter(premises -> premises.key().equals(holder.premisesKey()))
                    .mapToInt(People.Premises::capacity)
                    .findFirst()
                    .orElseThrow();
            carers.enterProfile(new CarerService.CarerProfileEntry(
                    RosterLoader.required(members, holder.key()), null, null, null, null, places, Map.of()));
        }
        carers.addAbsence(
                RosterLoader.required(members, holders.get(holders.size() - 1).key()),
                new CarerService.AbsenceEntry(lastDay.minusDays(3), lastDay.plusDays(10)));
        keep(
                CarerService.Keep.apart,
                "possums-and-gliders",
                "owls-and-frogmouths",
                "A possum that hears and smells an owl does not settle: not in one room.",
                lastDay);
        keep(
                CarerService.Keep.apart,
                "other-birds",
                "raptors",
                "Small birds that see a raptor do not settle: not within sight or hearing.",
                lastDay);
        keep(
                CarerService.Keep.inCompany,
                "flying-foxes",
                null,
                "Young flying-foxes are raised with others of their kind.",
                lastDay);
        keep(
                CarerService.Keep.inCompany,
                "macropods",
                null,
                "A joey is raised with another of its kind where one is to be had.",
                lastDay);
    }

    private void keep(CarerService.Keep how, String group, @Nullable String other, String words, LocalDate readOn) {
        carers.enterRule(new CarerService.KeepingRuleEntry(
                how, group, other, CarerService.KeepingStrength.advice, words, PRACTICE, readOn));
    }
}
