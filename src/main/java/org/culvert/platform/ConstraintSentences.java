package org.culvert.platform;

import java.util.Map;

/** What a room says when one of its database constraints refuses a row: constraint name to a human sentence. */
public interface ConstraintSentences {
    Map<String, String> sentences();
}
