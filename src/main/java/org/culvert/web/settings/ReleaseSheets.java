package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.release.SiteService;
import org.culvert.release.facts.SpeciesFactService;
import org.culvert.release.land.LandService;
import org.culvert.web.settings.Sheet.Purpose;

/** What bears on where animals may go back. Release rules have a page of their own. */
@ApplicationScoped
class ReleaseSheets implements SheetSource {
    private final SpeciesFactService facts;
    private final LandService land;
    private final SiteService sites;

    ReleaseSheets(SpeciesFactService facts, LandService land, SiteService sites) {
        this.facts = facts;
        this.land = land;
        this.sites = sites;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("species-facts", Purpose.release, facts::listFacts)
                        .titled("scientificName", "kind")
                        .one(facts::getFact)
                        .entered(
                                SpeciesFactService.FactEntry.class,
                                entry -> facts.createFact(entry).id())
                        .changed("reviews", "species-fact", SpeciesFactService.FactReview.class, facts::review),
                Sheet.paged("land-areas", Purpose.release, most -> land.listAreas(null, null, null, most, null))
                        .titled("name", "kind")
                        .one(land::getArea)
                        .entered(
                                LandService.LandEntry.class,
                                entry -> land.enter(entry).id())
                        .changed("ending", "land-area", LandService.LandEnding.class, land::end),
                Sheet.paged("release-sites", Purpose.release, most -> sites.listSites(most, null))
                        .titled("name", "jurisdiction")
                        .one(sites::getSite)
                        .entered(
                                SiteService.SiteEntry.class,
                                entry -> sites.createSite(entry).id())
                        .corrected("release-site", SiteService.SiteCorrection.class, sites::correct));
    }
}
