package org.culvert.web.settings;

import io.quarkus.security.ForbiddenException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import java.util.Comparator;
import java.util.List;
import org.culvert.platform.NotFoundException;
import org.culvert.web.acts.ActRights;

/** All sheets, and which of them somebody may read and use: as the table says of the operations of the API. */
@ApplicationScoped
class Sheets {
    private final List<Sheet> all;
    private final ActRights rights;

    Sheets(Instance<SheetSource> sources, ActRights rights) {
        this.all = sources.stream()
                .flatMap(source -> source.sheets().stream())
                .sorted(Comparator.comparing(Sheet::purpose))
                .toList();
        this.rights = rights;
    }

    List<Sheet> all() {
        return all;
    }

    /** Those that whoever asks may read. */
    List<Sheet> readable() {
        return all.stream().filter(sheet -> rights.may(sheet.reads())).toList();
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
        if (!rights.may(sheet.reads())) {
            throw new ForbiddenException();
        }
        return sheet;
    }

    /** What whoever asks may do with a sheet. */
    List<SheetAct<?>> usable(Sheet sheet) {
        return sheet.acts().stream()
                .filter(one -> rights.may(one.act().operation()))
                .toList();
    }

    /**
     * An act that whoever asks may do.
     *
     * @throws NotFoundException where there is none of this name
     * @throws ForbiddenException where they may not
     */
    SheetAct<?> usable(Sheet sheet, String name) {
        SheetAct<?> act = sheet.findAct(name).orElseThrow(() -> new NotFoundException("act", name));
        if (!rights.may(act.act().operation())) {
            throw new ForbiddenException();
        }
        return act;
    }
}
