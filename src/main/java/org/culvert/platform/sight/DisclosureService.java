package org.culvert.platform.sight;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.Optional;
import java.util.UUID;
import org.culvert.platform.ledger.TagSource;
import org.jspecify.annotations.Nullable;

/** Keeps how finely figures leave the network, which is data. */
@ApplicationScoped
public class DisclosureService {
    /**
     * How finely figures leave the network.
     *
     * @param smallestCount counts below this are not shown to roads authorities
     * @param publicDelayDays days for which nothing that happened is public
     * @param publicHotspots whether everybody may have the hotspots of the latest annual run as a layer; no when left out
     * @param source why these
     * @param archiveLicence address of the licence under which archives of occurrences go out; left out: none is given
     * @param archiveContact an office's address for letters about them
     */
    public record DisclosureSettingsView(
            @Min(1) @Max(1000) int smallestCount,
            @Min(0) @Max(3660) int publicDelayDays,
            boolean publicHotspots,
            @NotBlank @Size(max = 2000) String source,

            @Nullable
            @Size(max = 500)
            @Pattern(
                    regexp = "https?://[^\\s]+",
                    message = "must be an address such as https://creativecommons.org/licenses/by/4.0/")
            String archiveLicence,

            @Nullable
            @Size(max = 200)
            @Pattern(regexp = "[^\\s@]+@[^\\s@]+", message = "must be an address for letters such as data@example.org")
            String archiveContact) {}

    @ApplicationScoped
    static class Settings implements PanacheRepositoryBase<DisclosureSettings, UUID> {}

    @ApplicationScoped
    static class Tag implements TagSource {
        private final DisclosureService service;
        private final Settings settings;

        Tag(DisclosureService service, Settings settings) {
            this.service = service;
            this.settings = settings;
        }

        @Override
        public String kind() {
            return "disclosure-settings";
        }

        @Override
        public void lock(String id) {
            settings.findAll().withLock(LockModeType.PESSIMISTIC_WRITE).list();
        }

        @Override
        public Optional<Object> show(String id) {
            return Optional.of(service.settings());
        }
    }

    private final Settings settings;

    DisclosureService(Settings settings) {
        this.settings = settings;
    }

    @Transactional
    public DisclosureSettingsView settings() {
        return view(only());
    }

    @Transactional
    public DisclosureSettingsView settle(DisclosureSettingsView wanted) {
        DisclosureSettings row = only();
        row.change(
                wanted.smallestCount(),
                wanted.publicDelayDays(),
                wanted.publicHotspots(),
                wanted.source(),
                wanted.archiveLicence(),
                wanted.archiveContact());
        settings.flush();
        return view(row);
    }

    private DisclosureSettings only() {
        return settings.findAll()
                .firstResultOptional()
                .orElseThrow(() -> new IllegalStateException("the migrations made no settings of disclosure"));
    }

    private static DisclosureSettingsView view(DisclosureSettings row) {
        return new DisclosureSettingsView(
                row.smallestCount,
                row.publicDelayDays,
                row.publicHotspots,
                row.source,
                row.archiveLicence,
                row.archiveContact);
    }
}
