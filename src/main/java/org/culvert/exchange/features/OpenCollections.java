package org.culvert.exchange.features;

import io.quarkus.security.UnauthorizedException;
import jakarta.enterprise.context.ApplicationScoped;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.SignInException;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;

/** Hands out collections to those who may see them. */
@ApplicationScoped
class OpenCollections {
    private final FeatureCatalogue catalogue;
    private final Sight sight;

    OpenCollections(FeatureCatalogue catalogue, Sight sight) {
        this.catalogue = catalogue;
        this.sight = sight;
    }

    /**
     * @throws NotFoundException where there is none of that name
     * @throws UnauthorizedException where nobody asks and somebody would have to
     * @throws SignInException where the asker's role does not see it
     */
    FeatureSource require(String collectionId) {
        FeatureSource source =
                catalogue.find(collectionId).orElseThrow(() -> new NotFoundException("collection", collectionId));
        if (!catalogue.isOpen(source)) {
            if (sight.viewer().equals(Viewer.NOBODY)) {
                throw new UnauthorizedException();
            }
            throw SignInException.notTheirs("Your role does not see the collection " + source.id() + ".");
        }
        return source;
    }
}
