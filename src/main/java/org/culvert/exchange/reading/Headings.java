package org.culvert.exchange.reading;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Which column of a table may hold what: proposed from the words of its heading and from how its cells can be read, and decided
 * by whoever brings the file. Terms of Darwin Core count as they are.
 */
public final class Headings {
    /** What a column may hold. */
    public enum Field {
        day(
                Kind.day,
                "eventdate date day datum fecha data dateofincident incidentdate reportdate datefound datereported observed when wann cuando quand datum"),
        time(Kind.any, "eventtime time hour uhrzeit hora heure zeit timeofday"),
        year(Kind.number, "year jahr ano año annee jaar"),
        month(Kind.any, "month monat mes mois maand"),
        dayOfMonth(Kind.number, "day dayofmonth tag dia jour dag"),
        decimalLatitude(Kind.degrees, "decimallatitude latitude lat y breite latitud ycoord gpslat gpss gpsn"),
        decimalLongitude(
                Kind.degrees,
                "decimallongitude longitude long lon lng x lange laenge longitud xcoord gpslong gpslon gpse gpsw"),
        coordinates(
                Kind.any,
                "verbatimcoordinates coordinates coords latlong latlon gps position koordinaten wkt geom geometry thegeom shape"),
        easting(Kind.metres, "easting x xcoord rechtswert east utme utmx mgae"),
        northing(Kind.metres, "northing y ycoord hochwert north utmn utmy mgan"),
        geodeticDatum(Kind.any, "geodeticdatum"),
        coordinateUncertaintyInMeters(
                Kind.number, "coordinateuncertaintyinmeters uncertainty accuracy precision gpsaccuracy"),
        road(Kind.any, "road roadname route rte street highway strasse strase rue carretera roadnumber routename via"),
        crossingRoad(Kind.any, "crossroad crossstreet intersection junction nearestcrossroad"),
        chainage(
                Kind.any,
                "chainage km kilometre kilometer kilometerpoint pk milepost milepoint postmile mp hm stationierung kilometrage chainagekm distance reference"),
        direction(Kind.any, "direction carriageway heading side lane richtung dir"),
        locality(Kind.any, "locality location place address ort lugar lieu site wo where"),
        scientificName(
                Kind.any,
                "scientificname species sp spp taxon animal speciesname latinname tier tierart wildart art what especie espece"),
        vernacularName(Kind.any, "vernacularname commonname common englishname trivialname nomvernaculaire"),
        occurrenceStatus(Kind.any, "occurrencestatus presence presenceabsence detected"),
        individualCount(
                Kind.number,
                "individualcount count number anzahl quantity qty no n nr num nos numanimals howmany animals adults"),
        youngCount(Kind.number, "youngcount young joeys juveniles pouchyoung hatchlings jungtiere"),
        vitality(Kind.any, "vitality condition alive dead status fate deadalive zustand outcome"),
        lifeStage(Kind.any, "lifestage age ageclass stage"),
        sex(Kind.any, "sex gender geschlecht sexo sexe"),
        cause(Kind.any, "cause reason causeofinjury ursache encountertype"),
        identifier(
                Kind.any,
                "occurrenceid catalognumber id objectid oid fid gid recordid recordnumber recordno caseno caseid incidentid incidentno jobno ref refno"),
        remarks(Kind.any, "occurrenceremarks remarks comments comment notes note description bemerkung observations");

        private final Kind kind;
        private final String first;
        private final Set<String> words;

        Field(Kind kind, String words) {
            this.kind = kind;
            this.first = words.split(" ", 2)[0];
            this.words = Set.copyOf(Arrays.asList(words.split(" ")));
        }
    }

    private enum Kind {
        any,
        number,
        degrees,
        metres,
        day
    }

    /**
     * A proposal.
     *
     * @param column index of the column
     * @param because in words, for whoever decides
     */
    public record Proposal(Field field, int column, String because) {}

    /** Enough of the cells must be what the field asks for, or the heading lies. */
    private static final double MOST = 0.8;

    /** Of days and of numbers of animals fewer: files have years alone and words among them. */
    private static final double MOST_DAYS = 0.6;

    private Headings() {}

