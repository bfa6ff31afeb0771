package org.culvert.platform;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class AccountConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("accounts_username_is_taken", "Another account has this name already."),
                Map.entry("accounts_member_exists", "The roster has no member by this identifier."),
                Map.entry("accounts_organisation_exists", "The roster has no organisation by this identifier."),
                Map.entry("regions_only_one", "A server serves one region; this one has its own already."),
                Map.entry(
                        "a_region_lies_in_its_country",
                        "The law of a region is that of its country or of a part of it."),
                Map.entry(
                        "regions_box_is_sane",
                        "The edges of the region are no edges: south below north, degrees within the world."));
    }
}
