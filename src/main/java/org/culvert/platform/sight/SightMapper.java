package org.culvert.platform.sight;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;

/** Makes whatever the API answers with pass through the table. Columns of JSON have a mapper of their own. */
@Singleton
class SightMapper implements ObjectMapperCustomizer {
    private final Sight sight;

    SightMapper(Sight sight) {
        this.sight = sight;
    }

    @Override
    public void customize(ObjectMapper mapper) {
        mapper.registerModule(new SightModule(sight));
    }
}
