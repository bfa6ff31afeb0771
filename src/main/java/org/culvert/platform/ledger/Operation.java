package org.culvert.platform.ledger;

import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Set;
import java.util.concurrent.Flow;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/**
 * What a method of a resource is, as its annotations say.
 *
 * @param http whether it answers requests at all
 * @param safe whether it only reads (RFC 9110, section 9.2.1)
 * @param atOnce whether all that it answers is there when it ends: no file that is written as it goes out, no stream of events
 * @param bodyAt index of the parameter that is the body, or -1
 * @param idAt index of the path parameter {@code id}, or -1
 * @param changes the kind of record that it changes, or null
 * @param status what it answers with unless it says otherwise
 */
record Operation(
        boolean http,
        boolean safe,
        boolean atOnce,
        boolean keepsNothing,
        boolean shownOnce,
        boolean tagged,
        @Nullable String changes,
        int bodyAt,
        int idAt,
        int status) {
    private static final Set<Class<? extends Annotation>> NO_BODY =
            Set.of(PathParam.class, QueryParam.class, BeanParam.class, Context.class);

    static Operation of(Method method) {
        boolean http = Arrays.stream(method.getAnnotations())
                .anyMatch(annotation -> annotation.annotationType().isAnnotationPresent(HttpMethod.class));
        NeedsTag needsTag = method.getAnnotation(NeedsTag.class);
        ResponseStatus status = method.getAnnotation(ResponseStatus.class);
        int bodyAt = -1;
        int idAt = -1;
        Annotation[][] parameters = method.getParameterAnnotations();
        for (int i = 0; i < parameters.length; i++) {
            if (Arrays.stream(parameters[i]).noneMatch(a -> NO_BODY.contains(a.annotationType()))) {
                bodyAt = i;
            }
            if (Arrays.stream(parameters[i]).anyMatch(Operation::isId)) {
                idAt = i;
            }
        }
        int usual = method.getReturnType() == void.class ? 204 : 200;
        return new Operation(
                http,
                method.isAnnotationPresent(GET.class),
                !Response.class.isAssignableFrom(method.getReturnType())
                        && !Flow.Publisher.class.isAssignableFrom(method.getReturnType()),
                method.isAnnotationPresent(KeepsNothing.class),
                method.isAnnotationPresent(ShownOnce.class),
                method.isAnnotationPresent(Tagged.class),
                needsTag == null ? null : needsTag.value(),
                bodyAt,
                idAt,
                status == null ? usual : status.value());
    }

    private static boolean isId(Annotation annotation) {
        return annotation instanceof PathParam path && path.value().equals("id");
    }
}
