package org.culvert.web.animal;

import java.text.NumberFormat;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import org.culvert.web.RegionTimes;
import org.culvert.web.forms.Labels;
import org.culvert.web.words.CaseWords;

/** The language of one page, and how it writes days and numbers. */
public record CaseTongue(CaseWords words, Labels labels, Locale locale, ZoneId zone) {
    /** A value of a list that the API has, in words. */
    public String choice(String value) {
        return labels.choice(value);
    }

    public String at(Instant at) {
        return RegionTimes.format("d MMM yyyy, HH:mm", locale.toLanguageTag()).format(at.atZone(zone));
    }

    public String day(LocalDate day) {
        return RegionTimes.format("d MMM yyyy", locale.toLanguageTag()).format(day);
    }

    public LocalDate dayOf(Instant at) {
        return at.atZone(zone).toLocalDate();
    }

    /** With a decimal sign of the language, and no more than one digit behind it. */
    public String number(Number number) {
        var format = NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(1);
        format.setGroupingUsed(false);
        return format.format(number);
    }
}
