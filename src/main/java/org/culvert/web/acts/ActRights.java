package org.culvert.web.acts;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import org.culvert.platform.sight.SightTable;
import org.culvert.platform.sight.Viewers;

/** What whoever asks may do, as the table says of the operations of the API. */
@ApplicationScoped
public class ActRights {
    private final Viewers viewers;
    private final SightTable table = SightTable.load();

    ActRights(Viewers viewers) {
        this.viewers = viewers;
    }

    public boolean may(String operation) {
        Set<String> roles = table.rolesOf(operation);
        return roles.contains(SightTable.PUBLIC)
                || viewers.current().roles().stream().anyMatch(roles::contains);
    }

    /** Whether a page opens for whoever asks; one that stands for many asks by itself. */
    public boolean mayOpen(String page) {
        String operation = "GET " + page;
        return !table.operations().contains(operation) || may(operation);
    }
}
