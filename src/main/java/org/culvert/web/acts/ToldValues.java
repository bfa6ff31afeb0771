package org.culvert.web.acts;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.regex.Pattern;
import org.culvert.web.Languages;
import org.culvert.web.RegionTimes;
import org.culvert.web.forms.Labels;

/** Single values as the API writes them, said as a page does: in its language, by the region's clocks. */
@ApplicationScoped
public class ToldValues {
    private static final Pattern DAY = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");
    private static final Pattern INSTANT = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d(\\.\\d+)?)?Z");
    private static final Pattern MONTH_DAY = Pattern.compile("--\\d\\d-\\d\\d");

    private final Labels labels;
    private final RegionTimes times;
    private final Languages languages;

    ToldValues(Labels labels, RegionTimes times, Languages languages) {
        this.labels = labels;
        this.times = times;
        this.languages = languages;
    }

    /** @param field whose value it is, as the API calls it */
    public String said(String field, JsonNode value) {
        if (value.isBoolean()) {
            return labels.choice(value.asBoolean() ? "yes" : "no");
        }
        if (value.isFloatingPointNumber()) {
            return figure(field, value.decimalValue());
        }
        String text = value.asText();
        try {
            return inTheLanguage(text);
        } catch (DateTimeException noSuchDay) {
            return text;
        }
    }

    /** @throws DateTimeException of words that look like a day that there is not */
    private String inTheLanguage(String text) {
        String language = languages.ofPage().toLanguageTag();
        if (DAY.matcher(text).matches()) {
            return times.date(LocalDate.parse(text), language);
        }
        if (INSTANT.matcher(text).matches()) {
            return times.moment(Instant.parse(text), language);
        }
        return MONTH_DAY.matcher(text).matches() ? times.monthDay(MonthDay.parse(text), language) : text;
    }

    /** No more of its digits than anybody can have measured: decimetres, and the same in degrees. */
    private static String figure(String field, BigDecimal value) {
        int places = field.endsWith("Metres") || field.endsWith("InMeters") ? 1 : 6;
        return value.setScale(Math.min(Math.max(value.scale(), 0), places), RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
