package org.culvert.web.hand;

import io.quarkus.qute.TemplateInstance;
import io.quarkus.qute.i18n.Localized;
import io.quarkus.qute.i18n.MessageBundles;
import java.text.NumberFormat;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.culvert.web.words.HandWords;

/** The language of one page, and how it writes days and numbers. */
record HandTongue(HandWords words, Locale locale, ZoneId zone) {
    private static final List<Locale> SPOKEN = List.of(Locale.ENGLISH, Locale.GERMAN);

    /** @param wanted what the browser asks for, the dearest first */
    static HandTongue of(List<Locale> wanted, ZoneId zone) {
        Locale locale = wanted.stream()
                .flatMap(one ->
                        SPOKEN.stream().filter(spoken -> spoken.getLanguage().equals(one.getLanguage())))
                .findFirst()
                .orElse(Locale.ENGLISH);
        return new HandTongue(
                locale.equals(Locale.ENGLISH)
                        ? MessageBundles.get(HandWords.class)
                        : MessageBundles.get(HandWords.class, Localized.Literal.of(locale.toLanguageTag())),
                locale,
                zone);
    }

    TemplateInstance speak(TemplateInstance page) {
        return page.setLocale(locale);
    }

    String day(LocalDate day) {
        return DateTimeFormatter.ofPattern(words.dayPattern(), locale).format(day);
    }

    String date(LocalDate day) {
        return DateTimeFormatter.ofPattern(words.datePattern(), locale).format(day);
    }

    String time(Instant at) {
        return DateTimeFormatter.ofPattern("HH:mm", locale).format(at.atZone(zone));
    }

    /** With a decimal sign of the language, and no more digits than are needed. */
    String number(double number, int mostDecimals) {
        var format = NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(mostDecimals);
        format.setGroupingUsed(false);
        return format.format(number);
    }
}
