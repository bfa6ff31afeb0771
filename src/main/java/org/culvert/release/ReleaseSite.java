package org.culvert.release;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.culvert.release.rules.Site;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** A place where animals may be let go. */
@Entity
@Table(name = "release_sites")
class ReleaseSite extends Recorded {
    String name;
    String jurisdiction;
    double decimalLatitude;
    double decimalLongitude;

    @Column(name = "coordinate_uncertainty_in_meters")
    double coordinateUncertaintyInMeters;

    String habitat;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> taxonGroups;

    @Nullable
    String catchment;

    @Nullable
    String protectedArea;

    String landownerConsent;

    @Nullable
    LocalDate landownerConsentUntil;

    protected ReleaseSite() {}

    static ReleaseSite of(SiteService.SiteEntry entry) {
        var row = new ReleaseSite();
        row.name = entry.name();
        row.jurisdiction = entry.jurisdiction();
        row.decimalLatitude = entry.decimalLatitude();
        row.decimalLongitude = entry.decimalLongitude();
        row.coordinateUncertaintyInMeters = entry.coordinateUncertaintyInMeters();
        row.habitat = entry.habitat();
        row.taxonGroups = entry.taxonGroups();
        row.catchment = entry.catchment();
        row.protectedArea = entry.protectedArea();
        row.landownerConsent = entry.landownerConsent().name();
        row.landownerConsentUntil = entry.landownerConsentUntil();
        return row;
    }

    /** The consent on a day; one that has run out is not known to go on. */
    Site.Consent consentOn(LocalDate day) {
        Site.Consent recorded = Site.Consent.valueOf(landownerConsent);
        boolean ranOut = landownerConsentUntil != null && day.isAfter(landownerConsentUntil);
        return recorded == Site.Consent.yes && ranOut ? Site.Consent.unknown : recorded;
    }

    void correct(SiteService.SiteCorrection correction) {
        name = Corrections.words("name", correction.name(), name, 200);
        habitat = Corrections.words("habitat", correction.habitat(), habitat, 2000);
        decimalLatitude =
                within("decimalLatitude", correction.decimalLatitude().over("decimalLatitude", decimalLatitude), 90);
        decimalLongitude = within(
                "decimalLongitude", correction.decimalLongitude().over("decimalLongitude", decimalLongitude), 180);
        coordinateUncertaintyInMeters = correction
                .coordinateUncertaintyInMeters()
                .over("coordinateUncertaintyInMeters", coordinateUncertaintyInMeters);
        if (!(coordinateUncertaintyInMeters > 0) || Double.isInfinite(coordinateUncertaintyInMeters)) {
            throw InvalidException.of("coordinateUncertaintyInMeters", "That is no radius.", "metres, more than 0");
        }
        taxonGroups = List.copyOf(correction.taxonGroups().over("taxonGroups", taxonGroups));
        catchment = Corrections.text("catchment", correction.catchment(), catchment, 200);
        protectedArea = Corrections.text("protectedArea", correction.protectedArea(), protectedArea, 200);
        landownerConsent = Corrections.name("landownerConsent", correction.landownerConsent(), landownerConsent);
        landownerConsentUntil = correction.landownerConsentUntil().over(landownerConsentUntil);
        revisedBecause(correction.reason());
    }

    private static double within(String field, double degrees, double most) {
        if (!(Math.abs(degrees) <= most)) {
            throw InvalidException.of(field, "There is no such place.", "degrees from -" + most + " to " + most);
        }
        return degrees;
    }
}
