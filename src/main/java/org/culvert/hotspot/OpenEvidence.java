package org.culvert.hotspot;

import io.quarkus.security.UnauthorizedException;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.SignInException;
import org.culvert.platform.sight.DisclosureService;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/**
 * Road evidence for whoever asks. Those whose work it is have all of it. Everybody else has, where the network opens it, the
 * runs of the latest annual run that ask about no group with a sensitive species, and of them no stretch with a small count,
 * no count by month and none of what stands beside the hotspots.
 */
@ApplicationScoped
public class OpenEvidence {
    private final AnnualRunService annualRuns;
    private final HotspotRunService runs;
    private final DisclosureService disclosure;
    private final TaxonService taxa;
    private final Sight sight;

    OpenEvidence(
            AnnualRunService annualRuns,
            HotspotRunService runs,
            DisclosureService disclosure,
            TaxonService taxa,
            Sight sight) {
        this.annualRuns = annualRuns;
        this.runs = runs;
        this.disclosure = disclosure;
        this.taxa = taxa;
        this.sight = sight;
    }

    /** Whether the asker has the network's road evidence, and not only what it opens to everybody. */
    public boolean isOwn() {
        return sight.sees("run", "result");
    }

    /** Whether there is anything for everybody. */
    public boolean isOpen() {
        return disclosure.settings().publicHotspots();
    }

    /**
     * The runs that everybody may read, in the order in which they were declared.
     *
     * @throws UnauthorizedException where nobody asks and the evidence is not open
     * @throws SignInException where the asker's role has none of it and it is not open
     */
    public List<RunView> listOpen() {
        requireOpen();
        return annualRuns.findLatestWhole().map(AnnualRunView::runs).orElse(List.of()).stream()
                .filter(run -> !isSensitive(run.settings().taxonGroup()))
                .toList();
    }

    private void requireOpen() {
        if (isOpen()) {
            return;
        }
        if (sight.viewer().equals(Viewer.NOBODY)) {
            throw new UnauthorizedException();
        }
        throw SignInException.notTheirs(
                "The network does not open its road evidence to everybody, and your role has no part" + " in it.");
    }

    private boolean isSensitive(@Nullable String taxonGroup) {
        return taxonGroup != null && taxa.findStrictestGrid(taxonGroup).isPresent();
    }

    /** @throws NotFoundException where there is no such run for the asker */
    public RunView getRun(UUID id) {
        if (isOwn()) {
            return runs.getRun(id);
        }
        return listOpen().stream()
                .filter(run -> run.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("hotspot run", id));
    }

    /** The report of a finished run as the asker sees it, or empty while there is none. */
    public Optional<HotspotReport> findReport(UUID id) {
        if (isOwn()) {
            return runs.findReport(id);
        }
        int smallest = disclosure.settings().smallestCount();
        return runs.findReport(getRun(id).id()).map(report -> report.toEverybody(smallest));
    }
}
