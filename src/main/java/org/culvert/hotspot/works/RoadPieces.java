package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.culvert.hotspot.Words;
import org.culvert.hotspot.stats.RoadSpan;
import org.culvert.hotspot.stats.rate.RoadProfile.Section;
import org.culvert.platform.InvalidException;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadNetwork;

/**
 * A network's roads as unbroken pieces, along each of which chainage runs on from link to link. A road with a gap, with a
 * branch, or with two carriageways is several pieces.
 */
public final class RoadPieces {
    /** Chainages of links that follow one another may differ by as much as they are rounded to. */
    private static final double GAP_METRES = 1;

    /** What may stick out over the end of a road: chainages are told in whole metres, or read off a map. */
    private static final double SLACK_METRES = 10;

    private static final String CLASS_NOT_KNOWN = "not known";
    private static final int MOST_NAMED = 12;

    /**
     * An unbroken piece.
     *
     * @param id unique in the network; the road's label where it has one piece alone
     * @param label the road's label
     * @param links in order of chainage
     */
    public record Piece(int number, String id, String label, double from, double to, List<Integer> links) {
        boolean overlaps(double start, double end) {
            return from < end && start < to;
        }
    }

    /** What of a piece lies in a stretch. */
    public record Part(Piece piece, double from, double to) {
        double lengthMetres() {
            return to - from;
        }
    }

    private final RoadNetwork network;
    private final IntToDoubleFunction aadt;
    private final List<Piece> pieces = new ArrayList<>();
    private final int[] pieceOfLink;

    private RoadPieces(RoadNetwork network, IntToDoubleFunction aadt) {
        this.network = network;
        this.aadt = aadt;
        this.pieceOfLink = new int[network.linkCount()];
    }

    /** With the traffic that the file of roads says, of no stated year. */
    public static RoadPieces of(RoadNetwork network) {
        return of(network, LinkTraffic.ofRoadsFile(network)::vehiclesPerDay);
    }

    /**
     * With the traffic of a period.
     *
     * @param aadt vehicles a day of a link, above 0; NaN where not known
     */
    static RoadPieces of(RoadNetwork network, IntToDoubleFunction aadt) {
        var all = new RoadPieces(network, aadt);
        Set<String> taken = new HashSet<>();
        for (Road road : network.roads()) {
            List<List<Integer>> runs = all.runs(road);
            for (int run = 0; run < runs.size(); run++) {
                String id = runs.size() == 1 ? road.fullLabel() : road.fullLabel() + ", part " + (run + 1);
                all.add(taken.add(id) ? id : id + " (road " + road.number() + ")", road, runs.get(run));
            }
        }
        return all;
    }

