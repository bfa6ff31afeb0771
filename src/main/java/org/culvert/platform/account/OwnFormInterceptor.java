package org.culvert.platform.account;

import jakarta.annotation.Priority;
import jakarta.interceptor.AroundInvoke;
import jakarta.interceptor.Interceptor;
import jakarta.interceptor.InvocationContext;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.POST;
import java.lang.annotation.Annotation;
import org.culvert.platform.SignInException;
import org.jspecify.annotations.Nullable;

/** Stands around every form: see {@link OwnForm}. */
@OwnForm
@Interceptor
@Priority(Interceptor.Priority.LIBRARY_BEFORE)
class OwnFormInterceptor {
    private final PageFrame page;

    OwnFormInterceptor(PageFrame page) {
        this.page = page;
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
        return context.proceed();
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
