package org.culvert.web;

import jakarta.enterprise.context.RequestScoped;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.roster.RosterService.MemberView;
import org.culvert.roster.RosterService.OrganisationView;
import org.culvert.web.words.FormsWords;
import org.jspecify.annotations.Nullable;

/**
 * Holders by the names that whoever asks may hear, and by those that are typed; read once for a page. Call signs are for
 * those to whom the API tells them of the same members: of all, or of carers alone where somebody looks for one.
 */
@RequestScoped
public class HolderNames {
    private static final List<String> HOLDING_KINDS = List.of("network", "clinic", "shelter");

    private final RosterService roster;
    private final Languages languages;
    private final Sight sight;
    private @Nullable List<OrganisationView> organisations;
    private @Nullable Map<UUID, String> callSigns;

    HolderNames(RosterService roster, Languages languages, Sight sight) {
        this.roster = roster;
        this.languages = languages;
        this.sight = sight;
    }

    /** Reads them now, for templates, which are written when nothing is to be read any more. */
    public HolderNames loaded() {
        all();
        callSigns();
        return this;
    }

    private FormsWords words() {
        return languages.words(FormsWords.class);
    }

    public String of(@Nullable Holder holder) {
        if (holder == null) {
            return words().nobody();
        }
        UUID member = holder.memberId();
        return holder.personId() != null
                ? words().somebody()
                : member != null ? member(member) : organisation(holder.organisationId());
    }

    public String organisation(@Nullable UUID id) {
        return all().stream()
                .filter(one -> one.id().equals(id))
                .map(OrganisationView::name)
                .findFirst()
                .orElseGet(() -> words().nobody());
    }

    public String member(UUID id) {
        if (id.equals(sight.viewer().memberId())) {
            return words().you();
        }
        String callSign = callSigns().get(id);
        return callSign == null ? words().aMember() : words().member(callSign);
    }

    private Map<UUID, String> callSigns() {
        if (callSigns == null) {
            List<MemberView> told = sight.sees("member", "callSign")
                    ? roster.listMembers()
                    : sight.sees("carer-option", "callSign") ? roster.listCarers() : List.of();
            callSigns = told.stream().collect(Collectors.toMap(MemberView::id, MemberView::callSign));
        }
        return callSigns;
    }

    /** All organisations. */
    public List<OrganisationView> all() {
        if (organisations == null) {
            organisations = roster.listOrganisations(null);
        }
        return organisations;
    }

    /** Organisations that may hold animals. */
    public List<OrganisationView> organisations() {
        return all().stream().filter(one -> HOLDING_KINDS.contains(one.kind())).toList();
    }

    /** @throws InvalidException where nobody has that call sign */
    public UUID memberCalled(String field, String callSign) {
        return roster.listMembers().stream()
                .filter(one -> one.leftOn() == null && one.callSign().equalsIgnoreCase(callSign))
                .findFirst()
                .map(MemberView::id)
                .orElseThrow(() -> InvalidException.of(
                        field, "Nobody of the network has that call sign.", "a call sign, as it is written"));
    }

    /**
     * A member by call sign, or an organisation.
     *
     * @throws InvalidException unless exactly one is typed
     */
    public Holder read(@Nullable String callSign, @Nullable String organisationId) {
        if ((callSign == null) == (organisationId == null)) {
            throw InvalidException.of(
                    "callSign", "Exactly one holder answers for it.", "a call sign or an organisation, and not both");
        }
        return callSign != null
                ? Holder.member(memberCalled("callSign", callSign))
                : Holder.organisation(Paging.uuid("organisationId", Objects.requireNonNull(organisationId)));
    }
}
