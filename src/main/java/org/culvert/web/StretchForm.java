package org.culvert.web;

import jakarta.ws.rs.QueryParam;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.works.StretchQuestion;
import org.culvert.hotspot.works.WorksKind;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** The form that asks about a stretch, as texts, so that what was typed stands there again. */
public class StretchForm {
    private static final int MOST_ROAD = 300;

    @QueryParam("road")
    @Nullable
    String road;

    @QueryParam("fromChainageMetres")
    @Nullable
    String fromChainageMetres;

    @QueryParam("toChainageMetres")
    @Nullable
    String toChainageMetres;

    @QueryParam("yearFrom")
    @Nullable
    String yearFrom;

    @QueryParam("yearTo")
    @Nullable
    String yearTo;

    @QueryParam("taxonGroup")
    @Nullable
    String taxonGroup;

    @QueryParam("seasonWindow")
    @Nullable
    String seasonWindow;

    @QueryParam("months")
    @Nullable
    List<String> months;

    @QueryParam("chosenBeforeLooking")
    @Nullable
    String chosenBeforeLooking;

    @QueryParam("worksKind")
    @Nullable
    String worksKind;

    @QueryParam("reductionPercent")
    @Nullable
    String reductionPercent;

    @QueryParam("currency")
    @Nullable
    String currency;

    @QueryParam("priceYear")
    @Nullable
    String priceYear;

    @QueryParam("costPerCollision")
    @Nullable
    String costPerCollision;

    @QueryParam("costSource")
    @Nullable
    String costSource;

    @QueryParam("building")
    @Nullable
    String building;

    @QueryParam("upkeepPerYear")
    @Nullable
    String upkeepPerYear;

    @QueryParam("discountPercent")
    @Nullable
    String discountPercent;

    @QueryParam("lifeYears")
    @Nullable
    String lifeYears;

    @QueryParam("avoidedLowPercent")
    @Nullable
    String avoidedLowPercent;

    @QueryParam("avoidedPercent")
    @Nullable
    String avoidedPercent;

    @QueryParam("avoidedHighPercent")
    @Nullable
    String avoidedHighPercent;

    private final List<FieldError> errors = new ArrayList<>();

    /** What was typed into a field, or nothing. */
    public String typed(String field) {
        String text = switch (field) {
            case "road" -> road;
            case "fromChainageMetres" -> fromChainageMetres;
            case "toChainageMetres" -> toChainageMetres;
            case "yearFrom" -> yearFrom;
            case "yearTo" -> yearTo;
            case "taxonGroup" -> taxonGroup;
            case "seasonWindow" -> seasonWindow;
            case "chosenBeforeLooking" -> chosenBeforeLooking;
            case "worksKind" -> worksKind;
            case "reductionPercent" -> reductionPercent;
            case "currency" -> currency;
            case "priceYear" -> priceYear;
            case "costPerCollision" -> costPerCollision;
            case "costSource" -> costSource;
            case "building" -> building;
            case "upkeepPerYear" -> upkeepPerYear;
            case "discountPercent" -> discountPercent;
            case "lifeYears" -> lifeYears;
            case "avoidedLowPercent" -> avoidedLowPercent;
            case "avoidedPercent" -> avoidedPercent;
            case "avoidedHighPercent" -> avoidedHighPercent;
            default -> throw new IllegalArgumentException("there is no field " + field);
        };
        return text == null ? "" : text;
    }

    /** The months to tick, with their names. */
    public List<RunForm.MonthBox> monthBoxes() {
        return Typed.monthBoxes(months);
    }

    /** Whether anything was asked. */
    boolean isAsked() {
        return Typed.given(road) != null
                || Typed.given(fromChainageMetres) != null
                || Typed.given(toChainageMetres) != null;
    }

