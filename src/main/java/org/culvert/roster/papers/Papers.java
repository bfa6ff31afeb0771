package org.culvert.roster.papers;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Authorisations that are listed for a holder on a day and for a kind of animal, and which of them holds.
 *
 * @param number of the first that holds; null: none does
 * @param unknown whether one might hold, if it were known where the holder keeps animals
 * @param against what speaks against each of those before it, in words
 */
public record Papers(@Nullable String number, boolean unknown, List<String> against) {

    /**
     * One authorisation.
     *
     * @param premises that it names; null: none
     * @param supervised whether it holds only under supervision
     */
    public record Paper(String number, @Nullable String premises, boolean supervised) {}

    /**
     * Reads papers in the order in which they are given.
     *
     * @param day on which they are listed
     * @param premises of the holder, as authorisations call them; null: not told
     * @param supervised whether the holder works on the day under somebody who has an authorisation of their own
     */
    public static Papers read(LocalDate day, List<Paper> listed, @Nullable String premises, boolean supervised) {
        List<String> against = new ArrayList<>();
        boolean unknown = false;
        for (Paper one : listed) {
            String of = one.premises();
            if (of != null && premises == null) {
                unknown = true;
                against.add(one.number() + " names premises, " + of + ", and the holder's are not entered");
            } else if (of != null && premises != null && !of.strip().equalsIgnoreCase(premises.strip())) {
                against.add(one.number() + " is for premises " + of + " and not for " + premises);
            } else if (one.supervised() && !supervised) {
                against.add(one.number()
                        + " asks for supervision, and no supervisor with an authorisation of their own is entered for "
                        + day);
            } else {
                return new Papers(one.number(), false, against);
            }
        }
        return new Papers(null, unknown, against);
    }

    public Papers {
        against = List.copyOf(against);
    }
}
