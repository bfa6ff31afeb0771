package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.culvert.clinic.profile.ProfileService;
import org.culvert.platform.Role;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.TokenService;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.RosterService;
import org.culvert.roster.VaccinationService;
import org.culvert.taxon.CautionService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Loads which animals there are and who belongs to the network. */
@ApplicationScoped
class RosterLoader {
    private final TaxonService taxa;
    private final CautionService cautions;
    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final VaccinationService vaccinations;
    private final ProfileService profiles;
    private final AccountService accounts;
    private final TokenService tokens;

    RosterLoader(
            TaxonService taxa,
            CautionService cautions,
            RosterService roster,
            AuthorisationService authorisations,
            VaccinationService vaccinations,
            ProfileService profiles,
            AccountService accounts,
            TokenService tokens) {
        this.taxa = taxa;
        this.cautions = cautions;
        this.roster = roster;
        this.authorisations = authorisations;
        this.vaccinations = vaccinations;
        this.profiles = profiles;
        this.accounts = accounts;
        this.tokens = tokens;
    }

    void loadAnimals(DemoRegion region) {
        taxa.enterGroups(region.settings().groups().stream()
                .map(group -> new TaxonService.GroupEntry(
                        group.name(),
                        group.label(),
                        group.vaccinationNeeded().isEmpty() ? null : group.vaccinationNeeded(),
                        group.pouch(),
                        group.clutches(),
                        group.introduced()))
                .toList());
        taxa.enterTaxa(
                region.settings().taxa().stream().map(RosterLoader::taxon).toList());
        LocalDate readOn = region.settings().lastDay();
        cautions.enterCautions(region.settings().cautions().stream()
                .map(caution -> new CautionService.CautionView(
                        caution.taxonGroup(), caution.audience(), caution.words(), caution.source(), readOn))
                .toList());
    }

    private static TaxonService.TaxonEntry taxon(Settings.Taxon taxon) {
        String grid = taxon.cell("sensitivityGridDegrees");
        return new TaxonService.TaxonEntry(
                taxon.scientificName(),
                taxon.vernacularName(),
                taxon.cell("taxonRank"),
                taxon.group(),
                grid.isEmpty() ? null : Double.valueOf(grid),
                grid.isEmpty() ? null : taxon.cell("sensitivityReason"),
                grid.isEmpty() ? null : LocalDate.parse(taxon.cell("sensitivityReviewBy")));
    }

    /** The first clinic never closes, the others on week-ends. */
    private void enterProfiles(DemoRegion region, Map<String, UUID> organisations) {
        List<String> groups = region.settings().groups().stream()
                .filter(group -> !group.introduced())
                .map(Settings.Group::name)
                .toList();
        for (People.Organisation organisation : region.people().organisations()) {
            if (organisation.kind().equals("clinic")) {
                boolean first = organisation.key().equals("clinic1");
                List<ProfileService.OpeningEntry> opening = Arrays.stream(DayOfWeek.values())
                        .filter(day -> first || day.compareTo(DayOfWeek.SATURDAY) < 0)
                        .map(day -> new ProfileService.OpeningEntry(
                                day,
                                first ? LocalTime.MIDNIGHT : LocalTime.of(8, 0),
                                first ? LocalTime.MIDNIGHT : LocalTime.of(18, 0)))
                        .toList();
                profiles.enter(new ProfileService.ProfileEntry(
                        required(organisations, organisation.key()),
                        "555 0170",
                        first ? null : "Ring the hospital that never closes.",
                        null,
                        groups,
                        opening));
            }
        }
    }

