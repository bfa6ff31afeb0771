package org.culvert.web.forms;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.culvert.web.Languages;
import org.culvert.web.words.CareFieldWords;
import org.culvert.web.words.ChoiceWords;
import org.culvert.web.words.FieldWords;
import org.culvert.web.words.HintWords;
import org.culvert.web.words.RecordFieldWords;

/** Words of fields and values, by the names that the API has for them. */
@ApplicationScoped
public class Labels {
    /** Bundles with words of fields; a name is looked for in each. */
    public static final List<Class<?>> FIELDS = List.of(FieldWords.class, RecordFieldWords.class, CareFieldWords.class);

    private final Languages languages;

    Labels(Languages languages) {
        this.languages = languages;
    }

    /** Of a field; one that has no words goes by its name, taken apart. */
    public String field(String name) {
        for (Class<?> bundle : FIELDS) {
            if (has(bundle, name)) {
                return said(bundle, name);
            }
        }
        return takenApart(name);
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

    private static String takenApart(String name) {
        return name.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }

    private <T> String said(Class<T> bundle, String name) {
        try {
            return (String) bundle.getMethod(name).invoke(languages.words(bundle));
        } catch (NoSuchMethodException noWords) {
            return takenApart(name);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the words of " + name + " cannot be said", e);
        }
    }
}
