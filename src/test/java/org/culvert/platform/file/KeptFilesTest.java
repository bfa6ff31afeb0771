package org.culvert.platform.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class KeptFilesTest {
    /** As the Java library writes them. */
    static byte[] image(String format) throws IOException {
        var octets = new ByteArrayOutputStream();
        assertThat(ImageIO.write(new BufferedImage(4, 3, BufferedImage.TYPE_INT_RGB), format, octets))
                .isTrue();
        return octets.toByteArray();
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    @Test
    void anImageIsKnownByItsFirstOctets() throws IOException {
        assertThat(KeptFiles.isOf(KeptFiles.PNG, image("png"))).isTrue();
        assertThat(KeptFiles.isOf(KeptFiles.JPEG, image("jpeg"))).isTrue();
        assertThat(KeptFiles.isOf(KeptFiles.JPEG, image("png"))).isFalse();
        assertThat(KeptFiles.isOf(KeptFiles.PNG, image("jpeg"))).isFalse();
        assertThat(KeptFiles.isOf(KeptFiles.PNG, image("gif"))).isFalse();
        assertThat(KeptFiles.isOf("image/gif", image("gif"))).isFalse();
    }

    @Test
    void aDocumentSaysItsVersionNearItsBeginning() {
        assertThat(KeptFiles.isOf(KeptFiles.PDF, text("%PDF-1.7\n"))).isTrue();
        assertThat(KeptFiles.isOf(KeptFiles.PDF, text("\n\n%PDF-1.4\n"))).isTrue();
        assertThat(KeptFiles.isOf(KeptFiles.PDF, text(" ".repeat(2000) + "%PDF-1.4\n")))
                .isFalse();
        assertThat(KeptFiles.isOf(KeptFiles.PDF, text("<html>"))).isFalse();
    }

    @Test
    void whatIsShorterThanItsMarkIsNothing() {
        assertThat(KeptFiles.isOf(KeptFiles.JPEG, new byte[] {(byte) 0xff, (byte) 0xd8}))
                .isFalse();
        assertThat(KeptFiles.isOf(KeptFiles.PNG, new byte[0])).isFalse();
        assertThat(KeptFiles.isOf(KeptFiles.PDF, new byte[0])).isFalse();
    }
}
