package org.culvert.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import org.culvert.platform.CulvertException;
import org.culvert.platform.DatabaseRefusals;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.LedgerException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ReadTransaction;
import org.culvert.platform.RefusedException;
import org.culvert.platform.SignInException;
import org.culvert.platform.ledger.FormOnce;
import org.culvert.web.words.FrameWords;
import org.jspecify.annotations.Nullable;

/** Carries forms of pages out and leads on; a form that is not taken stands on its page again, with what is wrong. */
@ApplicationScoped
public class PageForms {
    /** Shows the page of a form again, with what was typed. */
    @FunctionalInterface
    public interface Again {
        /**
         * @param why its status is that of the answer
         * @param errors one for each thing that is wrong; of a whole form the field is {@code act}
         */
        Response show(CulvertException why, List<FieldError> errors);
    }

    private final FormOnce forms;
    private final Languages languages;
    private final DatabaseRefusals refusals;
    private final ReadTransaction transaction;

    PageForms(FormOnce forms, Languages languages, DatabaseRefusals refusals, ReadTransaction transaction) {
        this.forms = forms;
        this.languages = languages;
        this.refusals = refusals;
        this.transaction = transaction;
    }

    /**
     * Carries out a form once, however often it is sent.
     *
     * @param path where the form is sent
     * @param key as the form carries it
     * @param told what was typed, by which a retry is told from another form
     * @param change reads it, carries it out, and says which page to show next
     */
    public Response once(String path, @Nullable String key, Object told, Supplier<URI> change, Again again) {
        return tried(() -> forms.take(path, key, told, change), again);
    }

    /** As {@link #once}, of what may be done twice, or calls {@link #take} itself. */
    public Response tried(Supplier<URI> change, Again again) {
        try {
            return Response.seeOther(change.get()).build();
        } catch (NotFoundException | SignInException notOfTheForm) {
            throw notOfTheForm;
        } catch (CulvertException e) {
            return again(again, e);
        } catch (RuntimeException e) {
            CulvertException meant = refusals.find(e);
            if (meant == null) {
                throw e;
            }
            return again(again, meant);
        }
    }

    /** Answers what keeps nothing by a page of its own; where it is refused, as {@link #tried} does. */
    public Response shown(Supplier<Response> answer, Again again) {
        try {
            return answer.get();
        } catch (NotFoundException | SignInException notOfTheForm) {
            throw notOfTheForm;
        } catch (CulvertException e) {
            return again(again, e);
        }
    }

    private Response again(Again again, CulvertException why) {
        return transaction.read(() -> again.show(why, wrong(why)));
    }

    /** {@link FormOnce#take}, where what is told is known only after some reading. */
    public URI take(String path, @Nullable String key, Object told, Supplier<URI> change) {
        return forms.take(path, key, told, change);
    }

    /** What is wrong, as a page tells it: beside its field where it has one. */
    public List<FieldError> wrong(CulvertException e) {
        if (e instanceof InvalidException invalid) {
            return invalid.errors();
        }
        FrameWords words = languages.words(FrameWords.class);
        if (e instanceof LedgerException) {
            return List.of(new FieldError("act", words.sentBefore(), words.sentBeforeWanted(), null));
        }
        if (e instanceof RefusedException refused && !refused.reasons().isEmpty()) {
            return refused.reasons().stream()
                    .map(reason -> new FieldError("act", reason, words.whatTheRuleAsks(), null))
                    .toList();
        }
        return List.of(
                new FieldError("act", Objects.requireNonNullElse(e.getMessage(), e.title()), words.lookAgain(), null));
    }

    /** A page as the answer. */
    public static Response html(int status, Object page) {
        return Response.status(status)
                .entity(page)
                .type(MediaType.TEXT_HTML_TYPE)
                .build();
    }
}
