package org.culvert.exchange.annualreturn;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class ReturnTags {
    @Produces
    @Singleton
    TagSource ofReturnForm(EntityManager entities, ReturnForms forms) {
        return new RowTag("return-form", "return_forms", entities, forms::getForm);
    }
}
