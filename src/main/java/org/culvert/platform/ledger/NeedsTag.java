package org.culvert.platform.ledger;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A change of an existing record: it wants the tag that its read gave, in {@code If-Match}. The identifier is the path
 * parameter {@code id}, or there is one record alone.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface NeedsTag {
    /** The kind of record, as its {@link TagSource} names it. */
    String value();
}
