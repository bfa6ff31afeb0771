package org.culvert.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.roster.RosterService.MemberView;
import org.culvert.web.words.FormsWords;
import org.jspecify.annotations.Nullable;

/** Holders by the names that whoever asks may see, and by those that are typed. */
@ApplicationScoped
public class HolderNames {
    private final RosterService roster;
    private final Languages languages;
    private final Sight sight;

    HolderNames(RosterService roster, Languages languages, Sight sight) {
        this.roster = roster;
        this.languages = languages;
        this.sight = sight;
    }

    public String name(Holder holder) {
        FormsWords words = languages.words(FormsWords.class);
        UUID organisation = holder.organisationId();
        return holder.memberId() != null
                ? member(holder.memberId())
                : organisation != null ? roster.getOrganisation(organisation).name() : words.somebody();
    }

    public String member(UUID id) {
        FormsWords words = languages.words(FormsWords.class);
        return sight.sees("member", "callSign") || id.equals(sight.viewer().memberId())
                ? words.member(roster.getMember(id).callSign())
                : words.aMember();
    }

    /** Organisations that may hold animals. */
    public List<RosterService.OrganisationView> organisations() {
        return roster.listOrganisations(null).stream()
                .filter(one -> List.of("network", "clinic", "shelter").contains(one.kind()))
                .toList();
    }

    /** @throws InvalidException where nobody has that call sign */
    public UUID memberCalled(String field, String callSign) {
        return roster.listMembers().stream()
                .filter(one -> one.leftOn() == null && one.callSign().equals(callSign))
                .findFirst()
                .map(MemberView::id)
                .orElseThrow(() -> InvalidException.of(
                        field, "Nobody of the network has that call sign.", "a call sign, exactly as it is written"));
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
