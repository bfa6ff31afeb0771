package org.culvert.road;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.Map;
import org.culvert.geo.Bounds;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.road.network.BuildReport;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** One import of the roads. The newest is the current network; older ones are kept for what was recorded on them. */
@Entity
@Table(name = "road_networks")
class NetworkVersion extends Recorded {
    int number;
    String name;
    String sourceCrs;
    String sha256;

    @JdbcTypeCode(SqlTypes.JSON)
    Map<String, String> attributeNames;

    double south;
    double west;
    double north;
    double east;
    int lineCount;
    int linesUsed;
    int linkCount;
    int nodeCount;
    int joinedNodes;
    int unnamedLines;
    int keptLinks;
    double totalMetres;

    @JdbcTypeCode(SqlTypes.JSON)
    @Column(name = "left_out")
    Map<String, Integer> leftOut;

    @JdbcTypeCode(SqlTypes.JSON)
    @Column(name = "not_understood")
    Map<String, Integer> notUnderstood;

    protected NetworkVersion() {}

    static NetworkVersion of(
            int number,
            String name,
            String sourceCrs,
            String sha256,
            Map<String, String> attributeNames,
            Bounds bounds,
            BuildReport report,
            Map<String, Integer> notUnderstood) {
        var version = new NetworkVersion();
        version.number = number;
        version.name = name;
        version.sourceCrs = sourceCrs;
        version.sha256 = sha256;
        version.attributeNames = attributeNames;
        version.south = bounds.south();
        version.west = bounds.west();
        version.north = bounds.north();
        version.east = bounds.east();
        version.lineCount = report.lines();
        version.linesUsed = report.linesUsed();
        version.linkCount = report.links();
        version.nodeCount = report.nodes();
        version.joinedNodes = report.joinedNodes();
        version.unnamedLines = report.unnamedLines();
        version.totalMetres = report.metres();
        version.leftOut = report.leftOut();
        version.notUnderstood = notUnderstood;
        return version;
    }

    Bounds bounds() {
        return new Bounds(south, west, north, east);
    }

    RoadNetworkView view(RecordViews records) {
        return new RoadNetworkView(
                id(),
                number,
                name,
                recordedAt(),
                sourceCrs,
                sha256,
                attributeNames,
                lineCount,
                linesUsed,
                linkCount,
                nodeCount,
                joinedNodes,
                unnamedLines,
                keptLinks,
                Math.round(totalMetres) / 1000.0,
                leftOut,
                notUnderstood,
                new double[] {west, south, east, north},
                records.of(this));
    }
}
