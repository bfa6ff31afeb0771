package org.culvert.web.animal;

import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;

/** Forms of cases as a browser without scripts sends them. */
final class SentForms {
    private final String role;
    private final String secret;

    SentForms(String role) {
        this.role = role;
        this.secret = Api.as(role).get("/account").cookie("culvert-form");
    }

    static String page(String role, String path) {
        return Api.as(role)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    /** @param told names of fields, each followed by what is typed */
    Answer send(String path, String... told) {
        return sendOnce(path, UUID.randomUUID().toString(), told);
    }

    Answer sendOnce(String path, String key, String... told) {
        Request request = Api.as(role)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", key);
        for (int i = 0; i < told.length; i += 2) {
            request = request.formParam(told[i], told[i + 1]);
        }
        return request.post(path).then();
    }

    /** The page that a refused form shows again. */
    String refused(int status, String path, String... told) {
        return send(path, told).statusCode(status).extract().asString();
    }
}
