package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;

/** Ways from other pages to what is kept of what they show. */
@ApplicationScoped
public class KeptLinks {
    private final Wholes wholes;

    KeptLinks(Wholes wholes) {
        this.wholes = wholes;
    }

    /** Whether records are kept of what goes by this name in the addresses of the API. */
    public boolean isKept(String name) {
        return wholes.all().stream().anyMatch(whole -> whole.name().equals(name));
    }
}