    /**
     * The question.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    StretchQuestion question() {
        errors.clear();
        String name = Typed.given(road);
        if (name == null || name.length() > MOST_ROAD) {
            errors.add(new FieldError("road", "A road is needed.", "the label of a road as the network has it", null));
        }
        Double from = needed("fromChainageMetres", fromChainageMetres, -1e6, 1e7, "metres along the road");
        Double to = needed("toChainageMetres", toChainageMetres, -1e6, 1e7, "metres along the road");
        Integer first = Typed.read("yearFrom", yearFrom, Integer::valueOf, "a year such as 2021", errors);
        Integer last = Typed.read("yearTo", yearTo, Integer::valueOf, "a year such as 2025", errors);
        List<Integer> ticked = new ArrayList<>();
        for (String month : months == null ? List.<String>of() : months) {
            Integer number = Typed.read("months", month, Integer::valueOf, "1 to 12", errors);
            if (number != null) {
                ticked.add(number);
            }
        }
        WorksKind kind =
                Typed.read("worksKind", worksKind, WorksKind::valueOf, "one of the kinds that are listed", errors);
        Double percent =
                Typed.read("reductionPercent", reductionPercent, Double::valueOf, "per cent, 1 to 100", errors);
        require(percent == null || (percent >= 1 && percent <= 100), "reductionPercent", "per cent, 1 to 100");
        StretchQuestion.BusinessCase worth = businessCase();
        if (!errors.isEmpty() || name == null || from == null || to == null) {
            throw new InvalidException(errors);
        }
        String chosen = Typed.given(chosenBeforeLooking);
        return new StretchQuestion(
                name,
                from,
                to,
                first,
                last,
                Typed.given(taxonGroup),
                ticked.isEmpty() ? null : ticked,
                Typed.given(seasonWindow),
                chosen == null ? null : Boolean.valueOf(chosen.equals("yes")),
                null,
                kind,
                percent,
                worth);
    }

    /** Where a cost is given, all other figures are needed: none of them has a usual value. */
    private StretchQuestion.@Nullable BusinessCase businessCase() {
        if (Typed.given(costPerCollision) == null && Typed.given(building) == null) {
            return null;
        }
        String money = Typed.given(currency);
        require(money != null && money.length() <= 20, "currency", "such as AUD");
        String source = Typed.given(costSource);
        require(source != null && source.length() <= 1000, "costSource", "who says so");
        Double year = needed("priceYear", priceYear, 1900, 2200, "a year such as 2025");
        Double cost = needed("costPerCollision", costPerCollision, 0, 1e12, "an amount, 0 or more");
        Double built = needed("building", building, 0, 1e15, "an amount, 0 or more");
        Double upkeep = needed("upkeepPerYear", upkeepPerYear, 0, 1e15, "an amount, 0 or more");
        Double discount = needed("discountPercent", discountPercent, -50, 99, "per cent a year, such as 4");
        Double life = needed("lifeYears", lifeYears, 1, 200, "years, 1 to 200");
        Double low = needed("avoidedLowPercent", avoidedLowPercent, -1000, 100, "per cent, at most 100");
        Double best = needed("avoidedPercent", avoidedPercent, -1000, 100, "per cent, at most 100");
        Double high = needed("avoidedHighPercent", avoidedHighPercent, -1000, 100, "per cent, at most 100");
        if (money == null
                || source == null
                || year == null
                || cost == null
                || built == null
                || upkeep == null
                || discount == null
                || life == null
                || low == null
                || best == null
                || high == null) {
            return null;
        }
        return new StretchQuestion.BusinessCase(
                money,
                year.intValue(),
                null,
                null,
                new StretchQuestion.Bounds(low / 100, best / 100, high / 100),
                List.of(new StretchQuestion.UnitCost("a collision", known(cost), source)),
                known(built),
                known(upkeep),
                null,
                known(discount / 100),
                life.intValue());
    }

    private static StretchQuestion.Bounds known(double value) {
        return new StretchQuestion.Bounds(null, value, null);
    }

    private @Nullable Double needed(String field, @Nullable String text, double least, double most, String wanted) {
        Double value = Typed.read(field, text, Double::valueOf, wanted, errors);
        if (Typed.given(text) == null) {
            errors.add(new FieldError(field, "A figure is needed.", wanted, null));
        } else if (value != null) {
            require(value >= least && value <= most, field, wanted);
        }
        return value;
    }

    private void require(boolean right, String field, String wanted) {
        if (!right) {
            errors.add(new FieldError(field, "This is missing or out of range.", wanted, null));
        }
    }
}
