package org.culvert.exchange.demo;

import java.util.List;

/** The whole invented region. The same settings make the same region, to the last digit. */
public final class DemoRegion {
    private final Settings settings;
    private final Terrain terrain;
    private final List<Road> roads;
    private final Exposure exposure;
    private final List<Plant> plants;
    private final People people;
    private final Callers callers;
    private final List<Incident> incidents;

    private DemoRegion(Settings settings) {
        this.settings = settings;
        this.terrain = Terrain.make(settings);
        this.roads = RoadMaker.make(settings, terrain);
        this.exposure = new Exposure(settings, roads);
        this.plants = Planter.plant(settings, terrain, roads, exposure);
        this.people = People.make(settings, terrain, roads);
        this.callers = new Callers(settings);
        this.incidents = new CallMaker(settings, roads, exposure, callers).make(plants);
    }

    /** The region of the committed settings. */
    public static DemoRegion committed() {
        return new DemoRegion(Settings.committed());
    }

    /** The region of the committed settings with another seed. */
    public static DemoRegion withSeed(long seed) {
        return new DemoRegion(Settings.committed().withSeed(seed));
    }

    Settings settings() {
        return settings;
    }

    Terrain terrain() {
        return terrain;
    }

    List<Road> roads() {
        return roads;
    }

    Exposure exposure() {
        return exposure;
    }

    List<Plant> plants() {
        return plants;
    }

    People people() {
        return people;
    }

    Callers callers() {
        return callers;
    }

    List<Incident> incidents() {
        return incidents;
    }

    /** Length of all roads, each carriageway for itself. */
    public double totalRoadMetres() {
        return roads.stream().mapToDouble(Road::lengthMetres).sum();
    }
}
