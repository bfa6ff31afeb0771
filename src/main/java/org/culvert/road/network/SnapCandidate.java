package org.culvert.road.network;

/**
 * The nearest point of one link to a position.
 *
 * @param link number of the link
 * @param metres from its from-node
 * @param road number of its road
 * @param chainageMetres chainage there
 * @param offsetMetres how far the position is from it
 * @param side on which side of the road the position is, for one who looks along increasing chainage
 * @param weight how likely it is among the candidates of one snap; they sum to 1
 * @param x of the point on the link, on the plane
 * @param y of the point on the link, on the plane
 */
public record SnapCandidate(
        int link,
        double metres,
        int road,
        double chainageMetres,
        double offsetMetres,
        Side side,
        double weight,
        double x,
        double y) {
    public LinkPoint point() {
        return new LinkPoint(link, metres);
    }

    SnapCandidate weighing(double newWeight) {
        return new SnapCandidate(link, metres, road, chainageMetres, offsetMetres, side, newWeight, x, y);
    }
}
