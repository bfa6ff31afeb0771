package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.referral.ReferralService;
import org.culvert.care.clock.ClockEntries;
import org.culvert.care.clock.ExtensionService;
import org.culvert.care.clock.LimitService;
import org.culvert.care.day.MissedTaskService;
import org.culvert.exchange.annualreturn.ReturnForms;
import org.culvert.platform.personal.RetentionResource.EndOfRule;
import org.culvert.platform.personal.RetentionService;
import org.culvert.taxon.ListingService;
import org.culvert.web.settings.Sheet.Purpose;

/** What laws and the network itself ask. */
@ApplicationScoped
class LawSheets implements SheetSource {
    private final LimitService limits;
    private final ExtensionService extensions;
    private final MissedTaskService missed;
    private final ReferralService referrals;
    private final ListingService listings;
    private final ReturnForms returns;
    private final RetentionService retention;

    LawSheets(
            LimitService limits,
            ExtensionService extensions,
            MissedTaskService missed,
            ReferralService referrals,
            ListingService listings,
            ReturnForms returns,
            RetentionService retention) {
        this.limits = limits;
        this.extensions = extensions;
        this.missed = missed;
        this.referrals = referrals;
        this.listings = listings;
        this.returns = returns;
        this.retention = retention;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("time-limits", Purpose.time, limits::listLimits)
                        .titled("jurisdiction", "kind", "words")
                        .one(limits::getLimit)
                        .entered(
                                LimitService.LimitEntry.class,
                                entry -> limits.createLimit(entry).id())
                        .changed("reviews", "time-limit", LimitService.LimitReview.class, limits::review),
                Sheet.of("clock-extensions", Purpose.time, List::<UUID>of)
                        .readBy("POST /api/clock-extensions")
                        .entered(
                                ClockEntries.OrderForManyEntry.class,
                                entry -> {
                                    extensions.extendMany(entry);
                                    return null;
                                },
                                "caseIds"),
                Sheet.of("missed-task-rules", Purpose.time, missed::listRules)
                        .titled("taxonGroup", "words")
                        .one(missed::getRule)
                        .entered(
                                MissedTaskService.MissedTaskRuleEntry.class,
                                entry -> missed.enter(entry).id())
                        .changed(
                                "ending",
                                "missed-task-rule",
                                MissedTaskService.MissedTaskRuleEnding.class,
                                missed::end),
                Sheet.of("referrals", Purpose.law, referrals::listReferrals)
                        .titled("taxonGroup", "scientificName", "referTo")
                        .one(referrals::getReferral)
                        .entered(
                                ReferralService.ReferralEntry.class,
                                entry -> referrals.createReferral(entry).id())
                        .changed("reviews", "referral", ReferralService.ReferralReview.class, referrals::review),
                Sheet.of("species-listings", Purpose.law, listings::listListings)
                        .titled("scientificName", "listedAs", "jurisdiction")
                        .one(listings::getListing)
                        .entered(
                                ListingService.ListingEntry.class,
                                entry -> listings.createListing(entry).id())
                        .changed("reviews", "species-listing", ListingService.ListingReview.class, listings::review),
                Sheet.of("return-forms", Purpose.law, returns::listForms)
                        .titled("title", "jurisdiction")
                        .one(returns::getForm)
                        .entered(
                                ReturnForms.ReturnFormEntry.class,
                                entry -> returns.createForm(entry).id())
                        .changed("reviews", "return-form", ReturnForms.ReturnFormReview.class, returns::review),
                Sheet.of("retention-rules", Purpose.law, retention::listRules)
                        .titled("jurisdiction", "kind")
                        .one(retention::getRule)
                        .lastDay()
                        .entered(
                                RetentionService.RetentionRuleEntry.class,
                                entry -> retention.make(entry).id())
                        .changed(
                                "ending",
                                "retention-rule",
                                EndOfRule.class,
                                (id, end) -> retention.end(id, end.validTo(), end.reason())));
    }
}
