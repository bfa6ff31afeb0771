package org.culvert.web.animal;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.animal.CaseLists;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.Page;
import org.culvert.taxon.TaxonService;
import org.culvert.web.HolderNames;
import org.jspecify.annotations.Nullable;

/** The cases that somebody may see: open ones by what is most pressing, or what was looked for. */
@ApplicationScoped
class CaseListPages {
    private static final int SHOWN = 100;

    /**
     * A case of the list.
     *
     * @param who answers for it; null where nobody does
     */
    public record Row(
            UUID id,
            String title,
            @Nullable String temporaryNumber,
            @Nullable String who,
            Instant since,
            String state) {}

    /** @param need what is most pressing of each of these */
    public record Group(String need, List<Row> rows) {}

    private final Template list;
    private final CaseLists lists;
    private final CaseService cases;
    private final CaseNeeds needs;
    private final CasePages pages;
    private final HolderNames names;
    private final TaxonService taxa;

    CaseListPages(
            @Location("cases.html") Template list,
            CaseLists lists,
            CaseService cases,
            CaseNeeds needs,
            CasePages pages,
            HolderNames names,
            TaxonService taxa) {
        this.list = list;
        this.lists = lists;
        this.cases = cases;
        this.needs = needs;
        this.pages = pages;
        this.names = names;
        this.taxa = taxa;
    }

    /** The case whose number somebody looks for. */
    @Transactional
    @Nullable
    UUID findByNumber(String looked) {
        return looked.matches("\\d{1,12}")
                ? cases.findByNumber(Long.parseLong(looked)).orElse(null)
                : null;
    }

    @Transactional
    TemplateInstance page(String looked, boolean ended, @Nullable UUID before) {
        CaseTongue tongue = pages.tongue();
        Page<CaseView> found = find(looked, ended, before);
        List<Group> groups = new ArrayList<>();
        if (ended || !looked.isEmpty()) {
            groups.add(new Group(
                    "",
                    found.items().stream().map(one -> row(one, names, tongue)).toList()));
        } else {
            Map<UUID, CaseNeeds.Need> pressing = needs.of(found.items());
            Map<CaseNeeds.Need, List<Row>> byNeed = new EnumMap<>(CaseNeeds.Need.class);
            for (CaseView one : found.items()) {
                byNeed.computeIfAbsent(
                                pressing.getOrDefault(one.id(), CaseNeeds.Need.inCare), need -> new ArrayList<>())
                        .add(row(one, names, tongue));
            }
            byNeed.forEach((need, rows) -> groups.add(new Group(need.name(), rows)));
        }
        return list.data("groups", groups)
                .data("nothing", found.items().isEmpty())
                .data("looked", looked)
                .data("ended", ended)
                .data("first", before == null)
                .data("older", found.next() == null ? null : older(found.next(), looked, ended));
    }

    private static String older(String cursor, String looked, boolean ended) {
        return "/cases?before=" + cursor
                + (looked.isEmpty() ? "" : "&q=" + URLEncoder.encode(looked, StandardCharsets.UTF_8))
                + (ended ? "&state=ended" : "");
    }

    private Page<CaseView> find(String looked, boolean ended, @Nullable UUID before) {
        if (looked.isEmpty()) {
            return lists.list(ended, null, SHOWN, before);
        }
        Page<CaseView> numbered = cases.listByTemporaryNumber(looked);
        if (!numbered.items().isEmpty()) {
            return numbered;
        }
        return lists.list(
                ended,
                taxa.findTaxa(looked).stream().map(TaxonService.TaxonView::id).toList(),
                SHOWN,
                before);
    }

    private static Row row(CaseView one, HolderNames names, CaseTongue tongue) {
        CaseView.CustodyView last =
                one.custody().isEmpty() ? null : one.custody().get(one.custody().size() - 1);
        CaseView.FateView fate = one.fate();
        boolean held = last != null && last.to() == null;
        return new Row(
                one.id(),
                tongue.words().caseOf(one.number(), one.animal().vernacularName()),
                one.temporaryNumber(),
                held && last != null ? names.of(last.holder()) : null,
                fate != null && fate.at() != null ? fate.at() : held && last != null ? last.from() : one.foundAt(),
                tongue.choice(fate == null ? one.state() : fate.fate()));
    }
}
