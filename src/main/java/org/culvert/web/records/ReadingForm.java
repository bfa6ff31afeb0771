package org.culvert.web.records;

import jakarta.ws.rs.FormParam;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How a file is to be read, as it is chosen and typed. What belongs together stands at the same place of several lists. */
public class ReadingForm {
    /** How the text was taken apart on the page that was shown. */
    @FormParam("seen")
    @Nullable
    String seen;

    @FormParam("encoding")
    @Nullable
    String encoding;

    @FormParam("separator")
    @Nullable
    String separator;

    @FormParam("headingRow")
    @Nullable
    String headingRow;

    /** Index of a column, a colon, and what it holds. */
    @FormParam("holds")
    @Nullable
    List<String> holds;

    @FormParam("question")
    @Nullable
    List<String> questions;

    @FormParam("answer")
    @Nullable
    List<String> answers;

    /** Name of the setting, a colon, and the word of it. */
    @FormParam("word")
    @Nullable
    List<String> words;

    @FormParam("meaning")
    @Nullable
    List<String> meanings;

    /** A kind of the register by name, which goes before the meaning beside it. */
    @FormParam("other")
    @Nullable
    List<String> others;

    @FormParam("uncertaintyMetres")
    @Nullable
    String uncertaintyMetres;

    @FormParam("name")
    @Nullable
    String name;

    @FormParam("key")
    @Nullable
    String key;

    /** {@code look} again, or {@code try}. */
    @FormParam("act")
    @Nullable
    String act;
}
