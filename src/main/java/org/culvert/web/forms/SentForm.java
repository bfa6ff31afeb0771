package org.culvert.web.forms;

import jakarta.ws.rs.FormParam;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jboss.resteasy.reactive.server.core.CurrentRequestManager;
import org.jboss.resteasy.reactive.server.core.multipart.FormData;
import org.jboss.resteasy.reactive.server.multipart.FormValue;
import org.jspecify.annotations.Nullable;

/** A form as a browser sends it, whatever its fields are. */
public class SentForm {
    private static final String KEY = "key";
    private static final String CSRF = "csrf";

    /** A body may have a key too. */
    private static final String KEY_OF_BODY = "body.key";

    /** As the page gave it: see {@link org.culvert.platform.ledger.FormOnce}. */
    @FormParam(KEY)
    @Nullable
    String key;

    public @Nullable String key() {
        return key;
    }

    /** What a field is called between page and server. */
    static String sentAs(String field) {
        return field.equals(KEY) ? KEY_OF_BODY : field;
    }

    /** What was typed; how the form proves itself is none of it. */
    public SentFields fields() {
        FormData data = CurrentRequestManager.get().getFormData();
        Map<String, List<String>> told = new TreeMap<>();
        if (data != null) {
            for (String name : data) {
                List<String> texts = data.get(name).stream()
                        .filter(value -> !value.isFileItem())
                        .map(FormValue::getValue)
                        .toList();
                if (!texts.isEmpty() && !name.equals(KEY) && !name.equals(CSRF)) {
                    told.put(name.equals(KEY_OF_BODY) ? KEY : name, texts);
                }
            }
        }
        return new SentFields(told);
    }
}
