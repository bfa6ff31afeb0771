package org.culvert.web;

import io.quarkus.arc.Arc;
import io.quarkus.arc.ArcContainer;
import io.quarkus.qute.EngineBuilder;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.qute.i18n.Localized;
import io.quarkus.qute.i18n.MessageBundles;
import io.quarkus.runtime.LocalesBuildTimeConfig;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.core.HttpHeaders;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Which of the server's languages a page speaks: by lookup (RFC 4647, section 3.4) in what the browser asks for. */
@ApplicationScoped
public class Languages {
    private final List<Locale> spoken;
    private final Locale own;
    private final CurrentVertxRequest current;

    Languages(LocalesBuildTimeConfig config, CurrentVertxRequest current) {
        this.spoken = List.copyOf(config.locales());
        this.own = config.defaultLocale().orElse(Locale.ENGLISH);
        this.current = current;
    }

    void speak(@Observes EngineBuilder builder) {
        builder.addTemplateInstanceInitializer(this::speak);
    }

    private void speak(TemplateInstance page) {
        Locale asked = findAsked();
        if (asked != null) {
            page.setLocale(asked);
        }
    }

    /** The language of the page that is being asked for; the server's own where none is. */
    public Locale ofPage() {
        Locale asked = findAsked();
        return asked == null ? own : asked;
    }

    /** The words of a bundle in the language of the page that is being asked for. */
    public <T> T words(Class<T> bundle) {
        Locale locale = ofPage();
        return locale.equals(own)
                ? MessageBundles.get(bundle)
                : MessageBundles.get(bundle, Localized.Literal.of(locale.toLanguageTag()));
    }

    /** The language of the page that is being asked for, for what is no bean; English outside of the server. */
    static Locale now() {
        ArcContainer container = Arc.container();
        return container == null
                ? Locale.ENGLISH
                : container.instance(Languages.class).get().ofPage();
    }

    /** {@link #words} for what is no bean. */
    static <T> T wordsNow(Class<T> bundle) {
        return Arc.container().instance(Languages.class).get().words(bundle);
    }

    private @Nullable Locale findAsked() {
        if (!Arc.container().requestContext().isActive()) {
            return null;
        }
        RoutingContext request = current.getCurrent();
        return request == null ? null : choose(request.request().getHeader(HttpHeaders.ACCEPT_LANGUAGE));
    }

    Locale choose(@Nullable String asked) {
        if (asked == null || asked.isBlank()) {
            return own;
        }
        try {
            Locale found = Locale.lookup(Locale.LanguageRange.parse(asked), spoken);
            return found == null ? own : found;
        } catch (IllegalArgumentException notLanguages) {
            return own;
        }
    }
}
