package org.culvert.release.rules;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * How a piece of land lies to an origin and to a site, both known to a circle only.
 *
 * @param originIn whether the origin is in it: certainly, certainly not, or nobody can tell
 * @param siteIn whether the site is
 * @param metresFromSite from the site's centre to its nearest point, 0 inside
 */
public record LandSaid(
        Land.Kind kind,
        String name,
        String source,
        @Nullable LocalDate until,
        Verdict originIn,
        Verdict siteIn,
        double metresFromSite) {}
