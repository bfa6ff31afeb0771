package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** Tells of the works on a stretch of road. */
@ApplicationScoped
public class StretchWorksService {
    /** Whole years before and after, as works are asked about where nobody says otherwise. */
    private static final int USUAL_YEARS = 5;

    private final WorksService works;
    private final EffectService effects;

    StretchWorksService(WorksService works, EffectService effects) {
        this.works = works;
        this.effects = effects;
    }

    /**
     * Works that reach onto it, the first built first, each with its effect on a group of animals.
     *
     * @throws InvalidException where the current roads have no such stretch
     */
    public List<StretchWorks> tell(String road, double from, double to, @Nullable String taxonGroup) {
        List<StretchWorks> told = new ArrayList<>();
        for (WorksService.WorksView one : works.listOn(road, from, to)) {
            told.add(effect(one, taxonGroup));
        }
        return told;
    }

    private StretchWorks effect(WorksService.WorksView one, @Nullable String taxonGroup) {
        try {
            return new StretchWorks(
                    one,
                    effects.effect(one.id(), taxonGroup, null, null, USUAL_YEARS, USUAL_YEARS, null, null, List.of()),
                    null);
        } catch (ConflictException notYet) {
            return new StretchWorks(one, null, notYet.getMessage());
        }
    }
}
