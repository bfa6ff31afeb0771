package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.geo.Generalisation;
import org.culvert.geo.Position;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Generalised;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.Site;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps release sites. */
@ApplicationScoped
public class SiteService {
    /**
     * A site as entered.
     *
     * @param jurisdiction ISO 3166 code of the law that holds there, such as {@code AU-QLD}
     * @param coordinateUncertaintyInMeters radius that holds every place on it where an animal would be let go
     * @param taxonGroups keys of the groups it is fit for
     * @param protectedArea name of the national park or reserve it lies in
     * @param landownerConsentUntil last day of the consent, where it has one
     */
    public record SiteEntry(
            @NotBlank @Size(max = 200) String name,

            @NotNull @Pattern(regexp = Rule.ISO_3166, message = "must be an ISO 3166 code")
            String jurisdiction,

            @NotNull @DecimalMin("-90") @DecimalMax("90") Double decimalLatitude,
            @NotNull @DecimalMin("-180") @DecimalMax("180") Double decimalLongitude,
            @NotNull @Positive Double coordinateUncertaintyInMeters,
            @NotBlank String habitat,
            List<String> taxonGroups,
            @Nullable @Size(max = 200) String catchment,
            @Nullable @Size(max = 200) String protectedArea,
            Site.Consent landownerConsent,
            @Nullable LocalDate landownerConsentUntil) {
        public SiteEntry {
            taxonGroups = taxonGroups == null ? List.of() : List.copyOf(taxonGroups);
            landownerConsent = landownerConsent == null ? Site.Consent.unknown : landownerConsent;
        }
    }

    /** What can be corrected of a site; a field that is left out stays as it is. */
    public record SiteCorrection(
            Change<String> name,
            Change<String> habitat,
            Change<Double> decimalLatitude,
            Change<Double> decimalLongitude,
            Change<Double> coordinateUncertaintyInMeters,
            Change<List<String>> taxonGroups,
            Change<String> catchment,
            Change<String> protectedArea,
            Change<Site.Consent> landownerConsent,
            Change<LocalDate> landownerConsentUntil,
            @NotBlank @Size(max = 2000) String reason) {}

    /** A site as shown. */
    public record SiteView(
            UUID id,
            String name,
            String jurisdiction,
            double decimalLatitude,
            double decimalLongitude,
            double coordinateUncertaintyInMeters,
            String habitat,
            List<String> taxonGroups,
            @Nullable String catchment,
            @Nullable String protectedArea,
            String landownerConsent,
            @Nullable LocalDate landownerConsentUntil,
            RecordView record)
            implements Generalised {

        /** The cell alone: name, catchment and reserve would lead to the place. */
        @Override
        public Map<String, Object> generalised(double gridDegrees) {
            if (gridDegrees == 0) {
                return Map.of();
            }
            Generalisation cell = Generalisation.of(
                    new Position(decimalLatitude, decimalLongitude), coordinateUncertaintyInMeters, gridDegrees);
            return Map.of(
                    "decimalLatitude",
                    cell.centre().latitude(),
                    "decimalLongitude",
                    cell.centre().longitude(),
                    "coordinateUncertaintyInMeters",
                    cell.uncertaintyMetres());
        }
    }

    private final ReleaseRepositories.Sites sites;
    private final TaxonService taxa;
    private final RecordViews records;

    SiteService(ReleaseRepositories.Sites sites, TaxonService taxa, RecordViews records) {
        this.sites = sites;
        this.taxa = taxa;
        this.records = records;
    }

    @Transactional
    public SiteView createSite(SiteEntry entry) {
        return createSite(entry, null);
    }

    /** @param importId of the file that it came in, or null */
    @Transactional
    public SiteView createSite(SiteEntry entry, @Nullable UUID importId) {
        entry.taxonGroups().forEach(key -> taxa.requireGroup("taxonGroups", key));
        ReleaseSite row = ReleaseSite.of(entry);
        row.importedBy(importId);
        sites.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public SiteView getSite(UUID id) {
        return view(require(id));
    }

    /** What some sites are called. */
    @Transactional
    public Map<UUID, String> namesById(Collection<UUID> ids) {
        return ids.isEmpty()
                ? Map.of()
                : sites.list("id in ?1", ids).stream().collect(Collectors.toMap(ReleaseSite::id, site -> site.name));
    }

    @Transactional
    public Page<SiteView> listSites(int limit, @Nullable UUID before) {
        List<ReleaseSite> rows = sites.find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        return Page.of(rows, limit, this::view, row -> row.id().toString());
    }

    /** Corrects a site. What was assessed on it before keeps the figures that it was assessed with. */
    @Transactional
    public SiteView correct(UUID id, SiteCorrection correction) {
        List<String> groups = correction.taxonGroups().value();
        if (groups != null) {
            groups.forEach(key -> taxa.requireGroup("taxonGroups", key));
        }
        ReleaseSite row = require(id);
        row.correct(correction);
        sites.flush();
        return view(row);
    }

    /** A site as it is ranked. */
    record KnownSite(UUID id, String name, Target target, List<String> taxonGroups, ReleaseSite row) {
        /** A site that names no group is entered as fit for none. */
        boolean isFitFor(String taxonGroup) {
            return taxonGroups.contains(taxonGroup);
        }

        Site.Consent consentOn(LocalDate day) {
            return row.consentOn(day);
        }
    }

    /** The sites, newest first. */
    @Transactional
    List<KnownSite> listKnown(int most) {
        return sites.find("order by id desc").page(0, most).list().stream()
                .map(row -> new KnownSite(row.id(), row.name, target(row), row.taxonGroups, row))
                .toList();
    }

    /** The site as a place to assess. */
    Target target(UUID id) {
        return target(require(id));
    }

    private static Target target(ReleaseSite row) {
        return new Target(
                row.id(),
                row.jurisdiction,
                row.decimalLatitude,
                row.decimalLongitude,
                row.coordinateUncertaintyInMeters);
    }

    /** Whether who owns the land has consented; of a place that is no known site nobody knows. */
    Site.Consent consentOn(@Nullable UUID siteId, LocalDate day) {
        return siteId == null ? Site.Consent.unknown : require(siteId).consentOn(day);
    }

    private ReleaseSite require(UUID id) {
        return sites.findByIdOptional(id).orElseThrow(() -> new NotFoundException("release site", id));
    }

    private SiteView view(ReleaseSite row) {
        return new SiteView(
                row.id(),
                row.name,
                row.jurisdiction,
                row.decimalLatitude,
                row.decimalLongitude,
                row.coordinateUncertaintyInMeters,
                row.habitat,
                row.taxonGroups,
                row.catchment,
                row.protectedArea,
                row.landownerConsent,
                row.landownerConsentUntil,
                records.of(row));
    }
}
