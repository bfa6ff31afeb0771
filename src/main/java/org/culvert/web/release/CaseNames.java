package org.culvert.web.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.platform.sight.Sight;
import org.culvert.web.Languages;
import org.culvert.web.words.ReleaseWords;

/** Cases by number and kind, as far as whoever asks may see them. */
@ApplicationScoped
class CaseNames {
    private final CaseService cases;
    private final Sight sight;
    private final Languages languages;

    CaseNames(CaseService cases, Sight sight, Languages languages) {
        this.cases = cases;
        this.sight = sight;
        this.languages = languages;
    }

    /** Those of them that whoever asks may see. */
    Set<UUID> seen(Collection<UUID> ids) {
        return new HashSet<>(sight.onlySeen("case", List.copyOf(ids)));
    }

    Map<UUID, String> of(Collection<UUID> ids) {
        ReleaseWords words = languages.words(ReleaseWords.class);
        Map<UUID, String> names = new HashMap<>();
        ids.forEach(id -> names.put(id, words.someOther()));
        cases.casesById(sight.onlySeen("case", List.copyOf(ids)))
                .forEach((id, told) -> names.put(
                        id, words.caseNamed(told.number(), told.animal().vernacularName())));
        return names;
    }
}
