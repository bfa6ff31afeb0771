package org.culvert.web.returns;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.exchange.annualreturn.ReturnForms;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnFormView;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Viewer;
import org.culvert.platform.sight.Viewers;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.RosterService;
import org.culvert.web.RegionTimes;
import org.jspecify.annotations.Nullable;

/** Whose returns may be asked for, and for which periods. */
@ApplicationScoped
class ReturnHolders {
    /** Something to choose. */
    public record Choice(String value, String words, boolean chosen) {}

    /** Years back that are offered; earlier ones are asked for by their address. */
    private static final int YEARS = 4;

    private final ReturnForms forms;
    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final Viewers viewers;
    private final RegionService region;
    private final Clock clock;

    ReturnHolders(
            ReturnForms forms,
            RosterService roster,
            AuthorisationService authorisations,
            Viewers viewers,
            RegionService region,
            Clock clock) {
        this.forms = forms;
        this.roster = roster;
        this.authorisations = authorisations;
        this.viewers = viewers;
        this.region = region;
        this.clock = clock;
    }

    LocalDate today() {
        return clock.instant().atZone(region.zone()).toLocalDate();
    }

    /** Holders by {@code member:} or {@code organisation:} and identifier, named as far as whoever asks may know them. */
    Map<String, String> all() {
        Viewer asker = viewers.current();
        Map<String, String> holders = new LinkedHashMap<>();
        if (asker.hasAny(Role.COORDINATOR, Role.OFFICER)) {
            roster.listOrganisations(null).forEach(one -> holders.put(organisation(one.id()), one.name()));
            if (asker.hasAny(Role.COORDINATOR)) {
                roster.listMembers().forEach(one -> holders.put(member(one.id()), one.callSign()));
            } else {
                authorisations.list(null, null).forEach(paper -> {
                    if (paper.memberId() != null) {
                        holders.merge(
                                member(paper.memberId()),
                                paper.number(),
                                (before, number) -> before.contains(number) ? before : before + ", " + number);
                    }
                });
            }
            return holders;
        }
        if (asker.memberId() != null) {
            holders.put(
                    member(asker.memberId()), roster.getMember(asker.memberId()).callSign());
        }
        if (asker.organisationId() != null) {
            holders.put(
                    organisation(asker.organisationId()),
                    roster.getOrganisation(asker.organisationId()).name());
        }
        return holders;
    }

    static String member(UUID id) {
        return "member:" + id;
    }

    static String organisation(UUID id) {
        return "organisation:" + id;
    }

    List<Choice> choices(String chosen) {
        return all().entrySet().stream()
                .map(one ->
                        new Choice(one.getKey(), one.getValue(), one.getKey().equals(chosen)))
                .toList();
    }

    /** Periods that have begun, the latest first. */
    List<Choice> periods(String chosen) {
        LocalDate today = today();
        record Begins(ReturnFormView form, LocalDate from) {}
        List<Begins> all = new ArrayList<>();
        for (ReturnFormView form : forms.listForms()) {
            for (LocalDate from : begins(form, today)) {
                if (!from.isBefore(form.validFrom())
                        && (form.validTo() == null || from.isBefore(form.validTo()))
                        && !from.isAfter(today)) {
                    all.add(new Begins(form, from));
                }
            }
        }
        all.sort(Comparator.comparing(Begins::from).reversed());
        return all.stream()
                .map(one -> {
                    String value = one.form().id() + ":" + one.from();
                    return new Choice(
                            value,
                            one.form().title() + " (" + one.form().jurisdiction() + "), "
                                    + RegionTimes.plain(one.from()),
                            value.equals(chosen));
                })
                .toList();
    }

    private static List<LocalDate> begins(ReturnFormView form, LocalDate today) {
        Integer month = form.startMonth();
        Integer day = form.startDay();
        if (month == null || day == null) {
            return form.periods().stream().map(ReturnForms.ReturnPeriod::from).toList();
        }
        List<LocalDate> begins = new ArrayList<>();
        for (int year = today.getYear() - YEARS; year <= today.getYear(); year++) {
            begins.add(MonthDay.of(month, day).atYear(year));
        }
        return begins;
    }

    /** The identifier behind {@code member:} or {@code organisation:}; null where it is the other, or nothing. */
    static @Nullable UUID idOf(String kind, @Nullable String holder) {
        if (holder == null || !holder.startsWith(kind + ":")) {
            return null;
        }
        try {
            return UUID.fromString(holder.substring(kind.length() + 1));
        } catch (IllegalArgumentException noIdentifier) {
            return null;
        }
    }
}
