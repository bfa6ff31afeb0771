package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.culvert.exchange.event.SubscriptionResource.SubscriptionEnding;
import org.culvert.exchange.event.SubscriptionService;
import org.culvert.exchange.occurrence.AgreementService;
import org.culvert.exchange.occurrence.OccurrenceResource.EndingEntry;
import org.culvert.platform.DemoMark;
import org.culvert.platform.RegionService;
import org.culvert.platform.personal.ErasureService;
import org.culvert.platform.sight.DisclosureService;
import org.culvert.web.acts.Act;
import org.culvert.web.settings.Sheet.Purpose;

/** The region, and what leaves the network. */
@ApplicationScoped
class NetworkSheets implements SheetSource {
    private final RegionService region;
    private final DemoMark demoMark;
    private final DisclosureService disclosure;
    private final AgreementService agreements;
    private final SubscriptionService subscriptions;
    private final ErasureService erasures;

    NetworkSheets(
            RegionService region,
            DemoMark demoMark,
            DisclosureService disclosure,
            AgreementService agreements,
            SubscriptionService subscriptions,
            ErasureService erasures) {
        this.region = region;
        this.demoMark = demoMark;
        this.disclosure = disclosure;
        this.agreements = agreements;
        this.subscriptions = subscriptions;
        this.erasures = erasures;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.alone("region", Purpose.network, region::findDescription)
                        .titled("name")
                        .act(
                                new Act<>(
                                        "settling",
                                        "PUT /api/region",
                                        "region",
                                        false,
                                        RegionService.RegionDescription.class,
                                        Set.of()),
                                (id, entry) -> {
                                    region.settle(entry);
                                    demoMark.read();
                                    return null;
                                }),
                Sheet.alone("disclosure-settings", Purpose.network, () -> Optional.of(disclosure.settings()))
                        .titled()
                        .act(
                                new Act<>(
                                        "settling",
                                        "PUT /api/disclosure-settings",
                                        "disclosure-settings",
                                        false,
                                        DisclosureService.DisclosureSettingsView.class,
                                        Set.of()),
                                (id, entry) -> {
                                    disclosure.settle(entry);
                                    return null;
                                }),
                Sheet.paged("agreements", Purpose.network, most -> agreements.listAgreements(most, null))
                        .titled("documentReference")
                        .lastDay()
                        .one(agreements::getAgreement)
                        .entered(
                                AgreementService.AgreementEntry.class,
                                entry -> agreements.make(entry).id())
                        .changed(
                                "ending",
                                "agreement",
                                EndingEntry.class,
                                (id, why) -> agreements.end(id, why.reason())),
                Sheet.paged("event-subscriptions", Purpose.network, most -> subscriptions.listSubscriptions(most, null))
                        .titled("address")
                        .one(subscriptions::getSubscription)
                        .actShownOnce(
                                new Act<>(
                                        "entry",
                                        "POST /api/event-subscriptions",
                                        null,
                                        false,
                                        SubscriptionService.SubscriptionEntry.class,
                                        Set.of()),
                                (id, entry) -> subscriptions.subscribe(entry))
                        .changed(
                                "ending",
                                "event-subscription",
                                SubscriptionEnding.class,
                                (id, why) -> subscriptions.end(id, why.reason())),
                Sheet.paged("erasures", Purpose.network, most -> erasures.listErasures(most, null))
                        .titled("kind", "erasedAt")
                        .act(
                                new Act<>("erasing", "POST /api/erasures", null, false, Nothing.class, Set.of()),
                                (id, entry) -> {
                                    erasures.eraseDue();
                                    return null;
                                }));
    }

    /** Nothing is asked. */
    record Nothing() {}
}
