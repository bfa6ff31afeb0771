package org.culvert.care.template;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class TemplateTags {
    @Produces
    @Singleton
    TagSource ofTemplate(EntityManager entities, TemplateService service) {
        return new RowTag(
                "plan-template",
                "plan_templates",
                entities,
                service::getTemplate,
                Map.of("plan_template_adoptions", "template_id"));
    }
}
