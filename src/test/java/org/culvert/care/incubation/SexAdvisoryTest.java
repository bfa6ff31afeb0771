package org.culvert.care.incubation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.culvert.care.incubation.SexAdvisory.Fact;
import org.culvert.care.incubation.SexAdvisory.MadeBy;
import org.junit.jupiter.api.Test;

class SexAdvisoryTest {
    @Test
    void adviceIsForSpeciesWhoseSexTemperatureMakesAndForNoOthers() {
        SexAdvisory snapping = SexAdvisory.of(
                "Chelydra serpentina", List.of(new Fact(MadeBy.temperature, "Males at 23 to 27 °C.", "JEB 201:439")));
        assertThat(snapping.advice()).contains("Males at 23 to 27 °C.", "does not tell the sex of these");
        assertThat(snapping.sources()).containsExactly("JEB 201:439");
        SexAdvisory longNecked = SexAdvisory.of(
                "Chelodina longicollis", List.of(new Fact(MadeBy.genes, "Sex chromosomes.", "Ezaz 2006")));
        assertThat(longNecked.advice()).isNull();
        assertThat(longNecked.madeBy()).isEqualTo(MadeBy.genes);
        assertThat(longNecked.why()).contains("Sex chromosomes");
        SexAdvisory other = SexAdvisory.of("Nova testudo", List.of());
        assertThat(other.advice()).isNull();
        assertThat(other.madeBy()).isEqualTo(MadeBy.unknown);
        assertThat(other.why()).contains("not entered here");
    }
}
