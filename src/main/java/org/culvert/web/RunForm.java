package org.culvert.web;

import jakarta.ws.rs.FormParam;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.AlsoAsk;
import org.culvert.hotspot.ChanceKind;
import org.culvert.hotspot.RunEntry;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** The form that asks for a run, as texts, so that what was typed stands there again beside what is wrong with it. */
public class RunForm {
    @FormParam("periodFrom")
    @Nullable
    String periodFrom;

    @FormParam("periodTo")
    @Nullable
    String periodTo;

    @FormParam("months")
    @Nullable
    List<String> months;

    @FormParam("seasonWindow")
    @Nullable
    String seasonWindow;

    @FormParam("taxonGroup")
    @Nullable
    String taxonGroup;

    @FormParam("owner")
    @Nullable
    String owner;

    @FormParam("sigmaMetres")
    @Nullable
    String sigmaMetres;

    @FormParam("reachMetres")
    @Nullable
    String reachMetres;

    @FormParam("simulations")
    @Nullable
    String simulations;

    @FormParam("seed")
    @Nullable
    String seed;

    @FormParam("chance")
    @Nullable
    String chance;

    @FormParam("alsoAsk")
    @Nullable
    List<String> alsoAsk;

    /** A form that is filled in beforehand. */
    static RunForm filled(
            @Nullable String periodFrom,
            @Nullable String periodTo,
            @Nullable String taxonGroup,
            @Nullable String seasonWindow) {
        var form = new RunForm();
        form.periodFrom = periodFrom;
        form.periodTo = periodTo;
        form.taxonGroup = taxonGroup;
        form.seasonWindow = seasonWindow;
        return form;
    }

    /** Whether anything was filled in. */
    public boolean isFilled() {
        return periodFrom != null || periodTo != null || taxonGroup != null || seasonWindow != null;
    }

    public String periodFrom() {
        return shown(periodFrom, "");
    }

    public String periodTo() {
        return shown(periodTo, "");
    }

    public String owner() {
        return shown(owner, "");
    }

    public String sigmaMetres() {
        return shown(sigmaMetres, "");
    }

    public List<ChanceKind> chances() {
        return ChanceKind.list();
    }

    public String reachMetres() {
        return shown(reachMetres, "");
    }

    public String simulations() {
        return shown(simulations, "999");
    }

    public String seed() {
        return shown(seed, "1");
    }

    public String taxonGroup() {
        return shown(taxonGroup, "");
    }

    public String seasonWindow() {
        return shown(seasonWindow, "");
    }

    public String chance() {
        return shown(chance, "");
    }

    /** The months to tick, with their names. */
    public List<MonthBox> monthBoxes() {
        return Typed.monthBoxes(months);
    }

    /** One month to tick. */
    public record MonthBox(int number, String name, boolean ticked) {}

    /** What else may be asked, to tick. */
    public List<AskBox> askBoxes() {
        return AlsoAsk.list().stream()
                .map(ask -> new AskBox(ask.key(), ask.words(), alsoAsk != null && alsoAsk.contains(ask.key())))
                .toList();
    }

    /** One thing to ask besides. */
    public record AskBox(String key, String words, boolean ticked) {}

    private static String shown(@Nullable String text, String usual) {
        return text == null ? usual : text;
    }

    /**
     * The run that is asked for.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    RunEntry entry() {
        List<FieldError> errors = new ArrayList<>();
        LocalDate from = Typed.read("periodFrom", periodFrom, LocalDate::parse, "a day such as 2024-07-01", errors);
        LocalDate to = Typed.read("periodTo", periodTo, LocalDate::parse, "a day such as 2026-06-30", errors);
        Double reach = Typed.read("reachMetres", reachMetres, Double::valueOf, "metres, 20 to 5000", errors);
        Double sigma = Typed.read("sigmaMetres", sigmaMetres, Double::valueOf, "metres, 10 to 2500", errors);
        Integer sets = Typed.read("simulations", simulations, Integer::valueOf, "a whole number, 19 to 99999", errors);
        Long number = Typed.read("seed", seed, Long::valueOf, "a whole number", errors);
        List<Integer> ticked = new ArrayList<>();
        for (String month : months == null ? List.<String>of() : months) {
            Integer read = Typed.read("months", month, Integer::valueOf, "1 to 12", errors);
            if (read != null) {
                ticked.add(read);
            }
        }
        check(errors, reach == null || (reach >= 20 && reach <= 5000), "reachMetres", "metres, 20 to 5000");
        check(errors, sigma == null || (sigma >= 10 && sigma <= 2500), "sigmaMetres", "metres, 10 to 2500");
        check(errors, sets == null || (sets >= 19 && sets <= 99_999), "simulations", "a whole number, 19 to 99999");
        check(errors, ticked.stream().allMatch(month -> month >= 1 && month <= 12), "months", "1 to 12");
        if (from == null) {
            required(errors, "periodFrom");
        }
        if (to == null) {
            required(errors, "periodTo");
        }
        if (!errors.isEmpty() || from == null || to == null) {
            throw new InvalidException(errors);
        }
        return new RunEntry(
                from,
                to,
                ticked.isEmpty() ? null : ticked,
                Typed.given(seasonWindow),
                Typed.given(taxonGroup),
                Typed.given(owner),
                reach,
                sigma,
                null,
                sets,
                number,
                Typed.given(chance),
                null,
                null,
                null,
                null,
                alsoAsk == null || alsoAsk.isEmpty() ? null : alsoAsk);
    }

    private static void required(List<FieldError> errors, String field) {
        if (errors.stream().noneMatch(error -> error.field().equals(field))) {
            errors.add(new FieldError(field, "A day is needed.", "a day such as 2024-07-01", null));
        }
    }

    private static void check(List<FieldError> errors, boolean right, String field, String wanted) {
        if (!right) {
            errors.add(new FieldError(field, "This is out of range.", wanted, null));
        }
    }
}
