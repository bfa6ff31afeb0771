package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A release that is recorded. */
public class ReleaseForm {
    @FormParam("assessmentIds")
    @Nullable
    List<String> assessmentIds;

    @FormParam("withAssessmentIds")
    @Nullable
    List<String> withAssessmentIds;

    @FormParam("at")
    @Nullable
    String at;

    @FormParam("approvedBy")
    @Nullable
    String approvedBy;

    @FormParam("releasedBy")
    @Nullable
    String releasedBy;

    @FormParam("weather")
    @Nullable
    String weather;

    @FormParam("light")
    @Nullable
    String light;

    @FormParam("manner")
    @Nullable
    String manner;

    @FormParam("supportFeedingUntil")
    @Nullable
    String supportFeedingUntil;

    @FormParam("othersPresent")
    @Nullable
    String othersPresent;

    @FormParam("raisedTogether")
    @Nullable
    String raisedTogether;

    @FormParam("warningsRead")
    @Nullable
    List<String> warningsRead;

    @FormParam("overrideKey")
    @Nullable
    String overrideKey;

    @FormParam("overrideReason")
    @Nullable
    String overrideReason;

    @FormParam("overrideAgreed")
    @Nullable
    String overrideAgreed;

    @FormParam("permitKey")
    @Nullable
    String permitKey;

    @FormParam("permitNumber")
    @Nullable
    String permitNumber;

    @FormParam("permitIssuedBy")
    @Nullable
    String permitIssuedBy;

    @FormParam("key")
    @Nullable
    String key;
}
