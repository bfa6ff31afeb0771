package org.culvert.platform.account;

import jakarta.enterprise.util.Nonbinding;
import jakarta.interceptor.InterceptorBinding;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A resource of pages whose forms are taken from its own pages alone. Every operation that is no read has a parameter
 * {@code @FormParam("csrf")}, which must be the secret that the page was given.
 */
@Inherited
@InterceptorBinding
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface OwnForm {
    /** Whether its forms are for people who have signed in by the form, and not for programs. */
    @Nonbinding
    boolean peopleOnly() default false;
}
