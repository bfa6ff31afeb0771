package org.culvert.hotspot;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A named time of year of a group of animals in one hemisphere, with its source. */
@Entity
@Table(name = "season_windows")
class SeasonWindow extends Recorded {
    UUID taxonGroupId;
    String name;
    String hemisphere;
    int fromMonth;
    int fromDay;
    int toMonth;
    int toDay;
    String source;
    LocalDate readOn;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected SeasonWindow() {}

    static SeasonWindow of(SeasonWindowService.WindowEntry entry, UUID taxonGroupId) {
        var window = new SeasonWindow();
        window.taxonGroupId = taxonGroupId;
        window.name = entry.name();
        window.hemisphere = entry.hemisphere();
        window.fromMonth = entry.from().getMonthValue();
        window.fromDay = entry.from().getDayOfMonth();
        window.toMonth = entry.to().getMonthValue();
        window.toDay = entry.to().getDayOfMonth();
        window.source = entry.source();
        window.readOn = entry.readOn();
        window.validFrom = entry.validFrom();
        window.validTo = entry.validTo();
        return window;
    }

    MonthDay from() {
        return MonthDay.of(fromMonth, fromDay);
    }

    MonthDay to() {
        return MonthDay.of(toMonth, toDay);
    }

    RunSettings.Season season() {
        return new RunSettings.Season(List.of(), name, from(), to(), source);
    }
}
