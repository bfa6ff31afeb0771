package org.culvert.support;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Tag;

/**
 * What the tests of this class look at may hang on the version of PostgreSQL (constraints, locks, the ledger's views, ranges,
 * long queries by hand): {@code deploy/test} runs them on the oldest one that the server works with.
 */
@Tag("oldest-database")
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface OnOldestDatabase {}
