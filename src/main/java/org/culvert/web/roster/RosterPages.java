package org.culvert.web.roster;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.care.placement.CarerPlaces;
import org.culvert.care.placement.CarerPlaces.PlacesOfCarer;
import org.culvert.platform.RegionService;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.AuthorisationService.AuthorisationView;
import org.culvert.roster.RosterService;
import org.culvert.roster.RosterService.MemberView;
import org.culvert.roster.RosterService.OrganisationView;
import org.culvert.roster.VaccinationService;
import org.culvert.roster.VaccinationService.VaccinationView;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Puts together what the roster shows. */
@ApplicationScoped
class RosterPages {
    /** So many days ahead something counts as lapsing: time to renew a paper or to get a booster. */
    static final int LAPSE_DAYS = 56;

    /**
     * Something that somebody may or is protected against, and how long.
     *
     * @param what group of animals, or what a vaccination is against
     * @param until the last day; null where nobody knows, which counts as over
     * @param state {@code over}, {@code soon} or {@code well}
     */
    public record Span(String what, @Nullable LocalDate until, String state) {}

    /** A member, with what a coordinator looks for first. */
    public record Line(
            MemberView member,
            String organisation,
            List<Span> authorisations,
            List<Span> vaccinations,
            @Nullable PlacesOfCarer places) {}

    /**
     * Something that lapses.
     *
     * @param memberId null of an organisation
     * @param kind {@code authorisation} or {@code vaccination}
     */
    public record Lapse(String whose, @Nullable UUID memberId, String kind, Span span) {}

    /** An organisation and how many members it has. */
    public record Body(OrganisationView organisation, long members) {}

    /** All of it. */
    public record Roster(List<Lapse> lapses, List<Line> members, List<Line> gone, List<Body> organisations, int free) {}

    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final VaccinationService vaccinations;
    private final CarerPlaces places;
    private final TaxonService taxa;
    private final RegionService region;
    private final Clock clock;

    RosterPages(
            RosterService roster,
            AuthorisationService authorisations,
            VaccinationService vaccinations,
            CarerPlaces places,
            TaxonService taxa,
            RegionService region,
            Clock clock) {
        this.roster = roster;
        this.authorisations = authorisations;
        this.vaccinations = vaccinations;
        this.places = places;
        this.taxa = taxa;
        this.region = region;
        this.clock = clock;
    }

    Roster all() {
        LocalDate today = clock.instant().atZone(region.zone()).toLocalDate();
        Map<String, String> groups = taxa.listGroups().stream()
                .collect(Collectors.toMap(TaxonService.GroupView::key, TaxonService.GroupView::name));
        List<OrganisationView> organisations = roster.listOrganisations(null);
        Map<UUID, String> names =
                organisations.stream().collect(Collectors.toMap(OrganisationView::id, OrganisationView::name));
        Map<UUID, Map<String, LocalDate>> papers = new HashMap<>();
        for (AuthorisationView paper : authorisations.list(null, null)) {
            UUID whose = paper.memberId() == null ? paper.organisationId() : paper.memberId();
            if (whose != null && !paper.validFrom().isAfter(today)) {
                papers.computeIfAbsent(whose, id -> new TreeMap<>())
                        .merge(
                                groups.getOrDefault(paper.taxonGroup(), paper.taxonGroup()),
                                paper.validTo(),
                                RosterPages::later);
            }
        }
        Map<UUID, Map<String, LocalDate>> shots = new HashMap<>();
        for (VaccinationView shot : vaccinations.listAll()) {
            LocalDate until = shot.currentUntil() == null ? shot.givenOn() : shot.currentUntil();
            shots.computeIfAbsent(shot.memberId(), id -> new TreeMap<>())
                    .merge(shot.against(), until, RosterPages::later);
        }
        Map<UUID, PlacesOfCarer> free =
                places.listPlaces().stream().collect(Collectors.toMap(PlacesOfCarer::memberId, one -> one));
        List<Line> lines = roster.listMembers().stream()
                .map(member -> new Line(
                        member,
                        names.getOrDefault(member.organisationId(), ""),
                        spans(papers.get(member.id()), today),
                        spans(shots.get(member.id()), today),
                        free.get(member.id())))
                .toList();
        List<Line> here =
                lines.stream().filter(line -> isHere(line.member(), today)).toList();
        List<Lapse> lapses = new ArrayList<>();
        for (Line line : here) {
            lapses.addAll(lapses(line.member().callSign(), line.member().id(), "authorisation", line.authorisations()));
            lapses.addAll(lapses(line.member().callSign(), line.member().id(), "vaccination", line.vaccinations()));
        }
        for (OrganisationView one : organisations) {
            lapses.addAll(lapses(one.name(), null, "authorisation", spans(papers.get(one.id()), today)));
        }
        lapses.sort(Comparator.comparing(
                (Lapse lapse) -> lapse.span().until(), Comparator.nullsFirst(Comparator.naturalOrder())));
        Map<UUID, Long> members = here.stream()
                .collect(Collectors.groupingBy(line -> line.member().organisationId(), Collectors.counting()));
        return new Roster(
                lapses,
                here,
                lines.stream().filter(line -> !isHere(line.member(), today)).toList(),
                organisations.stream()
                        .map(one -> new Body(one, members.getOrDefault(one.id(), 0L)))
                        .toList(),
                free.values().stream().mapToInt(PlacesOfCarer::free).sum());
    }

    private static boolean isHere(MemberView member, LocalDate today) {
        return member.leftOn() == null || member.leftOn().isAfter(today);
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    private static List<Span> spans(@Nullable Map<String, LocalDate> untils, LocalDate today) {
        return untils == null
                ? List.of()
                : untils.entrySet().stream()
                        .map(entry -> new Span(entry.getKey(), entry.getValue(), state(entry.getValue(), today)))
                        .toList();
    }

    private static String state(LocalDate until, LocalDate today) {
        return until.isBefore(today) ? "over" : until.isBefore(today.plusDays(LAPSE_DAYS)) ? "soon" : "well";
    }

    private static List<Lapse> lapses(String whose, @Nullable UUID memberId, String kind, List<Span> spans) {
        return spans.stream()
                .filter(span -> !span.state().equals("well"))
                .map(span -> new Lapse(whose, memberId, kind, span))
                .toList();
    }
}
