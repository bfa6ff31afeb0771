package org.culvert.platform;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Reads no more of a JSON body than anything that is meant would need; what holds documents says itself how large it may
 * be. Imports of files have the limit of the server.
 */
@Provider
class BodyLimit implements ReaderInterceptor {
    static final long LARGEST_JSON_BYTES = 1_000_000;

    @Override
    public Object aroundReadFrom(ReaderInterceptorContext context) throws IOException {
        MediaType type = context.getMediaType();
        boolean json = type != null
                && context.getType() != InputStream.class
                && (type.getSubtype().equals("json") || type.getSubtype().equals("merge-patch+json"));
        if (json) {
            LargestBody said = context.getType().getAnnotation(LargestBody.class);
            long largest = said == null ? LARGEST_JSON_BYTES : said.bytes();
            String declared = context.getHeaders().getFirst(HttpHeaders.CONTENT_LENGTH);
            if (declared != null && declared.matches("\\d{1,18}") && Long.parseLong(declared) > largest) {
                throw new TooLargeException(largest);
            }
            context.setInputStream(new Counted(context.getInputStream(), largest));
        }
        return context.proceed();
    }

    /** A body may come without saying how long it is. */
    private static final class Counted extends FilterInputStream {
        private final long largest;
        private long read;

        Counted(InputStream body, long largest) {
            super(body);
            this.largest = largest;
        }

        @Override
        public int read() throws IOException {
            int octet = super.read();
            count(octet < 0 ? 0 : 1);
            return octet;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int octets = super.read(into, from, length);
            count(Math.max(0, octets));
            return octets;
        }

        private void count(int octets) {
            read += octets;
            if (read > largest) {
                throw new TooLargeException(largest);
            }
        }
    }
}
