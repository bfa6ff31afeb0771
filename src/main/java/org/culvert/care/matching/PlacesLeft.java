package org.culvert.care.matching;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.culvert.care.matching.Sharing.Apart;
import org.culvert.care.matching.Sharing.Beast;
import org.culvert.care.matching.Sharing.Home;
import org.culvert.care.matching.Sharing.Together;

/** Whom each carer may still have, and the places that are left, once some of it is settled. */
final class PlacesLeft {
    private static final int NONE = -1;

    /** What is settled for the while, on one branch. */
    sealed interface Settled permits WithoutGroup, WithoutFamily, WithFamily {}

    /** A carer who is not to have a group. */
    record WithoutGroup(int carer, int group) implements Settled {}

    /** A carer who is not to have animals that are not parted. */
    record WithoutFamily(int carer, int family) implements Settled {}

    /** A carer who has all of them. */
    record WithFamily(int carer, int family) implements Settled {}

    private final List<Beast> animals;
    private final List<Home> carers;
    private final List<Apart> apart;
    private final List<Together> families;
    private final Set<Settled> settled;
    private final int[] places;
    private final int[][] byGroup;
    private final int[] carerByAnimal;
    /** The family of each animal, or {@link #NONE}. */
    private final int[] familyByAnimal;

    private final boolean[][] mayHave;
    private final int groups;
    private boolean possible = true;

    /** @param settled on this branch; where it contradicts itself, {@link #isPossible} says so */
    PlacesLeft(
            List<Beast> animals, List<Home> carers, List<Apart> apart, List<Together> families, Set<Settled> settled) {
        this.animals = animals;
        this.carers = carers;
        this.apart = apart;
        this.families = families;
        this.places = carers.stream().mapToInt(Home::places).toArray();
        this.byGroup = carers.stream().map(home -> home.placesByGroup().clone()).toArray(int[][]::new);
        this.carerByAnimal = new int[animals.size()];
        this.familyByAnimal = new int[animals.size()];
        this.mayHave = new boolean[carers.size()][animals.size()];
        this.groups = 1 + animals.stream().mapToInt(Beast::group).max().orElse(0);
        Arrays.fill(familyByAnimal, NONE);
        for (int f = 0; f < families.size(); f++) {
            for (int animal : families.get(f).animals()) {
                familyByAnimal[animal] = f;
            }
        }
        this.settled = settled;
        Arrays.fill(carerByAnimal, NONE);
        for (Settled one : settled) {
            if (one instanceof WithFamily with) {
                take(with);
            }
        }
        for (int j = 0; possible && j < carers.size(); j++) {
            fill(j);
        }
    }

    boolean isPossible() {
        return possible;
    }

    int[] settledCarers() {
        return carerByAnimal.clone();
    }

    int places(int carer) {
        return places[carer];
    }

    int places(int carer, int group) {
        return byGroup[carer][group];
    }

    boolean mayHave(int carer, int animal) {
        return mayHave[carer][animal];
    }

    private void take(WithFamily with) {
        List<Integer> members = families.get(with.family).animals();
        possible &= mayCome(with.carer, with.family) && !settled.contains(new WithoutFamily(with.carer, with.family));
        for (int animal : members) {
            possible &= carerByAnimal[animal] == NONE;
            carerByAnimal[animal] = with.carer;
            possible &= --places[with.carer] >= 0;
            possible &= --byGroup[with.carer][animals.get(animal).group()] >= 0;
        }
    }

    /** Whether nothing but places speaks against all of a family at a carer. */
    private boolean mayCome(int carer, int family) {
        for (int animal : families.get(family).animals()) {
            Beast of = animals.get(animal);
            if (!Double.isFinite(of.burden()[carer]) || settled.contains(new WithoutGroup(carer, of.group()))) {
                return false;
            }
        }
        return apart.stream().noneMatch(pair -> has(family, pair.one()) && has(family, pair.other()));
    }

    private boolean has(int family, int group) {
        return families.get(family).animals().stream()
                .anyMatch(animal -> animals.get(animal).group() == group);
    }

    /** Says whom a carer may have, and takes away the places that none of these could fill. */
    private void fill(int carer) {
        boolean[] comes = new boolean[families.size()];
        for (int f = 0; f < comes.length; f++) {
            comes[f] = carerByAnimal[families.get(f).animals().get(0)] == NONE
                    && mayCome(carer, f)
                    && !settled.contains(new WithoutFamily(carer, f))
                    && fits(carer, f);
        }
        int[] single = new int[groups];
        for (int i = 0; i < animals.size(); i++) {
            Beast animal = animals.get(i);
            if (familyByAnimal[i] != NONE) {
                mayHave[carer][i] = comes[familyByAnimal[i]];
            } else {
                mayHave[carer][i] = Double.isFinite(animal.burden()[carer])
                        && !settled.contains(new WithoutGroup(carer, animal.group()));
                single[animal.group()] += mayHave[carer][i] ? 1 : 0;
            }
        }
        for (int g = 0; g < byGroup[carer].length && g < single.length; g++) {
            int group = g;
            byGroup[carer][g] = most(byGroup[carer][g], sizes(comes, group), single[g]);
        }
        places[carer] =
                most(places[carer], sizes(comes, NONE), Arrays.stream(single).sum());
    }

    private boolean fits(int carer, int family) {
        List<Integer> members = families.get(family).animals();
        return members.size() <= places[carer]
                && members.stream()
                        .allMatch(animal -> members.stream()
                                        .filter(other -> animals.get(other).group()
                                                == animals.get(animal).group())
                                        .count()
                                <= byGroup[carer][animals.get(animal).group()]);
    }

    /** How many each of the families brings, of one group or of all. */
    private List<Integer> sizes(boolean[] comes, int group) {
        List<Integer> sizes = new ArrayList<>();
        for (int f = 0; f < comes.length; f++) {
            if (comes[f]) {
                sizes.add((int) families.get(f).animals().stream()
                        .filter(animal -> group == NONE || animals.get(animal).group() == group)
                        .count());
            }
        }
        return sizes;
    }

    /** The most places that families of some sizes and some single animals can fill: the sums are the bits that are set. */
    static int most(int places, Collection<Integer> sizes, int single) {
        int all = sizes.stream().mapToInt(Integer::intValue).sum() + single;
        if (all <= places) {
            return all;
        }
        BigInteger within = BigInteger.ONE.shiftLeft(places + 1).subtract(BigInteger.ONE);
        BigInteger sums = BigInteger.ONE;
        for (int size : sizes) {
            sums = sums.or(sums.shiftLeft(size)).and(within);
        }
        return Math.min(places, sums.bitLength() - 1 + single);
    }
}
