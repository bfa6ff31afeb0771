package org.culvert.care.matching;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.roster.papers.Papers;
import org.jspecify.annotations.Nullable;

/**
 * One carer for one animal: each test with its verdict and its words.
 *
 * <p>Law: nobody passes it over. Policy: a named person may, with a reason. Advice: shown.
 */
public final class Candidacy {
    /** How strict a test is. */
    public enum Strength {
        law,
        policy,
        advice
    }

    public enum Verdict {
        pass,
        fail,
        cantTell
    }

    /** One test. */
    public record Test(String test, Strength strength, Verdict verdict, String words) {
        public boolean refuses() {
            return strength == Strength.law ? verdict != Verdict.pass : blocks();
        }

        /** Whether a rule of the network's own speaks against it. */
        public boolean blocks() {
            return strength == Strength.policy && verdict == Verdict.fail;
        }
    }

    /**
     * What must not be kept with the animal and is there.
     *
     * @param words of the rule
     * @param policy whether the rule is the network's policy, and not advice
     */
    public record Neighbour(String words, boolean policy) {}

    /** What an animal is to another from which it is not parted. */
    public enum Relation {
        mother,
        young,
        /** Of one mother, and so of one clutch. */
        sibling,
        /** Somebody says that they are kept together. */
        told
    }

    /**
     * An animal from which the one to be placed is not parted.
     *
     * @param memberId who has it or has been offered it; null: no member
     * @param holder what they are called; null: nobody is recorded
     */
    public record Kin(
            Relation relation,
            @Nullable UUID memberId,
            @Nullable String holder) {}

    /**
     * What is known.
     *
     * @param carerId the carer
     * @param papers which authorisation holds on the day
     * @param vaccinationNeeded against what; null: none is needed
     * @param vaccinated whether a record shows it to be current on the day
     * @param places for all animals together; null: not told
     * @param held animals held or offered
     * @param groupPlaces for animals of the group; null: not told
     * @param heldOfGroup those of the group among them
     * @param companyWanted words of the rule that wants company for it; null: none does
     * @param awayUntil last day of an absence that covers the day; null: there
     * @param animalDaysLately animals held in the last weeks, in animal-days
     */
    public record Facts(
            UUID carerId,
            LocalDate day,
            Papers papers,
            @Nullable String vaccinationNeeded,
            boolean vaccinated,
            @Nullable Integer places,
            int held,
            @Nullable Integer groupPlaces,
            int heldOfGroup,
            List<Neighbour> neighbours,
            @Nullable String companyWanted,
            @Nullable LocalDate awayUntil,
            double animalDaysLately) {}

    private final Facts facts;
    private final @Nullable Double metres;
    private final List<Kin> kin;
    private final List<Test> tests = new ArrayList<>();

    private Candidacy(Facts facts, @Nullable Double metres, List<Kin> kin) {
        this.facts = facts;
        this.metres = metres;
        this.kin = kin;
        authorisation();
        vaccination();
        places();
        neighbours();
        absence();
        company();
        keptTogether();
        distance();
    }

    /**
     * @param metres from the animal to the carer, straight; null: not known
     * @param kin from whom the animal is not parted
     */
    public static Candidacy of(Facts facts, @Nullable Double metres, List<Kin> kin) {
        return new Candidacy(facts, metres, kin);
    }

    public List<Test> tests() {
        return List.copyOf(tests);
    }

    /** Number of the authorisation under which the carer may hold it; null: none. */
    public @Nullable String authorisationNumber() {
        return facts.papers().number();
    }

    /** Whether no law speaks against it. */
    public boolean isListed() {
        return tests.stream().noneMatch(test -> test.strength() == Strength.law && test.verdict() != Verdict.pass);
    }

    /** Whether neither law nor policy speaks against it. */
    public boolean isFit() {
        return tests.stream().noneMatch(Test::refuses);
    }

    /**
     * What the placement costs, in kilometres: the way there, and {@code kilometresPerAnimal} for each animal held on average
     * over the last four weeks. An unknown way counts as {@code unknownKilometres}.
     */
    public double burden(double kilometresPerAnimal, double unknownKilometres) {
        return burden(facts, metres, kilometresPerAnimal, unknownKilometres);
    }