    /** One proposal a field at most, and one a column; the surest first come first served. */
    public static List<Proposal> propose(List<String> headings, List<ColumnWays> ways) {
        if (headings.size() != ways.size()) {
            throw new IllegalArgumentException("each column has a heading");
        }
        record Scored(int score, Proposal proposal) {}
        List<Scored> scored = new ArrayList<>();
        for (int column = 0; column < headings.size(); column++) {
            Plain heading = Plain.of(headings.get(column));
            boolean pairs = ways.get(column).shareOfPairs() >= MOST;
            for (Field named : Field.values()) {
                int score = score(heading, named);
                Field field = pairs && named == Field.locality ? Field.coordinates : named;
                if (score > 0 && fits(field, ways.get(column))) {
                    scored.add(new Scored(
                            score,
                            new Proposal(
                                    field,
                                    column,
                                    score >= 3
                                            ? "Its heading says so."
                                            : score == 2
                                                    ? "A word of its heading says so."
                                                    : "Its heading begins so.")));
                }
            }
        }
        scored.sort(Comparator.<Scored>comparingInt(one -> -one.score())
                .thenComparing(one -> one.proposal().field())
                .thenComparing(one -> one.proposal().column()));
        Map<Field, Proposal> chosen = new EnumMap<>(Field.class);
        Set<Integer> taken = new java.util.HashSet<>();
        for (Scored one : scored) {
            Proposal proposal = one.proposal();
            if (!chosen.containsKey(proposal.field()) && taken.add(proposal.column())) {
                chosen.put(proposal.field(), proposal);
            }
        }
        return List.copyOf(chosen.values());
    }

    static boolean isOfNumbers(Field field) {
        return field.kind == Kind.number || field.kind == Kind.degrees || field.kind == Kind.metres;
    }

    /** The unit of length that a heading names, or null. */
    public static ReadingSettings.@Nullable ChainageUnit unitOf(String heading) {
        String plain = ' ' + Missing.strip(heading).toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]+", " ") + ' ';
        if (plain.contains(" km ")
                || plain.contains(" kms ")
                || plain.contains("kilomet")
                || plain.contains("chainagekm")) {
            return ReadingSettings.ChainageUnit.kilometres;
        }
        if (plain.contains(" mi ") || plain.contains("mile")) {
            return ReadingSettings.ChainageUnit.miles;
        }
        return plain.contains(" m ") || plain.contains("metre") || plain.contains("meter")
                ? ReadingSettings.ChainageUnit.metres
                : null;
    }

    /** Fields that a heading may mean by its words alone. */
    public static Set<Field> meanings(String heading) {
        Set<Field> meant = EnumSet.noneOf(Field.class);
        Plain plain = Plain.of(heading);
        for (Field field : Field.values()) {
            if (score(plain, field) > 1) {
                meant.add(field);
            }
        }
        return meant;
    }

    private static boolean fits(Field field, ColumnWays ways) {
        if (ways.told() == 0) {
            return false;
        }
        return switch (field.kind) {
            case any -> field != Field.coordinates || ways.shareOfNumbers() < 1 - MOST;
            case number ->
                field == Field.individualCount
                        ? ways.shareOfNumbers() >= MOST_DAYS && !ways.isRunning()
                        : ways.shareOfNumbers() >= MOST;
            case degrees -> ways.shareOfDegrees() >= MOST;
            case metres -> ways.shareOfNumbers() >= MOST && ways.shareOfDegrees() < 1 - MOST;
            case day -> ways.shareOfDays() + ways.shareOfSerials() + ways.shareOfYears() >= MOST_DAYS;
        };
    }

    /** 4 the whole heading in the field's first word, 3 in another, 2 one of its words, 1 its beginning or end in five letters. */
    private static int score(Plain heading, Field field) {
        if (field == Field.coordinateUncertaintyInMeters && heading.whole().equals("coordinateprecision")) {
            // A term of Darwin Core too, in degrees
            return 0;
        }
        if (field.words.contains(heading.whole())) {
            return heading.whole().equals(field.first) ? 4 : 3;
        }
        for (String word : heading.words()) {
            if (field.words.contains(word)) {
                return 2;
            }
        }
        for (String word : field.words) {
            if (word.length() >= 5
                    && (heading.whole().startsWith(word) || heading.whole().endsWith(word))) {
                return 1;
            }
        }
        return 0;
    }

    /** A heading in small letters without accents; words told apart by signs, by blanks and by capitals within. */
    private record Plain(String whole, String[] words) {
        private static final Pattern CAPITAL_WITHIN = Pattern.compile("(?<=\\p{Ll})(?=\\p{Lu})");
        private static final Pattern ACCENTS = Pattern.compile("\\p{M}+");
        private static final Pattern IN_BRACKETS = Pattern.compile("\\([^)]*\\)");
        private static final Pattern SIGNS = Pattern.compile("[^\\p{L}\\p{Nd}]+");

        static Plain of(String heading) {
            String apart = CAPITAL_WITHIN.matcher(Missing.strip(heading)).replaceAll(" ");
            String letters = ACCENTS.matcher(Normalizer.normalize(apart.replace("ß", "ss"), Normalizer.Form.NFKD))
                    .replaceAll("")
                    .toLowerCase(Locale.ROOT);
            String plain = SIGNS.matcher(IN_BRACKETS.matcher(letters).replaceAll(" "))
                    .replaceAll(" ")
                    .strip();
            return new Plain(plain.replace(" ", ""), plain.split(" "));
        }
    }
}
