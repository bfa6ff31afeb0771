package org.culvert.web.settings;

import io.quarkus.security.ForbiddenException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.sight.SightTable;
import org.culvert.platform.sight.Viewers;

/** All sheets, and which of them somebody may read and use: as the table says of the operations of the API. */
@ApplicationScoped
class Sheets {
    private final List<Sheet> all;
    private final Viewers viewers;
    private final SightTable table = SightTable.load();

    Sheets(Instance<SheetSource> sources, Viewers viewers) {
        this.all = sources.stream()
                .flatMap(source -> source.sheets().stream())
                .sorted(Comparator.comparing(Sheet::purpose))
                .toList();
        this.viewers = viewers;
    }

    List<Sheet> all() {
        return all;
    }

    /** Those that whoever asks may read. */
    List<Sheet> readable() {
        return all.stream().filter(sheet -> may(sheet.reads())).toList();
    }

    /**
     * One that whoever asks may read.
     *
     * @throws NotFoundException where there is none of this name
     * @throws ForbiddenException where they may not
     */
    Sheet readable(String name) {
        Sheet sheet = all.stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("kind of settings", name));
        if (!may(sheet.reads())) {
            throw new ForbiddenException();
        }
        return sheet;
    }

    /** What whoever asks may do with a sheet. */
    List<Act<?>> usable(Sheet sheet) {
        return sheet.acts().stream().filter(act -> may(act.operation())).toList();
    }

    /**
     * An act that whoever asks may do.
     *
     * @throws NotFoundException where there is none of this name
     * @throws ForbiddenException where they may not
     */
    Act<?> usable(Sheet sheet, String name) {
        Act<?> act = sheet.findAct(name).orElseThrow(() -> new NotFoundException("act", name));
        if (!may(act.operation())) {
            throw new ForbiddenException();
        }
        return act;
    }

    /** Whether whoever asks may open a page; one that stands for many asks by itself. */
    boolean mayOpen(String page) {
        String operation = "GET " + page;
        return !table.operations().contains(operation) || may(operation);
    }

    boolean may(String operation) {
        Set<String> roles = table.rolesOf(operation);
        return roles.contains(SightTable.PUBLIC)
                || viewers.current().roles().stream().anyMatch(roles::contains);
    }
}
