package org.culvert.platform.ledger;

import jakarta.interceptor.InterceptorBinding;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A resource whose unsafe operations are made once per key, whose records are changed by who has read them, and whose
 * reads answer as of a date. Every resource under {@code /api} is one.
 */
@Inherited
@InterceptorBinding
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface Ledgered {}
