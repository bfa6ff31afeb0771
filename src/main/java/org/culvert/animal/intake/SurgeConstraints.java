package org.culvert.animal.intake;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class SurgeConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "another_kind_of_surge_is_told_in_words",
                        "A surge of another kind says in words what it is, and no other does."),
                Map.entry("ending_a_surge_has_time_and_name", "A surge ends at a time and by somebody."),
                Map.entry("a_surge_ends_after_it_began", "A surge ends after it began."),
                Map.entry(
                        "a_sector_of_a_surge_has_its_own_code", "Another sector of this surge has that code already."),
                Map.entry("a_sector_and_its_surge", "There is a sector with this identifier already."),
                Map.entry("a_case_is_taken_in_once", "That animal was taken in already."),
                Map.entry("an_animal_comes_from_a_sector_of_the_surge", "That sector is of another surge."),
                Map.entry(
                        "a_running_number_is_given_once",
                        "Somebody was given that number meanwhile: send the form again."),
                Map.entry(
                        "a_temporary_number_is_given_once",
                        "That temporary number was given in this surge already: write another one."),
                Map.entry("a_dead_animal_is_in_no_triage", "Only a living animal is in triage."),
                Map.entry("an_animal_is_found_before_it_comes", "An animal is found before it comes to the tent."),
                Map.entry(
                        "who_comes_to_a_tent_comes_while_it_stands",
                        "Animals come to a tent after the surge began and before it ended, and some would not have."));
    }
}