    /** The same of a carer for an animal at another place, where none of the other tests is asked for again. */
    public static double burden(
            Facts facts, @Nullable Double metres, double kilometresPerAnimal, double unknownKilometres) {
        double way = metres == null ? unknownKilometres : metres / 1000;
        return way + kilometresPerAnimal * facts.animalDaysLately() / 28;
    }

    private void add(String test, Strength strength, Verdict verdict, String words) {
        tests.add(new Test(test, strength, verdict, words));
    }

    private void authorisation() {
        Papers papers = facts.papers();
        if (papers.number() != null) {
            add("authorisation", Strength.law, Verdict.pass, "Listed on " + facts.day() + ": " + papers.number() + ".");
            return;
        }
        add(
                "authorisation",
                Strength.law,
                papers.unknown() ? Verdict.cantTell : Verdict.fail,
                (papers.against().isEmpty()
                                ? "No authorisation is listed for this kind of animal on " + facts.day()
                                : String.join("; ", papers.against()))
                        + ". Check your local code.");
    }

    private void vaccination() {
        String needed = facts.vaccinationNeeded();
        if (needed != null) {
            add(
                    "vaccination",
                    Strength.law,
                    facts.vaccinated() ? Verdict.pass : Verdict.fail,
                    facts.vaccinated()
                            ? "Shown to be current against " + needed + " on " + facts.day() + "."
                            : "Not shown to be current against " + needed + " on " + facts.day()
                                    + "; no record is no vaccination.");
        }
    }

    private void places() {
        place("places", facts.places(), facts.held(), "animals");
        if (facts.groupPlaces() != null) {
            place("places for the group", facts.groupPlaces(), facts.heldOfGroup(), "of this group");
        }
    }

    private void place(String test, @Nullable Integer places, int held, String of) {
        if (places == null) {
            if (facts.groupPlaces() == null) {
                add(
                        test,
                        Strength.policy,
                        Verdict.cantTell,
                        "How many animals the carer takes is not entered: ask. Held or offered now: " + held + ".");
            }
            return;
        }
        add(
                test,
                Strength.policy,
                held < places ? Verdict.pass : Verdict.fail,
                held + " of " + places + " places are taken (" + of + ", those offered among them).");
    }

    private void neighbours() {
        for (Neighbour one : facts.neighbours()) {
            add("kept apart", one.policy() ? Strength.policy : Strength.advice, Verdict.fail, one.words());
        }
    }

    private void absence() {
        LocalDate until = facts.awayUntil();
        if (until != null) {
            add("away", Strength.policy, Verdict.fail, "Away until " + until + ".");
        }
    }

    private void company() {
        String wanted = facts.companyWanted();
        if (wanted != null) {
            add(
                    "company",
                    Strength.advice,
                    facts.heldOfGroup() > 0 ? Verdict.pass : Verdict.fail,
                    (facts.heldOfGroup() > 0
                                    ? facts.heldOfGroup() + " of its group are there. "
                                    : "None of its group is there. ")
                            + wanted);
        }
    }

    private void keptTogether() {
        if (kin.isEmpty()) {
            return;
        }
        boolean allHere = kin.stream().allMatch(one -> facts.carerId().equals(one.memberId()));
        boolean unknown = kin.stream().anyMatch(one -> one.holder() == null);
        add(
                "keptTogether",
                Strength.advice,
                allHere ? Verdict.pass : unknown ? Verdict.cantTell : Verdict.fail,
                kin.stream()
                                .map(one -> words(one.relation())
                                        + (one.holder() == null
                                                ? " is with nobody who is recorded"
                                                : " is with " + one.holder()))
                                .distinct()
                                .collect(Collectors.joining("; ", "", ". "))
                        + (allHere
                                ? "That is this carer."
                                : "They are kept together, unless somebody says that one goes alone."));
    }

    private static String words(Relation relation) {
        return switch (relation) {
            case mother -> "Its mother";
            case young -> "Its young";
            case sibling -> "A sibling";
            case told -> "One that is kept together with it";
        };
    }

    private void distance() {
        add(
                "distance",
                Strength.advice,
                metres == null ? Verdict.cantTell : Verdict.pass,
                metres == null
                        ? "How far it is, is not known."
                        : String.format(Locale.ROOT, "%.0f km in a straight line.", metres / 1000));
    }
}
