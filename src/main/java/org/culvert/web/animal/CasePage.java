package org.culvert.web.animal;

import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.taxon.CautionService.CautionView;
import org.culvert.web.HolderNames;
import org.culvert.web.kept.KeptWays;
import org.jspecify.annotations.Nullable;

/**
 * One case as one asker sees it.
 *
 * @param waits what has to be decided next, the most pressing first
 * @param sensitive whether its place is kept rough for others
 * @param incidentNumber null where the asker may not see the incident
 * @param astray errors of a form that is not here any more
 * @param refused the form that was not taken, to be found again
 * @param links what else there is of it
 * @param ways to the forms that put its records right
 */
public record CasePage(
        UUID id,
        String title,
        CaseView told,
        CaseParts parts,
        CaseForms forms,
        HolderNames names,
        CaseTongue say,
        List<CaseWait> waits,
        CustodyPicture chain,
        @Nullable String where,
        List<CautionView> cautions,
        boolean sensitive,
        boolean mayAsk,
        @Nullable Long incidentNumber,
        Links links,
        KeptWays ways,
        List<FieldError> astray,
        @Nullable String refused,
        @Nullable String kept,
        String key) {

    /** Which ways on the asker has. */
    public record Links(
            boolean desk,
            boolean releaseArea,
            boolean careDay,
            boolean audit,
            boolean auditAsksWhy,
            boolean carers,
            boolean kept) {}
}
