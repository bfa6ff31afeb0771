package org.culvert.web.animal;

import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.web.words.CaseWords;
import org.jspecify.annotations.Nullable;

/** Who holds, as far as the asker may hear it: call signs are for those who send and place. */
public final class HolderNames {
    private final Map<UUID, String> organisations;
    private final Map<UUID, String> callSigns;
    private final @Nullable UUID self;
    private final CaseWords words;

    private HolderNames(
            Map<UUID, String> organisations, Map<UUID, String> callSigns, @Nullable UUID self, CaseWords words) {
        this.organisations = organisations;
        this.callSigns = callSigns;
        this.self = self;
        this.words = words;
    }

    static HolderNames of(RosterService roster, Sight sight, CaseWords words) {
        boolean told = sight.sees("member", "callSign") || sight.sees("carer-option", "callSign");
        return new HolderNames(
                roster.listOrganisations(null).stream()
                        .collect(Collectors.toMap(
                                RosterService.OrganisationView::id, RosterService.OrganisationView::name)),
                told
                        ? roster.listMembers().stream()
                                .collect(Collectors.toMap(
                                        RosterService.MemberView::id, RosterService.MemberView::callSign))
                        : Map.of(),
                sight.viewer().memberId(),
                words);
    }

    public String of(@Nullable Holder holder) {
        if (holder == null) {
            return words.nobody();
        }
        return holder.personId() != null
                ? words.outsider()
                : holder.memberId() != null ? member(holder.memberId()) : organisation(holder.organisationId());
    }

    public String organisation(@Nullable UUID id) {
        return id == null ? words.nobody() : organisations.getOrDefault(id, words.nobody());
    }

    public String member(UUID id) {
        return id.equals(self) ? words.you() : callSigns.getOrDefault(id, words.someMember());
    }

    /** All organisations to choose from. */
    Map<UUID, String> organisations() {
        return organisations;
    }
}
