package org.culvert.web;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import org.culvert.hotspot.OpenEvidence;
import org.culvert.platform.Role;
import org.culvert.platform.sight.SightTable;
import org.jspecify.annotations.Nullable;

/** Where people go: every page that is asked for without an identifier, for whom it is the first, and who may see it. */
@ApplicationScoped
public class Places {
    /**
     * A place.
     *
     * @param key name of its words
     * @param group what it belongs to on the start page
     */
    public record Place(String key, String path, String group) {}

    /** @param mainly roles whose bar it stands in, in the order of the bar */
    private record Known(Place place, Set<String> mainly) {}

    /** More than these would not be found at a glance, and stand on the start page alone. */
    static final int MOST_IN_BAR = 4;

    /** Programs are told of it by the server itself, and the table does not know it. */
    private static final String CONTRACT = "/q/openapi";

    /** Everybody's where the network opens it, which the table cannot say. */
    private static final String EVIDENCE = "/hotspots";

    private static final List<Known> ALL = List.of(
            known("overview", "/overview", "now", Role.COORDINATOR),
            known("desk", "/desk", "now", Role.DISPATCHER, Role.COORDINATOR),
            known("hand", "/hand", "now", Role.RESCUER, Role.CARER),
            known("clinic", "/clinic", "now", Role.CLINIC),
            known("returns", "/returns", "papers", Role.OFFICER),
            known("settings", "/settings", "network", Role.ADMIN),
            known(
                    "cases",
                    "/cases",
                    "animals",
                    Role.DISPATCHER,
                    Role.RESCUER,
                    Role.CLINIC,
                    Role.CARER,
                    Role.COORDINATOR,
                    Role.OFFICER),
            known("releases", "/releases", "animals", Role.COORDINATOR, Role.CLINIC, Role.OFFICER),
            known("clutches", "/clutches", "animals", Role.CARER, Role.CLINIC),
            known("careDay", "/care-day", "animals"),
            known("releaseArea", "/release-area", "animals"),
            known("releaseRules", "/release-rules", "animals"),
            known("hotspots", EVIDENCE, "roads", Role.ROADS_AUTHORITY),
            known("works", "/works", "roads", Role.ROADS_AUTHORITY),
            known("seasons", "/seasons", "roads", Role.ROADS_AUTHORITY, Role.OFFICER),
            known("burden", "/burden", "roads", Role.ROADS_AUTHORITY),
            known("stretch", "/stretch", "roads"),
            known("traffic", "/traffic", "roads"),
            known("roster", "/roster", "network", Role.ADMIN),
            known("people", "/roster/people", "network"),
            known("accounts", "/accounts", "network", Role.ADMIN),
            known("records", "/records", "network", Role.ADMIN),
            known("account", "/account", "network"),
            known("layers", "/ogc", "programs", Role.RECIPIENT),
            known("contract", CONTRACT, "programs"),
            known("problems", "/problems", "programs"));

    private final SecurityIdentity identity;
    private final OpenEvidence evidence;
    private final SightTable table = SightTable.load();

    Places(SecurityIdentity identity, OpenEvidence evidence) {
        this.identity = identity;
        this.evidence = evidence;
    }

    /** Those that whoever asks may go to. */
    public List<Place> open() {
        return ALL.stream().filter(this::isOpen).map(Known::place).toList();
    }

    /** Those that stand in the bar of whoever asks, the one where their work waits first. */
    public List<Place> bar() {
        Set<String> roles = identity.getRoles();
        return ALL.stream()
                .filter(known -> known.mainly().stream().anyMatch(roles::contains))
                .filter(this::isOpen)
                .map(Known::place)
                .limit(MOST_IN_BAR)
                .toList();
    }

    /** Where the work of whoever asks waits; null where they have no such place. */
    public @Nullable Place first() {
        List<Place> bar = bar();
        return bar.isEmpty() ? null : bar.get(0);
    }

    private boolean isOpen(Known known) {
        String path = known.place().path();
        if (path.equals(EVIDENCE)) {
            return evidence.isOwn() || evidence.isOpen();
        }
        Set<String> allowed = table.rolesOf("GET " + path);
        return path.equals(CONTRACT)
                || allowed.contains(SightTable.PUBLIC)
                || identity.getRoles().stream().anyMatch(allowed::contains);
    }

    private static Known known(String key, String path, String group, String... mainly) {
        return new Known(new Place(key, path, group), Set.of(mainly));
    }
}
