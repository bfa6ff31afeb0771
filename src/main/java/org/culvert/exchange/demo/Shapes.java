package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.List;

/** Winding lines and rounded patches on the plane of the region. */
final class Shapes {
    private final Ground ground;

    Shapes(Ground ground) {
        this.ground = ground;
    }

    /**
     * A winding line between two points, which are its first and last vertex exactly.
     *
     * @param sway sideways swing as a share of the length
     * @param low least metres between vertices
     * @param high most metres between vertices
     */
    List<Spot> winding(Dice dice, Spot from, Spot to, double sway, double low, double high) {
        double length = ground.distance(from, to);
        double[] swings = new double[7];
        for (int wave = 1; wave < swings.length; wave++) {
            swings[wave] = dice.normal(0, sway * length / StrictMath.pow(wave, 1.15));
        }
        double eastward = (ground.x(to) - ground.x(from)) / length;
        double northward = (ground.y(to) - ground.y(from)) / length;
        List<Spot> line = new ArrayList<>();
        line.add(from);
        double along = dice.between(low, high);
        while (along < length - low * 0.6) {
            double aside = 0;
            for (int wave = 1; wave < swings.length; wave++) {
                aside += swings[wave] * StrictMath.sin(wave * StrictMath.PI * along / length);
            }
            line.add(ground.spot(
                    ground.x(from) + along * eastward - aside * northward,
                    ground.y(from) + along * northward + aside * eastward));
            along += dice.between(low, high);
        }
        line.add(to);
        return line;
    }

    /** A closed ring around a centre; the last point is the first. */
    List<Spot> patch(Dice dice, double x, double y, double radius, int points) {
        double first = dice.between(0, 2 * StrictMath.PI);
        double second = dice.between(0, 2 * StrictMath.PI);
        double stretch = dice.between(0.7, 1.3);
        List<Spot> ring = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            double angle = 2 * StrictMath.PI * i / points;
            double r = radius
                    * (1
                            + 0.22 * StrictMath.sin(2 * angle + first)
                            + 0.12 * StrictMath.sin(3 * angle + second)
                            + dice.between(-0.05, 0.05));
            ring.add(ground.spot(x + r * stretch * StrictMath.cos(angle), y + r / stretch * StrictMath.sin(angle)));
        }
        ring.add(ring.get(0));
        return ring;
    }

    /** Whether a closed ring holds a point. */
    static boolean holds(List<Spot> ring, Spot spot) {
        boolean inside = false;
        for (int i = 1; i < ring.size(); i++) {
            Spot a = ring.get(i - 1);
            Spot b = ring.get(i);
            if ((a.latitudeE7() > spot.latitudeE7()) != (b.latitudeE7() > spot.latitudeE7())) {
                double crossing = a.longitudeE7()
                        + (double) (spot.latitudeE7() - a.latitudeE7())
                                / (b.latitudeE7() - a.latitudeE7())
                                * ((double) b.longitudeE7() - a.longitudeE7());
                if (spot.longitudeE7() < crossing) {
                    inside = !inside;
                }
            }
        }
        return inside;
    }
}
