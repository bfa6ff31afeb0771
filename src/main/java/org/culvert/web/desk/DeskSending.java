package org.culvert.web.desk;

import jakarta.ws.rs.FormParam;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.culvert.dispatch.DispatchService.AttendanceEntry;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** Who is to go, as it is ticked. */
public class DeskSending {
    @FormParam("lead")
    @Nullable
    String lead;

    @FormParam("helper")
    @Nullable
    List<String> helpers;

    @FormParam("policeReference")
    @Nullable
    String policeReference;

    @FormParam("overrideReason")
    @Nullable
    String overrideReason;

    @FormParam("key")
    @Nullable
    String key;

    /** {@code ask} the gate, or {@code send} them. */
    @FormParam("act")
    @Nullable
    String act;

    AttendanceEntry entry() {
        String leads = Typed.given(lead);
        if (leads == null) {
            throw InvalidException.of("lead", "It is not said who leads.", "one of those who can go");
        }
        UUID leader = Paging.uuid("lead", leads);
        List<UUID> with = new ArrayList<>();
        for (String helper : helpers == null ? List.<String>of() : helpers) {
            UUID one = Paging.uuid("helper", helper);
            if (!one.equals(leader) && !with.contains(one)) {
                with.add(one);
            }
        }
        return new AttendanceEntry(
                leader, with, null, upTo200("policeReference", policeReference), Typed.given(overrideReason));
    }

    boolean isLead(UUID member) {
        return member.toString().equals(lead);
    }

    boolean isHelper(UUID member) {
        return helpers != null && helpers.contains(member.toString());
    }

    private static @Nullable String upTo200(String field, @Nullable String typed) {
        String text = Typed.given(typed);
        if (text != null && text.length() > 200) {
            throw InvalidException.of(field, "This is too long.", "at most 200 characters");
        }
        return text;
    }
}
