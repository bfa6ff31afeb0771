package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GeneralisationTest {
    /** Categories: Chapman 2020, doi:10.15468/doc-5jp4-5g10. The centres follow from the definition, by hand. */
    @ParameterizedTest
    @CsvSource({
        "-30.5234567, 150.0312345, 1,     -30.5,    150.5",
        "-30.5234567, 150.0312345, 0.1,   -30.55,   150.05",
        "-30.5234567, 150.0312345, 0.01,  -30.525,  150.035",
        "-30.5234567, 150.0312345, 0.001, -30.5235, 150.0315",
        "0.04,        -0.04,       0.1,   0.05,     -0.05",
        "90,          180,         1,     89.5,     179.5",
        "-90,         -180,        1,     -89.5,    -179.5",
        "51.9999,     -179.9999,   0.01,  51.995,   -179.995"
    })
    void aPlaceIsTheCentreOfItsCell(
            double latitude, double longitude, double grid, double toLatitude, double toLongitude) {
        Position centre =
                Generalisation.of(new Position(latitude, longitude), 0, grid).centre();
        assertThat(centre).isEqualTo(new Position(toLatitude, toLongitude));
    }

    /**
     * On the equator a degree of longitude is 111,319.491 m (2 pi a / 360 on WGS 84) and a tenth of latitude 11,057.43 m; half
     * the diagonal of a cell of 0.1 degree is therefore about 7,845 m.
     */
    @Test
    void theUncertaintyReachesTheFarthestCornerAndHoldsThatOfThePlace() {
        Position atEquator = new Position(0.02, 0.02);
        assertThat(Generalisation.of(atEquator, 0, 0.1).uncertaintyMetres())
                .isCloseTo(Math.hypot(5_528.715, 5_565.975), within(2.0));
        assertThat(Generalisation.of(atEquator, 250, 0.1).uncertaintyMetres())
                .isEqualTo(Generalisation.of(atEquator, 0, 0.1).uncertaintyMetres() + 250);
    }

    @Test
    void everyPlaceOfACellLooksTheSameAndLiesWithinTheUncertainty() {
        long seed = 20261125;
        var random = new Random(seed);
        for (int i = 0; i < 2000; i++) {
            double grid = new double[] {1, 0.1, 0.01, 0.001}[i % 4];
            var place = new Position(random.nextDouble() * 178 - 89, random.nextDouble() * 358 - 179);
            Generalisation told = Generalisation.of(place, 0, grid);
            String which = "seed " + seed + ", place " + i + " " + place + " at " + grid;
            assertThat(Geodesy.metresBetween(told.centre(), place))
                    .as(which)
                    .isLessThanOrEqualTo(told.uncertaintyMetres());
            assertThat(Generalisation.of(told.centre(), 0, grid).centre())
                    .as(which)
                    .isEqualTo(told.centre());
            var neighbour = new Position(
                    told.centre().latitude() + (random.nextDouble() - 0.5) * grid * 0.99,
                    told.centre().longitude() + (random.nextDouble() - 0.5) * grid * 0.99);
            assertThat(Generalisation.of(neighbour, 0, grid)).as(which).isEqualTo(told);
        }
    }

    @Test
    void thereIsNoCellWithoutASize() {
        assertThatThrownBy(() -> Generalisation.of(new Position(0, 0), 0, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Generalisation.of(new Position(0, 0), -1, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