    void loadPeople(DemoRegion region) {
        Map<String, UUID> organisations = new LinkedHashMap<>();
        for (People.Organisation organisation : region.people().organisations()) {
            Spot spot = spotOf(region, "P-" + organisation.key());
            boolean first = organisation.key().equals("clinic1");
            organisations.put(
                    organisation.key(),
                    roster.createOrganisation(new RosterService.OrganisationEntry(
                                    organisation.kind(),
                                    organisation.name(),
                                    spot == null ? null : spot.latitude(),
                                    spot == null ? null : spot.longitude(),
                                    first || organisation.key().equals("clinic2"),
                                    first))
                            .id());
        }
        enterProfiles(region, organisations);
        Map<String, UUID> members = new LinkedHashMap<>();
        for (People.Member member : region.people().members()) {
            members.put(member.key(), member(region, member, required(organisations, member.organisationKey())));
        }
        for (People.Authorisation authorisation : region.people().authorisations()) {
            for (String group : authorisation.taxonGroups()) {
                authorisations.create(new AuthorisationService.AuthorisationEntry(
                        required(members, authorisation.memberKey()),
                        null,
                        region.settings().name(),
                        authorisation.authorisationClass(),
                        authorisation.number(),
                        group,
                        authorisation.validFrom(),
                        authorisation.validTo(),
                        null,
                        false));
            }
        }
        for (People.Vaccination vaccination : region.people().vaccinations()) {
            vaccinations.create(new VaccinationService.VaccinationEntry(
                    required(members, vaccination.memberKey()),
                    vaccination.against(),
                    vaccination.date(),
                    currentUntil(vaccination),
                    basis(vaccination),
                    null,
                    null));
        }
        accounts(region, members, organisations);
    }

    private static @Nullable Spot spotOf(DemoRegion region, String premisesKey) {
        return region.people().premises().stream()
                .filter(premises -> premises.key().equals(premisesKey))
                .map(People.Premises::spot)
                .findFirst()
                .orElse(null);
    }

    private UUID member(DemoRegion region, People.Member member, UUID organisation) {
        Spot home = spotOf(region, member.premisesKey());
        return roster.createMember(new RosterService.MemberEntry(
                        organisation,
                        member.callSign(),
                        member.givenName() + ' ' + member.familyName(),
                        member.phone(),
                        member.email(),
                        home == null ? null : home.latitude(),
                        home == null ? null : home.longitude(),
                        member.roles().contains("rescuer"),
                        member.roles().contains("carer"),
                        member.vetRegistration().isEmpty() ? null : member.vetRegistration()))
                .id();
    }

    /** One year after the first course, three after a booster or a test (Australian Immunisation Handbook, lyssavirus). */
    private static LocalDate currentUntil(People.Vaccination vaccination) {
        return vaccination.date().plusYears(vaccination.event().equals("first course") ? 1 : 3);
    }

    private static String basis(People.Vaccination vaccination) {
        return vaccination.antibodyIuPerMl() == null
                ? vaccination.event()
                : vaccination.event() + ": " + vaccination.antibodyIuPerMl() + " IU/mL";
    }

    /** One account a role, named like it; where a member or an organisation goes with it, the first of its kind. */
    private void accounts(DemoRegion region, Map<String, UUID> members, Map<String, UUID> organisations) {
        for (String role : Role.ALL) {
            String member = region.people().members().stream()
                    .filter(each -> each.roles().contains(role) && !role.equals(Role.CLINIC))
                    .map(People.Member::key)
                    .findFirst()
                    .orElse(null);
            UUID organisation = switch (role) {
                case Role.CLINIC -> required(organisations, "clinic1");
                case Role.ROADS_AUTHORITY -> required(organisations, "roads");
                case Role.OFFICER -> required(organisations, "wildlife");
                default -> null;
            };
            if (accounts.findId(role).isEmpty()) {
                UUID account = accounts.createAccount(
                        role,
                        DemoAccounts.PASSWORD,
                        Set.of(role),
                        member == null ? null : required(members, member),
                        organisation);
                tokens.keepKnown(account, "demo", DemoAccounts.token(role), List.of("*:read", "*:write"));
            }
        }
    }

    /** Members by their key in the generated files. */
    Map<String, UUID> members(DemoRegion region) {
        Map<String, UUID> byCallSign = new LinkedHashMap<>();
        roster.listMembers().forEach(member -> byCallSign.put(member.callSign(), member.id()));
        Map<String, UUID> byKey = new LinkedHashMap<>();
        for (People.Member member : region.people().members()) {
            byKey.put(member.key(), required(byCallSign, member.callSign()));
        }
        return byKey;
    }

    List<RosterService.OrganisationView> clinics() {
        return new ArrayList<>(roster.listOrganisations("clinic"));
    }

    static <T> T required(Map<String, T> map, String key) {
        T value = map.get(key);
        if (value == null) {
            throw new IllegalStateException("the region names " + key + ", which is not there");
        }
        return value;
    }
}
