package org.culvert.exchange.annualreturn;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnColumn;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnPeriod;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnWord;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** The form of a return, with its source and dates. */
@Entity
@Table(name = "return_forms")
class ReturnForm extends Recorded {
    String jurisdiction;
    String title;

    @Nullable
    Integer startMonth;

    @Nullable
    Integer startDay;

    @Nullable
    Integer dueMonth;

    @Nullable
    Integer dueDay;

    @JdbcTypeCode(SqlTypes.JSON)
    List<Map<String, String>> periods;

    @JdbcTypeCode(SqlTypes.JSON)
    List<Map<String, String>> columns;

    @JdbcTypeCode(SqlTypes.JSON)
    Map<String, String> vocabulary;

    boolean countsEggs;
    boolean countsHatchlings;
    boolean countsBodies;
    boolean countsMembers;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected ReturnForm() {}

    static ReturnForm of(ReturnForms.ReturnFormEntry entry) {
        var row = new ReturnForm();
        row.jurisdiction = entry.jurisdiction();
        row.title = entry.title();
        row.startMonth = entry.startMonth();
        row.startDay = entry.startDay();
        row.dueMonth = entry.dueMonth();
        row.dueDay = entry.dueDay();
        row.periods = entry.periods().stream()
                .map(period -> Map.of(
                        "from", period.from().toString(),
                        "to", period.to().toString(),
                        "due", period.due().toString()))
                .toList();
        row.columns = entry.columns().stream()
                .map(column -> Map.of("shows", column.shows().name(), "heading", column.heading()))
                .toList();
        row.vocabulary = new TreeMap<>();
        entry.vocabulary().forEach(word -> row.vocabulary.put(word.end().name(), word.word()));
        row.countsEggs = entry.countsEggs();
        row.countsHatchlings = entry.countsHatchlings();
        row.countsBodies = entry.countsBodies();
        row.countsMembers = entry.countsMembers();
        row.source = entry.source();
        row.readOn = entry.readOn();
        row.reviewBy = entry.reviewBy();
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        return row;
    }

    /** Someone has read the source again and says that the form still holds, or until when it did. */
    void review(ReturnForms.ReturnFormReview review) {
        source = review.source() == null ? source : review.source();
        readOn = review.readOn();
        reviewBy = review.reviewBy();
        validTo = review.validTo() == null ? validTo : review.validTo();
        revisedBecause(review.reason());
    }

    List<ReturnPeriod> periods() {
        return periods.stream()
                .map(told -> new ReturnPeriod(
                        LocalDate.parse(told.getOrDefault("from", "")),
                        LocalDate.parse(told.getOrDefault("to", "")),
                        LocalDate.parse(told.getOrDefault("due", ""))))
                .toList();
    }

    List<ReturnColumn> columns() {
        return columns.stream()
                .map(told -> new ReturnColumn(
                        ReturnForms.Shows.valueOf(told.getOrDefault("shows", "")), told.getOrDefault("heading", "")))
                .toList();
    }

    /** The authority's words, in a stable order. */
    List<ReturnWord> words() {
        return new TreeMap<>(vocabulary)
                .entrySet().stream()
                        .map(word -> new ReturnWord(ReturnForms.End.valueOf(word.getKey()), word.getValue()))
                        .toList();
    }
}
