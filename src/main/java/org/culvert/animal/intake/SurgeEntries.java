package org.culvert.animal.intake;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.call.CallEntry.Caller;
import org.culvert.call.CallEntry.Sex;
import org.culvert.platform.ledger.Change;
import org.culvert.road.PlaceAsGiven;
import org.jspecify.annotations.Nullable;

/** What goes into this room. */
public final class SurgeEntries {
    private SurgeEntries() {}

    /** More than these nobody takes in by one form. */
    static final int MOST_ANIMALS = 200;

    public enum SurgeKind {
        fire,
        flood,
        heat,
        storm,
        spill,
        other
    }

    /** How an animal came to the tent. */
    public enum IntakeVitality {
        alive,
        dead
    }

    /**
     * Who is treated first. The categories of SALT (sort, assess, life-saving interventions, treatment or transport) mass
     * casualty triage, but for the dead: E. B. Lerner et al., Mass casualty triage: an evaluation of the data and development
     * of a proposed national guideline, Disaster Med. Public Health Prep. 2 (Suppl. 1), 2008, S25-S34.
     */
    public enum Triage {
        immediate,
        expectant,
        delayed,
        minimal
    }

    /**
     * A surge as it is declared.
     *
     * @param kindWords what it is, for the kind other and for that alone
     * @param tentWords where the tent stands, in words
     * @param tent the same as a place, said in one of several ways
     * @param holderMemberId who holds the animals at the tent, unless a form says otherwise
     */
    public record SurgeEntry(
            @NotBlank @Size(max = 200) String name,
            @NotNull SurgeKind kind,
            @Nullable @Size(max = 200) String kindWords,
            @NotNull Instant from,
            @NotBlank @Size(max = 500) String tentWords,
            @Nullable PlaceAsGiven tent,
            @NotNull UUID holderMemberId) {}

    public record SurgeCorrection(
            Change<String> name,
            Change<Instant> from,
            Change<String> tentWords,
            Change<UUID> holderMemberId,
            @NotBlank @Size(max = 2000) String reason) {}

    /** The surge is over; now when {@code at} is left out. */
    public record SurgeEnding(@Nullable Instant at) {}

    /**
     * A sector.
     *
     * @param code with which temporary numbers begin
     * @param areaWords its ground in words
     * @param area the same as a polygon
     */
    public record SectorEntry(
            @NotNull @Pattern(regexp = "[A-Z0-9]{1,8}", message = "must be 1 to 8 capital letters and digits")
            String code,

            @NotBlank @Size(max = 500) String words,
            @Nullable @Size(max = 2000) String areaWords,
            @Nullable @Valid SectorArea area) {}

    /**
     * One animal of a form.
     *
     * @param sector code of a sector of the surge
     * @param temporaryNumber as it is written on the animal's band or box; left out: the server gives the next of the sector
     * @param taxon scientific name of a taxon at any rank; left out: its kind is not known yet
     * @param verbatimIdentification what it was called
     * @param foundAt when it was found, or the latest it can have been; left out: when it came to the tent
     * @param foundNotBefore the earliest it can have been, where only a span is known
     * @param place where it was found; left out: that is not known, and so is its origin
     * @param condition in words
     * @param triage of one that is alive
     * @param cause key of a cause, where it is not that of the surge
     * @param motherTemporaryNumber of its mother, taken in before or further up in the form
     * @param finder who found it, where somebody knows
     */
    public record IntakeAnimal(
            @NotBlank @Size(max = 8) String sector,

            @Nullable @Size(max = 40) @Pattern(regexp = "\\s*\\S.*", message = "must not be empty")
            String temporaryNumber,

            @Nullable @Size(max = 200) String taxon,
            @Nullable @Size(max = 200) String verbatimIdentification,
            @NotNull IntakeVitality vitality,
            Sex sex,
            @Nullable @Size(max = 100) String lifeStage,
            boolean dependentYoung,
            @Nullable Instant foundAt,
            @Nullable Instant foundNotBefore,
            @Nullable PlaceAsGiven place,
            @Nullable @Size(max = 2000) String condition,
            @Nullable Triage triage,
            @Nullable @Size(max = 100) String cause,
            @Nullable @Size(max = 40) String motherTemporaryNumber,
            @Nullable @Valid Caller finder) {
        public IntakeAnimal {
            sex = sex == null ? Sex.unknown : sex;
        }
    }

    /**
     * Many animals in one form: all of them are taken in, or none.
     *
     * @param at when they came to the tent; now when left out
     * @param holderMemberId who holds them; the surge's own when left out
     */
    public record IntakeEntry(
            @Nullable Instant at,
            @Nullable UUID holderMemberId,
            @NotEmpty @Size(max = MOST_ANIMALS) List<@NotNull @Valid IntakeAnimal> animals) {}
}
