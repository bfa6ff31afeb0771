package org.culvert.exchange.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Invents {@link People}. */
final class PeopleMaker {
    private static final int MEMBERS = 60;
    private static final int BAT_PEOPLE = 14;
    private static final List<String> CALL_SIGNS = List.of(
            "Acacia",
            "Banksia",
            "Casuarina",
            "Dianella",
            "Eremophila",
            "Ficus",
            "Grevillea",
            "Hakea",
            "Indigofera",
            "Jacksonia",
            "Kunzea",
            "Lomandra",
            "Melaleuca",
            "Olearia",
            "Pultenaea");
    private static final List<String> BATS = List.of("flying-foxes", "microbats");
    private static final List<List<String>> LEAST_CONCERN = List.of(
            List.of("possums-and-gliders", "bandicoots"),
            List.of("macropods"),
            List.of("macropods", "wombats"),
            List.of("other-birds"),
            List.of("other-birds", "owls-and-frogmouths", "possums-and-gliders"));
    private static final List<List<String>> SPECIALIST = List.of(
            List.of("turtles"),
            List.of("turtles", "lizards"),
            List.of("raptors", "owls-and-frogmouths"),
            List.of("monotremes"),
            List.of("snakes", "lizards"));

    private final Settings settings;
    private final Ground ground;
    private final Terrain terrain;
    private final List<Road> streets;
    private final Dice dice;
    private final List<People.Organisation> organisations = new ArrayList<>();
    private final List<People.Member> members = new ArrayList<>();
    private final List<People.Premises> premises = new ArrayList<>();
    private final List<People.Authorisation> authorisations = new ArrayList<>();
    private final List<People.Vaccination> vaccinations = new ArrayList<>();
    private final Set<String> emails = new HashSet<>();

    PeopleMaker(Settings settings, Terrain terrain, List<Road> roads) {
        this.settings = settings;
        this.ground = settings.ground();
        this.terrain = terrain;
        this.streets = roads.stream()
                .filter(road -> road.kind() == RoadClass.RESIDENTIAL)
                .toList();
        this.dice = new Dice(settings.seed(), "people");
    }

    People make() {
        organisations();
        for (int i = 0; i < MEMBERS; i++) {
            member(i);
        }
        return new People(
                List.copyOf(organisations),
                List.copyOf(members),
                List.copyOf(premises),
                List.copyOf(authorisations),
                List.copyOf(vaccinations),
                sites());
    }

    private void organisations() {
        organisation("network", settings.network(), "network");
        List<Settings.Town> towns = settings.towns();
        String[] names = {"Wildlife Hospital", "Animal Hospital", "Veterinary Clinic", "Veterinary Clinic"};
        for (int i = 0; i < names.length; i++) {
            organisation("clinic" + (i + 1), towns.get(i).name() + ' ' + names[i], "clinic");
            Spot town = ground.spot(towns.get(i).x(), towns.get(i).y());
            premises.add(new People.Premises(
                    "P-clinic" + (i + 1),
                    "clinic",
                    "1 Clinic Place, " + towns.get(i).name(),
                    ground.moved(town, 140, 90),
                    i == 0 ? 60 : 15));
        }
        settings.councils().forEach(council -> organisation(council.code(), council.name(), "council"));
        organisation("roads", settings.roadsAuthority(), "roadsAuthority");
        organisation("wildlife", settings.wildlifeAuthority(), "wildlifeAuthority");
    }

    private void organisation(String key, String name, String kind) {
        organisations.add(new People.Organisation(key, name, kind, People.email("office " + name), phone()));
    }

    private String phone() {
        return String.format(Locale.ROOT, "+61 2 5550 %04d", dice.below(10_000));
    }

    private void member(int i) {
        String[] name = Names.person(dice);
        String email = People.email(name[0] + ' ' + name[1]);
        if (!emails.add(email)) {
            email = People.email(name[0] + ' ' + name[1] + ' ' + i);
        }
        String key = String.format(Locale.ROOT, "M%03d", i + 1);
        String organisation = i < 8 ? "clinic" + (i / 2 + 1) : "network";
        List<String> roles = roles(i);
        boolean holds = roles.contains("carer");
        Road street = dice.pick(streets);
        Spot home = ground.moved(
                street.spotAt(dice.between(street.startMeasure(), street.endMeasure())),
                dice.normal(0, 30),
                dice.normal(0, 30));
        String premisesKey = i < 8 ? "P-" + organisation : "P-" + key;
        if (i >= 8) {
            premises.add(new People.Premises(
                    premisesKey, "home", dice.from(1, 98) + " " + street.name(), home, holds ? dice.from(2, 14) : 1));
        }
        String vetRegistration = i < 8 && i % 2 == 0 ? String.format(Locale.ROOT, "UVB-%04d", 1201 + 7 * i) : "";
        members.add(new People.Member(
                key,
                CALL_SIGNS.get(i % CALL_SIGNS.size()) + ' ' + (i / CALL_SIGNS.size() + 1),
                vetRegistration,
                name[0],
                name[1],
                email,
                phone(),
                organisation,
                roles,
                premisesKey));
        if (holds) {
            authorise(key, i);
        }
        if (i >= MEMBERS - BAT_PEOPLE) {
            vaccinate(key, MEMBERS - 1 - i);
        }
    }

