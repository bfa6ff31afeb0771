package org.culvert.support;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Tag;

/**
 * What the tests of this class look at does not hang on the version of PostgreSQL: {@code deploy/test} leaves them out where
 * it runs the resource tests once more on another one.
 */
@Tag("same-on-every-database")
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface SameOnEveryDatabase {}
