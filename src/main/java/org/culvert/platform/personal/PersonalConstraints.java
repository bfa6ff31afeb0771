package org.culvert.platform.personal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class PersonalConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("a_duty_to_keep_is_of_years", "A duty to keep is of 0 to 200 whole years."),
                Map.entry("a_duty_to_keep_is_of_people_or_members", "A duty to keep is about people or about members."),
                Map.entry(
                        "a_duty_to_keep_names_its_jurisdiction",
                        "A jurisdiction is an ISO 3166 code such as AU-VIC, or network."),
                Map.entry("a_duty_to_keep_ends_after_it_begins", "A duty to keep cannot end before it begins."),
                Map.entry("an_erased_person_has_no_name", "This person was erased: nothing is written of them again."),
                Map.entry("erased_words_are_gone", "These words were erased: nothing is written in their place."),
                Map.entry("a_member_has_a_name_until_erased", "A member has a name."),
                Map.entry("an_erased_member_has_no_name", "This member was erased: nothing is written of them again."),
                Map.entry(
                        "a_vaccination_is_whole_or_erased",
                        "A vaccination says against what, when, until when and on which basis."),
                Map.entry("erasure_is_asked_for_once", "This person has asked to be erased already."),
                Map.entry("a_person_is_erased_once", "This person was erased already."));
    }
}