    /** Clinic people first, then the desk, then those who go out and those who care; the last ones are bat people. */
    private List<String> roles(int i) {
        if (i < 8) {
            return List.of("clinic");
        }
        if (i < 11) {
            return List.of("coordinator", "dispatcher", "carer");
        }
        if (i < 18) {
            return List.of("dispatcher");
        }
        return i % 3 == 0 ? List.of("rescuer") : i % 3 == 1 ? List.of("rescuer", "carer") : List.of("carer");
    }

    private void authorise(String member, int i) {
        boolean bats = i >= MEMBERS - BAT_PEOPLE;
        int kind = i % 5;
        if (bats) {
            authorisation(member, "specialist", BATS, false);
        } else if (kind < 2) {
            authorisation(member, "least concern", dice.pick(LEAST_CONCERN), false);
        } else if (kind == 4) {
            authorisation(member, "koala specialist", List.of("koalas"), false);
        } else {
            List<String> groups = dice.pick(i < 40 ? SPECIALIST.subList(0, 2) : SPECIALIST);
            authorisation(member, "specialist", groups, groups.contains("turtles") && dice.chance(0.5));
        }
        if (dice.chance(0.25)) {
            authorisation(member, "least concern", dice.pick(LEAST_CONCERN), false);
        }
    }

    private void authorisation(String member, String authorisationClass, List<String> groups, boolean incubation) {
        LocalDate from = settings.lastDay().minusDays(dice.from(100, 1_000));
        LocalDate to = from.plusYears(3).minusDays(1);
        if (dice.chance(0.08)) {
            to = settings.lastDay().minusDays(dice.from(5, 90));
        }
        authorisations.add(new People.Authorisation(
                String.format(Locale.ROOT, "UWA-%d-%04d", from.getYear(), authorisations.size() + 101),
                member,
                authorisationClass,
                groups,
                from,
                to,
                incubation));
    }

    /** Of fourteen bat people three have no record, three have let it lapse, and the others are up to date. */
    private void vaccinate(String member, int n) {
        if (n < 3) {
            return;
        }
        boolean lapsed = n < 6;
        LocalDate course = settings.lastDay().minusDays(lapsed ? dice.from(1_900, 2_300) : dice.from(500, 1_500));
        vaccinations.add(new People.Vaccination(member, "lyssavirus", "first course", course, null));
        LocalDate booster = course.plusDays(dice.from(360, 375));
        vaccinations.add(new People.Vaccination(member, "lyssavirus", "booster", booster, null));
        if (!lapsed && n % 2 == 0) {
            double antibody = StrictMath.rint(dice.between(0.6, 4) * 100) / 100;
            vaccinations.add(new People.Vaccination(
                    member, "lyssavirus", "antibody test", settings.lastDay().minusDays(dice.from(20, 300)), antibody));
        }
    }

    private List<People.ReleaseSite> sites() {
        Dice places = new Dice(settings.seed(), "release sites");
        Names names = new Names(new Dice(settings.seed(), "names of release sites"));
        List<People.ReleaseSite> sites = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            boolean water = i % 2 == 0;
            Spot spot = water
                    ? places.pick(places.pick(terrain.waters()).ring())
                    : places.pick(places.pick(terrain.parks()).ring());
            sites.add(new People.ReleaseSite(
                    String.format(Locale.ROOT, "S%02d", i + 1),
                    names.place() + (water ? " Bank" : " Forest"),
                    spot,
                    water ? "fresh water" : "forest",
                    water
                            ? List.of("turtles", "monotremes", "other-birds")
                            : List.of("possums-and-gliders", "macropods", "koalas", "wombats", "owls-and-frogmouths"),
                    terrain.catchmentAt(spot),
                    terrain.councilAt(spot),
                    terrain.parkAt(spot),
                    places.chance(0.85)));
        }
        return List.copyOf(sites);
    }
}
