package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.platform.Recorded;

/** How long a vaccination counts, from a day on, by whose word. */
@Entity
@Table(name = "vaccination_rules")
class VaccinationRule extends Recorded {
    String against;
    int firstBoosterMonths;
    int intervalMonths;
    double leastIuPerMl;
    String words;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    protected VaccinationRule() {}

    VaccinationRule(VaccinationService.VaccinationRuleEntry entry) {
        against = entry.against();
        firstBoosterMonths = entry.firstBoosterMonths();
        intervalMonths = entry.intervalMonths();
        leastIuPerMl = entry.leastIuPerMl();
        words = entry.words();
        source = entry.source();
        readOn = entry.readOn();
        reviewBy = entry.reviewBy();
        validFrom = entry.validFrom();
    }

    BoosterRule rule() {
        return new BoosterRule(firstBoosterMonths, intervalMonths, leastIuPerMl);
    }
}
