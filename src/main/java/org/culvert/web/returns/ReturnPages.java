package org.culvert.web.returns;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.exchange.annualreturn.AnnualReturnService;
import org.culvert.exchange.annualreturn.AnnualReturnService.AnnualReturnView;
import org.culvert.exchange.annualreturn.ReturnChanges;
import org.culvert.exchange.annualreturn.ReturnDraft;
import org.culvert.exchange.annualreturn.ReturnDraft.ReturnDoubt;
import org.culvert.exchange.annualreturn.ReturnDraft.ReturnLeftOut;
import org.culvert.exchange.annualreturn.SupplementService;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.jspecify.annotations.Nullable;

/** Shows returns. */
@ApplicationScoped
class ReturnPages {
    private static final int SHOWN = 50;

    /** A signed return and whose it is. */
    public record Signed(AnnualReturnView view, String holder) {}

    /** A case by its number, and where it can be looked at; the address is empty where the asker may not. */
    public record CaseLink(long number, String address) {}

    /** Something that counts only once somebody has cleared it up. */
    public record Doubt(ReturnDoubt doubt, List<CaseLink> cases) {}

    /** Something that does not count. */
    public record LeftOut(ReturnLeftOut what, List<CaseLink> cases) {}

    /** What stands in a form. */
    public record Typed(String name, String capacity, String signedOn, String reason) {
        static final Typed NOTHING = new Typed("", "", "", "");
    }

    private final Template list;
    private final Template drafted;
    private final Template signed;
    private final AnnualReturnService returns;
    private final SupplementService supplements;
    private final ReturnHolders holders;
    private final CaseService cases;

    ReturnPages(
            @Location("returns.html") Template list,
            @Location("returns-draft.html") Template drafted,
            @Location("returns-one.html") Template signed,
            AnnualReturnService returns,
            SupplementService supplements,
            ReturnHolders holders,
            CaseService cases) {
        this.list = list;
        this.drafted = drafted;
        this.signed = signed;
        this.returns = returns;
        this.supplements = supplements;
        this.holders = holders;
        this.cases = cases;
    }

    TemplateInstance list(@Nullable UUID before) {
        Page<AnnualReturnView> page = returns.listReturns(SHOWN, before);
        Map<String, String> names = holders.all();
        return list.data(
                        "signed",
                        page.items().stream()
                                .map(view -> new Signed(view, name(view, names)))
                                .toList())
                .data("next", page.next())
                .data("periods", holders.periods(""))
                .data("holders", holders.choices(""));
    }

    TemplateInstance draft(UUID form, LocalDate from, String holder, @Nullable Typed typed, List<FieldError> errors) {
        ReturnDraft draft = returns.draft(
                form, ReturnHolders.idOf("member", holder), ReturnHolders.idOf("organisation", holder), from);
        List<Doubt> doubts = draft.doubts().stream()
                .map(doubt -> new Doubt(doubt, links(doubt.cases())))
                .toList();
        List<LeftOut> leftOut = draft.leftOut().stream()
                .map(what -> new LeftOut(what, links(what.cases())))
                .toList();
        return drafted.data("draft", draft)
                .data("doubts", doubts)
                .data("leftOut", leftOut)
                .data("period", form + ":" + from)
                .data("holder", holder)
                .data("over", draft.to().isBefore(holders.today()))
                .data("typed", typed == null ? new Typed("", "", holders.today().toString(), "") : typed)
                .data("errors", errors)
                .data("key", UUID.randomUUID().toString());
    }

    TemplateInstance one(UUID id, @Nullable Typed typed, List<FieldError> errors) {
        AnnualReturnView view = returns.getReturn(id);
        ReturnChanges changes = supplements.changes(id);
        return signed.data("one", new Signed(view, name(view, holders.all())))
                .data("supplements", supplements.listSupplements(id))
                .data("changes", changes)
                .data(
                        "changed",
                        changes.lines().size()
                                + changes.transfers().size()
                                + changes.doubts().size()
                                + changes.leftOut().size())
                .data("typed", typed == null ? new Typed("", "", holders.today().toString(), "") : typed)
                .data("errors", errors)
                .data("key", UUID.randomUUID().toString());
    }

    private static String name(AnnualReturnView view, Map<String, String> names) {
        UUID member = view.memberId();
        UUID organisation = view.organisationId();
        String key = member != null
                ? ReturnHolders.member(member)
                : organisation != null ? ReturnHolders.organisation(organisation) : "";
        return names.getOrDefault(key, "");
    }

    private List<CaseLink> links(List<Long> numbers) {
        List<CaseLink> links = new ArrayList<>();
        for (long number : numbers) {
            links.add(new CaseLink(
                    number, cases.findByNumber(number).map(id -> "/cases/" + id).orElse("")));
        }
        return links;
    }
}
