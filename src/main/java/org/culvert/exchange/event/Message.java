package org.culvert.exchange.event;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * One event as CloudEvents 1.0 has it in JSON (structured mode), signed as Standard Webhooks has it: HMAC-SHA256 of identifier,
 * time of sending in seconds, and body, joined by points.
 */
final class Message {
    static final String MEDIA_TYPE = "application/cloudevents+json";

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private Message() {}

    /**
     * @param source which server it is from, as a URI reference
     * @param subject the record below {@code /api}, such as {@code cases/…}
     */
    static String body(UUID id, String source, String type, String subject, Instant at) {
        Map<String, Object> event = new LinkedHashMap<>();
        event.put("specversion", "1.0");
        event.put("id", id.toString());
        event.put("source", source);
        event.put("type", type);
        event.put("subject", subject);
        event.put("time", at.toString());
        event.put("datacontenttype", "application/json");
        event.put("data", Map.of("href", "/api/" + subject));
        try {
            return MAPPER.writeValueAsString(event);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("texts can be written", e);
        }
    }

    /** @param seconds since 1970, when it is sent */
    static String signature(byte[] secret, String id, long seconds, String body) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(secret, "HmacSHA256"));
            byte[] signed = mac.doFinal((id + '.' + seconds + '.' + body).getBytes(StandardCharsets.UTF_8));
            return "v1," + Base64.getEncoder().encodeToString(signed);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every JDK has HmacSHA256", e);
        }
    }
}
