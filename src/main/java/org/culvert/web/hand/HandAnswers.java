package org.culvert.web.hand;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.platform.CulvertException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.web.PageForms;
import org.jspecify.annotations.Nullable;

/** Answers with a page, or carries a form out once and leads on; a form that is not taken stands on its page again. */
@ApplicationScoped
class HandAnswers {
    /** Whose page it is: a browser keeps pages for that account alone. */
    static final String ACCOUNT = "Culvert-Account";

    /** What was sent, by which a retry is told from another form. */
    record Told(String what) {}

    /** What a form is called on its page, and what was typed into it. */
    record Typed(String form, Map<String, String> fields) {}

    private final Template list;
    private final Template outing;
    private final Template animal;
    private final HandReader reader;
    private final PageForms forms;
    private final RegionService region;

    HandAnswers(
            @Location("hand.html") Template list,
            @Location("hand-outing.html") Template outing,
            @Location("hand-animal.html") Template animal,
            HandReader reader,
            PageForms forms,
            RegionService region) {
        this.list = list;
        this.outing = outing;
        this.animal = animal;
        this.reader = reader;
        this.forms = forms;
        this.region = region;
    }

    Response once(
            String path,
            @Nullable String key,
            Object told,
            Runnable change,
            URI next,
            Typed typed,
            Function<Sent, Response> again) {
        return forms.once(
                path,
                key,
                told,
                () -> {
                    change.run();
                    return next;
                },
                (why, errors) -> again(why, errors, typed, again));
    }

    /** The page with what was typed, and why it was not taken. */
    Response again(CulvertException why, Typed typed, Function<Sent, Response> page) {
        return again(why, forms.wrong(why), typed, page);
    }

    private static Response again(
            CulvertException why, List<FieldError> errors, Typed typed, Function<Sent, Response> page) {
        return Response.fromResponse(page.apply(new Sent(typed.form(), typed.fields(), errors)))
                .status(why.status())
                .build();
    }

    Function<Sent, Response> list(HttpHeaders headers) {
        HandTongue tongue = tongue(headers);
        return sent -> {
            HandPages.ListPage page = reader.list(tongue, sent);
            return answer(tongue.speak(list.data("page", page)), page.frame());
        };
    }

    Function<Sent, Response> outing(UUID id, HttpHeaders headers) {
        HandTongue tongue = tongue(headers);
        return sent -> {
            HandPages.OutingPage page = reader.outing(id, tongue, sent);
            return answer(tongue.speak(outing.data("page", page)), page.frame());
        };
    }

    Function<Sent, Response> animal(UUID id, HttpHeaders headers) {
        HandTongue tongue = tongue(headers);
        return sent -> {
            HandPages.AnimalPage page = reader.animal(id, tongue, sent);
            return answer(tongue.speak(animal.data("page", page)), page.frame());
        };
    }

    HandTongue tongue(HttpHeaders headers) {
        return HandTongue.of(headers.getAcceptableLanguages(), region.zone());
    }

    private static Response answer(TemplateInstance page, HandPages.Frame frame) {
        return Response.ok(page)
                .type(MediaType.TEXT_HTML_TYPE)
                .header(ACCOUNT, frame.accountId())
                .header(HttpHeaders.CACHE_CONTROL, "no-store")
                .build();
    }
}
