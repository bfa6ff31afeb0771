package org.culvert.web.kept;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.security.ForbiddenException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.animal.photograph.OriginalService;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.sight.Sight;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ActRights;
import org.culvert.web.kept.KeptKind.Deed;
import org.culvert.web.kept.KeptKind.Kept;
import org.jspecify.annotations.Nullable;

/** All wholes with the records of each, as far as somebody may read and change them by the API. */
@ApplicationScoped
class Wholes {
    private final List<Whole> all;
    private final ActRights rights;
    private final Sight sight;
    private final ObjectMapper mapper;
    private final PhotographService photographs;
    private final OriginalService originals;

    Wholes(
            Instance<WholeSource> sources,
            ActRights rights,
            Sight sight,
            ObjectMapper mapper,
            PhotographService photographs,
            OriginalService originals) {
        this.all = sources.stream().flatMap(source -> source.wholes().stream()).toList();
        this.rights = rights;
        this.sight = sight;
        this.mapper = mapper;
        this.photographs = photographs;
        this.originals = originals;
    }

    List<Whole> all() {
        return all;
    }

    Optional<Whole> find(String name) {
        return all.stream().filter(one -> one.name().equals(name)).findFirst();
    }

    /** Whether whoever asks may read any. */
    boolean isReadable(Whole whole) {
        return rights.may(whole.reads());
    }

    /**
     * One that whoever asks may read.
     *
     * @throws NotFoundException where there is none of this name, or they do not see this one
     * @throws ForbiddenException where they may read none
     */
    Whole readable(String name, UUID id) {
        Whole whole = find(name).orElseThrow(() -> new NotFoundException("kind of records", name));
        if (!isReadable(whole)) {
            throw new ForbiddenException();
        }
        sight.requireSeenAt("/api/" + name + "/" + id);
        return whole;
    }

    /** Its page, or that of what is kept of it for whoever may not open the other. */
    String pageOf(Whole whole, UUID id) {
        return rights.mayOpen(whole.page()) ? whole.pageOf(id) : "/kept/" + whole.name() + "/" + id;
    }

    /** The whole itself, as whoever asks sees it. */
    JsonNode told(Whole whole, UUID id) {
        return mapper.valueToTree(whole.reader().apply(id));
    }

    /** Kinds that whoever asks may read. */
    List<KeptKind> kinds(Whole whole) {
        return whole.kinds().stream().filter(kind -> rights.may(kind.reads())).toList();
    }

    /**
     * A kind that whoever asks may read.
     *
     * @throws NotFoundException where there is none of this name
     * @throws ForbiddenException where they may not
     */
    KeptKind kind(Whole whole, String name) {
        KeptKind kind = whole.findKind(name).orElseThrow(() -> new NotFoundException("kind of records", name));
        if (!rights.may(kind.reads())) {
            throw new ForbiddenException();
        }
        return kind;
    }

    /**
     * Something that whoever asks may do with records of a kind.
     *
     * @throws NotFoundException where there is none of this name
     * @throws ForbiddenException where they may not
     */
    Deed<?> deed(KeptKind kind, String name) {
        Deed<?> deed = kind.findDeed(name).orElseThrow(() -> new NotFoundException("act", name));
        if (!rights.may(deed.act().operation())) {
            throw new ForbiddenException();
        }
        return deed;
    }

    List<Deed<?>> usable(KeptKind kind) {
        return kind.deeds().stream()
                .filter(deed -> rights.may(deed.act().operation()))
                .toList();
    }

    /** Records of a kind that whoever asks sees. */
    KeptKind.Listed seen(Whole whole, KeptKind kind, UUID id, @Nullable UUID before) {
        KeptKind.Listed found = kind.of(id, before, mapper);
        String base = base(whole, kind);
        if (base == null) {
            return found;
        }
        Set<UUID> seen = Set.copyOf(sight.onlySeenAt(
                base,
                found.items().stream().map(one -> one.ids().in()).distinct().toList()));
        return new KeptKind.Listed(
                found.items().stream()
                        .filter(one -> seen.contains(one.ids().in()))
                        .toList(),
                found.next());
    }

    /** @throws NotFoundException where the whole has none of this identifier that they see */
    Kept require(Whole whole, KeptKind kind, UUID id, UUID record) {
        Kept kept = find(whole, kind, id, record).orElseThrow(() -> new NotFoundException(kind.name(), record));
        String base = base(whole, kind);
        if (base != null) {
            sight.requireSeenAt(base + "/" + kept.ids().in());
        }
        return kept;
    }

    private Optional<Kept> find(Whole whole, KeptKind kind, UUID id, UUID record) {
        UUID before = null;
        do {
            KeptKind.Listed some = seen(whole, kind, id, before);
            Optional<Kept> found = some.items().stream()
                    .filter(one -> one.ids().id().equals(record))
                    .findFirst();
            if (found.isPresent()) {
                return found;
            }
            before = some.next();
        } while (before != null);
        return Optional.empty();
    }

    /** Whether whoever asks may add photographs to it. */
    boolean takesPictures(Whole whole) {
        return Set.of("cases", "incidents").contains(whole.name())
                && rights.may("POST /api/" + whole.name() + "/{id}/photographs");
    }

    void addPicture(Whole whole, UUID id, PhotographService.SentPhotograph picture) {
        if (whole.name().equals("cases")) {
            photographs.addToCase(id, picture);
        } else {
            photographs.addToIncident(id, picture);
        }
    }

    /** Whether whoever asks may open photographs as they came. */
    boolean opensOriginals() {
        return rights.may("POST /api/photographs/{id}/original-openings");
    }

    OriginalService.OpenedOriginal openOriginal(UUID photograph, String reason) {
        return originals.open(photograph, reason);
    }

    /** The identifier by which a record is told to have changed. */
    static UUID tagged(Whole whole, Act<?> act, KeptKind.Ids ids) {
        return whole.tag().equals(act.tag()) ? ids.whole() : ids.in();
    }

    /** Where the API has the records, if that is another place than the whole. */
    private static @Nullable String base(Whole whole, KeptKind kind) {
        for (Deed<?> deed : kind.deeds()) {
            String base = KeptKind.base(deed.act().operation());
            if (base != null && !base.equals("/api/" + whole.name())) {
                return base;
            }
        }
        return null;
    }
}