    /** The links of a road, in runs that hang together and go on from chainage to chainage. */
    private List<List<Integer>> runs(Road road) {
        List<Integer> ordered = IntStream.of(road.links())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer link) -> network.fromChainage(link))
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
        List<List<Integer>> runs = new ArrayList<>();
        for (int link : ordered) {
            List<Integer> before = runs.stream()
                    .filter(run -> goesOn(run.get(run.size() - 1), link))
                    .findFirst()
                    .orElse(null);
            if (before == null) {
                runs.add(new ArrayList<>(List.of(link)));
            } else {
                before.add(link);
            }
        }
        return runs;
    }

    private boolean goesOn(int link, int next) {
        return network.graph().to(link) == network.graph().from(next)
                && Math.abs(network.toChainage(link) - network.fromChainage(next)) <= GAP_METRES;
    }

    private void add(String id, Road road, List<Integer> links) {
        int number = pieces.size();
        links.forEach(link -> pieceOfLink[link] = number);
        pieces.add(new Piece(
                number,
                id,
                road.label(),
                network.fromChainage(links.get(0)),
                network.toChainage(links.get(links.size() - 1)),
                List.copyOf(links)));
    }

    List<Piece> all() {
        return pieces;
    }

    Piece pieceOf(int link) {
        return pieces.get(pieceOfLink[link]);
    }

    /** The chainage of a place on a link, within the piece that the link is of. */
    double chainage(int link, double metres) {
        Piece piece = pieceOf(link);
        double held = Math.min(metres, network.graph().length(link));
        return Math.max(piece.from(), Math.min(piece.to(), network.chainageAt(link, held)));
    }

    /** The piece's links as sections, each from where the one before ends; none is treated. */
    List<Section> sections(Piece piece) {
        List<Section> sections = new ArrayList<>();
        double from = piece.from();
        for (int i = 0; i < piece.links().size(); i++) {
            int link = piece.links().get(i);
            double to = i + 1 == piece.links().size() ? piece.to() : network.toChainage(link);
            if (to > from) {
                add(sections, new Section(from, to, aadt(link), roadClass(link), false));
                from = to;
            }
        }
        return sections;
    }

    private static void add(List<Section> sections, Section next) {
        if (!sections.isEmpty()) {
            Section last = sections.get(sections.size() - 1);
            if (last.roadClass().equals(next.roadClass()) && Double.compare(last.aadt(), next.aadt()) == 0) {
                sections.set(
                        sections.size() - 1,
                        new Section(
                                last.fromChainageMetres(),
                                next.toChainageMetres(),
                                last.aadt(),
                                last.roadClass(),
                                false));
                return;
            }
        }
        sections.add(next);
    }

    private double aadt(int link) {
        return aadt.applyAsDouble(link);
    }

    String roadClass(int link) {
        return Objects.requireNonNullElse(network.attributes(link).roadClass(), CLASS_NOT_KNOWN);
    }

    /** A part as spans of its links. */
    public List<RoadSpan> spans(Part part) {
        List<RoadSpan> spans = new ArrayList<>();
        for (int link : part.piece().links()) {
            double start = network.fromChainage(link);
            double from = Math.max(part.from(), start) - start;
            double to = Math.min(part.to(), network.toChainage(link)) - start;
            if (from < to) {
                spans.add(new RoadSpan(link, from, to));
            }
        }
        return spans;
    }

    /** The classes of the links that a part lies on. */
    Set<String> classes(Part part) {
        Set<String> classes = new TreeSet<>();
        for (Section section : sections(part.piece())) {
            if (section.fromChainageMetres() < part.to() && part.from() < section.toChainageMetres()) {
                classes.add(section.roadClass());
            }
        }
        return classes;
    }

    /**
     * The parts of a road between two chainages: one, or one on each carriageway.
     *
     * @param prefix of the names of the fields, such as {@code stretch.}
     * @param road a label, a number, or the name of a piece
     * @throws InvalidException naming the field where there is no such stretch, or more than one
     */
    public List<Part> requireStretch(String prefix, String road, double from, double to) {
        if (!(from < to)) {
            throw InvalidException.of(
                    prefix + "toChainageMetres",
                    "The stretch ends before it begins.",
                    "a chainage greater than fromChainageMetres");
        }
        List<Piece> named = piecesNamed(road);
        if (named.isEmpty()) {
            throw InvalidException.of(
                    prefix + "road",
                    "No road of the current network is called " + road + ".",
                    "the label of a road as the network has it");
        }
        List<Piece> there = named.stream()
                .filter(piece -> piece.overlaps(from, to))
                .filter(piece -> from >= piece.from() - SLACK_METRES && to <= piece.to() + SLACK_METRES)
                .toList();
        if (there.isEmpty()) {
            boolean early = named.stream().noneMatch(piece -> from >= piece.from() - SLACK_METRES);
            throw InvalidException.of(
                    prefix + (early ? "fromChainageMetres" : "toChainageMetres"),
                    "The stretch is not on one unbroken piece of that road.",
                    "chainages on " + told(named));
        }
        if (there.size() > 1
                && there.stream().map(RoadPieces::number).distinct().count() < there.size()) {
            throw InvalidException.of(
                    prefix + "road",
                    "More than one piece of road of that name has these chainages.",
                    "one of " + told(there));
        }
        return there.stream()
                .map(piece -> new Part(piece, Math.max(from, piece.from()), Math.min(to, piece.to())))
                .toList();
    }

    /** A piece by its own name, or all pieces of the roads that a name may mean. */
    List<Piece> piecesNamed(String road) {
        String wanted = road.strip().toLowerCase(Locale.ROOT);
        List<Piece> exact = pieces.stream()
                .filter(piece -> piece.id().toLowerCase(Locale.ROOT).equals(wanted))
                .toList();
        if (!exact.isEmpty()) {
            return exact;
        }
        Set<Integer> roads = new HashSet<>();
        network.findRoads(road).forEach(found -> roads.add(found.number()));
        return pieces.stream()
                .filter(piece ->
                        piece.label().toLowerCase(Locale.ROOT).equals(wanted) || roads.contains(roadNumber(piece)))
                .toList();
    }

    private int roadNumber(Piece piece) {
        return network.roadOf(piece.links().get(0)).number();
    }

    /** Pieces of one carriageway differ by their part alone. */
    private static String number(Piece piece) {
        int part = piece.id().lastIndexOf(", part ");
        return part < 0 ? piece.id() : piece.id().substring(0, part);
    }

    private static String told(List<Piece> pieces) {
        String first = String.join(
                "; ",
                pieces.stream()
                        .limit(MOST_NAMED)
                        .map(piece -> piece.id() + " from " + Words.number(piece.from(), 0) + " to "
                                + Words.number(piece.to(), 0) + " m")
                        .toList());
        return pieces.size() > MOST_NAMED ? first + "; and " + (pieces.size() - MOST_NAMED) + " more" : first;
    }
}
