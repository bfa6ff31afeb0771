package org.culvert.platform.account;

import jakarta.annotation.Priority;
import jakarta.interceptor.AroundInvoke;
import jakarta.interceptor.Interceptor;
import jakarta.interceptor.InvocationContext;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Arrays;
import org.culvert.platform.ReadTransaction;
import org.culvert.platform.SignInException;
import org.jspecify.annotations.Nullable;

/** Stands around every form, and the page that shows it: see {@link OwnForm}. */
@OwnForm
@Interceptor
@Priority(Interceptor.Priority.LIBRARY_BEFORE)
class OwnFormInterceptor {
    private final PageFrame page;
    private final ReadTransaction transaction;

    OwnFormInterceptor(PageFrame page, ReadTransaction transaction) {
        this.page = page;
        this.transaction = transaction;
    }

    @AroundInvoke
    @Nullable
    Object around(InvocationContext context) throws Exception {
        if (context.getMethod().isAnnotationPresent(POST.class)) {
            OwnForm ownForm = context.getMethod().getDeclaringClass().getAnnotation(OwnForm.class);
            if (ownForm != null && ownForm.peopleOnly() && !page.isSession()) {
                throw SignInException.forged();
            }
            String secret = page.findSecret();
            String sent = sent(context);
            if (secret == null || sent == null || !Secrets.same(secret, sent)) {
                throw SignInException.forged();
            }
        }
        return isPage(context.getMethod()) ? transaction.read(context::proceed) : context.proceed();
    }

    /** Paper and other files are written as they go out. */
    private static boolean isPage(Method method) {
        Produces produces = method.getAnnotation(Produces.class);
        return method.isAnnotationPresent(GET.class)
                && (produces == null || Arrays.asList(produces.value()).contains(MediaType.TEXT_HTML));
    }

    private static @Nullable String sent(InvocationContext context) {
        Annotation[][] parameters = context.getMethod().getParameterAnnotations();
        for (int i = 0; i < parameters.length; i++) {
            for (Annotation annotation : parameters[i]) {
                if (annotation instanceof FormParam form && form.value().equals("csrf")) {
                    return (String) context.getParameters()[i];
                }
            }
        }
        return null;
    }
}
