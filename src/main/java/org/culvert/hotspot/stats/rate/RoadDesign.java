package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * How traffic and class of a road become a row of a model. Immutable.
 *
 * @param names of the columns, the constant first
 * @param usesTraffic whether there is a slope on log AADT
 * @param hasLevelForUnknown whether roads of unknown traffic have a level of their own
 * @param meanLogAadt what stands for log AADT where it is not known, beside the level
 * @param baseClass the class that the constant belongs to
 * @param columnOfClass the column of each class; 0 for the base class and those joined to it
 */
public record RoadDesign(
        List<String> names,
        boolean usesTraffic,
        boolean hasLevelForUnknown,
        double meanLogAadt,
        String baseClass,
        Map<String, Integer> columnOfClass) {
    public RoadDesign {
        names = List.copyOf(names);
        columnOfClass = Map.copyOf(columnOfClass);
    }

    static RoadDesign of(List<Site> sites, int smallestClassIncidents, List<String> remarks) {
        List<String> names = new ArrayList<>(List.of("constant"));
        double[] logs = sites.stream()
                .filter(Site::hasTraffic)
                .mapToDouble(site -> Math.log(site.aadt()))
                .sorted()
                .toArray();
        int unknown = sites.size() - logs.length;
        boolean differs = logs.length > 0 && logs[logs.length - 1] - logs[0] > 1e-9;
        double mean = 0;
        for (double log : logs) {
            mean += log / logs.length;
        }
        if (logs.length == 0) {
            remarks.add("Traffic is known for none of the sites: the model has length and class alone.");
        } else if (!differs) {
            remarks.add("Traffic is the same wherever it is known, so it has no slope: length and class alone.");
        } else {
            names.add("log AADT");
            if (unknown > 0) {
                names.add("AADT not known");
                remarks.add("Traffic is not known for " + unknown + " of " + sites.size()
                        + " sites: they have a common level, and are compared by burden.");
            }
        }
        Map<String, Integer> columns = new TreeMap<>();
        String base = classes(sites, smallestClassIncidents, names, columns, remarks);
        return new RoadDesign(names, differs, differs && unknown > 0, mean, base, columns);
    }

    /** Gives every class a column; those with too few incidents share one, or join the base class. */
    private static String classes(
            List<Site> sites, int smallest, List<String> names, Map<String, Integer> columns, List<String> remarks) {
        Map<String, Integer> incidents = new TreeMap<>();
        sites.forEach(site -> incidents.merge(site.roadClass(), site.incidents(), Integer::sum));
        String base = incidents.entrySet().stream()
                .max(Comparator.comparingInt(Map.Entry<String, Integer>::getValue)
                        .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                .orElseThrow()
                .getKey();
        List<String> few = new ArrayList<>();
        int together = 0;
        for (Map.Entry<String, Integer> entry : incidents.entrySet()) {
            if (!entry.getKey().equals(base) && entry.getValue() < smallest) {
                few.add(entry.getKey());
                together += entry.getValue();
            }
        }
        for (String name : incidents.keySet()) {
            if (name.equals(base)) {
                columns.put(name, 0);
            } else if (!few.contains(name)) {
                columns.put(name, names.size());
                names.add("class " + name);
            }
        }
        boolean own = together >= smallest;
        few.forEach(name -> columns.put(name, own ? names.size() : 0));
        if (!few.isEmpty()) {
            remarks.add("Too few incidents for a level of their own (" + String.join(", ", few) + "): "
                    + (own ? "joined to one another." : "joined to class " + base + "."));
        }
        if (own) {
            names.add("other classes");
        }
        return base;
    }

    /** Whether the model has a level for a class. */
    public boolean knows(String roadClass) {
        return columnOfClass.containsKey(roadClass);
    }

    /** Why the model expects nothing of a road, or nothing where it does. */
    String obstacle(double aadt, String roadClass) {
        if (!knows(roadClass)) {
            return "the model has no level for class '" + roadClass + "', only for "
                    + columnOfClass.keySet().stream().sorted().toList();
        }
        if (usesTraffic && !hasLevelForUnknown && Double.isNaN(aadt)) {
            return "traffic was known for every site of the model, so it expects nothing where it is not known";
        }
        return "";
    }

    double[] row(double aadt, String roadClass) {
        String obstacle = obstacle(aadt, roadClass);
        if (!obstacle.isEmpty()) {
            throw new IllegalArgumentException(obstacle);
        }
        double[] row = new double[names.size()];
        row[0] = 1;
        if (usesTraffic && Double.isNaN(aadt)) {
            row[1] = meanLogAadt;
            row[2] = 1;
        } else if (usesTraffic) {
            row[1] = Math.log(aadt);
        }
        row[columnOfClass.getOrDefault(roadClass, 0)] = 1;
        return row;
    }
}
