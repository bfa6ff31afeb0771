package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

class PiecesTest {
    private final RoadGraph graph = new RoadGraph(3, new int[] {0, 1}, new int[] {1, 2}, new double[] {105, 50});
    private final Pieces pieces = new Pieces(graph, 50);

    @Test
    void aLinkIsCutIntoEqualPiecesNoLongerThanAsked() {
        assertThat(pieces.count()).isEqualTo(4);
        assertThat(pieces.length(0)).isCloseTo(35, within(1e-12));
        assertThat(pieces.length(3)).isCloseTo(50, within(1e-12));
        assertThat(pieces.start(1)).isCloseTo(35, within(1e-12));
        assertThat(pieces.end(2)).isCloseTo(105, within(1e-12));
    }

    @Test
    void theEndOfALinkBelongsToItsLastPiece() {
        assertThat(pieces.at(0, 0)).isZero();
        assertThat(pieces.at(0, 105)).isEqualTo(2);
        assertThat(pieces.at(1, 50)).isEqualTo(3);
        assertThat(pieces.at(1, 50.0001)).isEqualTo(3);
        assertThat(pieces.at(1, -0.0001)).isEqualTo(3);
    }

    @Test
    void thePieceAtACentreIsThatPiece() {
        for (int piece = 0; piece < pieces.count(); piece++) {
            assertThat(pieces.at(pieces.linkOf(piece), pieces.centre(piece))).isEqualTo(piece);
        }
    }

    @Test
    void piecesWithoutLengthAreRefused() {
        assertThatThrownBy(() -> new Pieces(graph, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Pieces(graph, 1e-9)).isInstanceOf(IllegalArgumentException.class);
    }
}
