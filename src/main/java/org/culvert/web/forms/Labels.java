package org.culvert.web.forms;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Arrays;
import java.util.Locale;
import org.culvert.web.Languages;
import org.culvert.web.words.ChoiceWords;
import org.culvert.web.words.FieldWords;
import org.culvert.web.words.HintWords;
import org.culvert.web.words.RecordFieldWords;

/** Words of fields and values, by the names that the API has for them. */
@ApplicationScoped
public class Labels {
    private final Languages languages;

    Labels(Languages languages) {
        this.languages = languages;
    }

    /** Of a field; one that has no words goes by its name, taken apart. */
    public String field(String name) {
        return has(FieldWords.class, name) ? said(FieldWords.class, name) : said(RecordFieldWords.class, name);
    }

    /** Of a value to choose from. */
    public String choice(String value) {
        return said(ChoiceWords.class, value);
    }

    /** What to type into a field. */
    public String hint(String name) {
        return said(HintWords.class, name);
    }

    private static boolean has(Class<?> bundle, String name) {
        return Arrays.stream(bundle.getMethods())
                .anyMatch(method -> method.getName().equals(name));
    }

    private <T> String said(Class<T> bundle, String name) {
        try {
            return (String) bundle.getMethod(name).invoke(languages.words(bundle));
        } catch (NoSuchMethodException noWords) {
            return name.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the words of " + name + " cannot be said", e);
        }
    }
}
