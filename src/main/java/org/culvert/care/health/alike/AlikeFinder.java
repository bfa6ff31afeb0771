package org.culvert.care.health.alike;

import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** Finds what a new report is alike with. */
public final class AlikeFinder {
    private final Threshold threshold;

    public AlikeFinder(Threshold threshold) {
        this.threshold = threshold;
    }

    /**
     * Reports of the groups that a new one is in, itself included; empty where it is in none. All its groups share it, so that
     * they are one.
     *
     * @param added the new one
     * @param known those that may be near it or near one that is, itself included
     * @param isGrouped whether a report is in a group already; of a middle that was one before, that is enough to know
     */
    public Set<UUID> groupOf(Report added, Collection<Report> known, Predicate<UUID> isGrouped) {
        Set<UUID> group = new LinkedHashSet<>();
        for (Report middle : near(added, known)) {
            if (!middle.id().equals(added.id()) && isGrouped.test(middle.id()) && isMiddle(middle, known, added.id())) {
                group.add(middle.id());
                group.add(added.id());
            } else if (isMiddle(middle, known, null)) {
                near(middle, known).forEach(report -> group.add(report.id()));
            }
        }
        return group;
    }

    private List<Report> near(Report middle, Collection<Report> known) {
        return known.stream().filter(report -> threshold.isNear(middle, report)).toList();
    }

    /** Looks no further once there are enough. */
    private boolean isMiddle(Report middle, Collection<Report> known, @Nullable UUID without) {
        Set<UUID> animals = new HashSet<>();
        for (Report report : known) {
            if (!report.id().equals(without) && threshold.isNear(middle, report)) {
                animals.add(report.animalId());
                if (animals.size() >= threshold.smallestCount()) {
                    return true;
                }
            }
        }
        return false;
    }
}
