package org.culvert.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkiverse.resteasy.problem.HttpProblem;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import org.culvert.web.words.LayerWords;

/** Draws what GIS programs are answered as a page, from the very document, so that it shows no more than that does. */
@Provider
class FeaturesPage implements ContainerResponseFilter {
    private static final MediaType HTML = MediaType.TEXT_HTML_TYPE.withCharset("UTF-8");

    private final Template template;
    private final ObjectMapper mapper;
    private final Languages languages;

    FeaturesPage(@Location("features.html") Template template, ObjectMapper mapper, Languages languages) {
        this.template = template;
        this.mapper = mapper;
        this.languages = languages;
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) throws IOException {
        String path = request.getUriInfo().getRequestUri().getPath();
        Object told = response.getEntity();
        if (!(path.equals("/ogc") || path.startsWith("/ogc/"))
                || told == null
                || told instanceof HttpProblem
                || response.getMediaType() == null
                || !MediaType.TEXT_HTML_TYPE.isCompatible(response.getMediaType())) {
            return;
        }
        JsonNode document = told instanceof String text ? mapper.readTree(text) : mapper.valueToTree(told);
        response.setEntity(
                template.data("page", FeaturesView.of(document, path, languages.words(LayerWords.class)))
                        .render(),
                null,
                HTML);
    }
}
