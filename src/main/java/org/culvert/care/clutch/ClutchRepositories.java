package org.culvert.care.clutch;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** One repository for each entity. */
final class ClutchRepositories {
    private ClutchRepositories() {}

    @ApplicationScoped
    static class Clutches implements PanacheRepositoryBase<Clutch, UUID> {}

    @ApplicationScoped
    static class EggRecoveries implements PanacheRepositoryBase<EggRecovery, UUID> {}

    @ApplicationScoped
    static class ClutchCustodyLinks implements PanacheRepositoryBase<ClutchCustody, UUID> {}

    @ApplicationScoped
    static class Hatchings implements PanacheRepositoryBase<Hatching, UUID> {}

    @ApplicationScoped
    static class Failures implements PanacheRepositoryBase<FailedEggs, UUID> {}

    @ApplicationScoped
    static class InsideReadings implements PanacheRepositoryBase<EggsLeftInside, UUID> {}

    @ApplicationScoped
    static class SetUps implements PanacheRepositoryBase<SetUp, UUID> {}

    @ApplicationScoped
    static class Candlings implements PanacheRepositoryBase<Candling, UUID> {}

    @ApplicationScoped
    static class TemperatureRecords implements PanacheRepositoryBase<TemperatureRecord, UUID> {}
}
