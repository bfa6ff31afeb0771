package org.culvert.support;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The document and its paths are invented here; what a path gives is what {@link Json} says of it. */
class JsonTest {
    private static final Json SHELF = Json.from("""
        {"name":"A shelf","width":2.5,"full":false,"owner":null,
         "boxes":[
           {"key":"first","colour":"red","items":[1,2,3],"open":true,"held":2,"places":2,"inside":{"depth":4}},
           {"key":"second","colour":"blue","items":[],"open":false,"held":1,"places":2.5},
           {"key":"third","colour":"red","items":[4],"held":0,"places":1,"note":"on the left"}],
         "odd name":{"a-b":7},"numbers":[2147483648,9223372036854775808,0.1]}
        """);

    @Test
    void namesAndNumbersOfElementsLeadInwards() {
        assertThat(SHELF.getString("name")).isEqualTo("A shelf");
        assertThat(SHELF.getString("boxes[1].key")).isEqualTo("second");
        assertThat(SHELF.getString("boxes[-1].key")).isEqualTo("third");
        assertThat(SHELF.getInt("boxes[0].items[2]")).isEqualTo(3);
        assertThat(SHELF.getInt("boxes[0].inside.depth")).isEqualTo(4);
        assertThat(SHELF.getInt("'odd name'.a-b")).isEqualTo(7);
        assertThat(Json.from("[[1,2],[3]]").getInt("[1][0]")).isEqualTo(3);
        assertThat(Json.from("[1,2]").<List<Integer>>get("")).containsExactly(1, 2);
        assertThat(SHELF.getMap("$")).containsKey("boxes");
        assertThat(SHELF.getString("$.name")).isEqualTo("A shelf");
    }

    @Test
    void whatIsNotThereIsNull() {
        for (String path :
                List.of("no", "no.such", "owner", "owner.name", "boxes[3]", "boxes[-4].key", "boxes[0].no")) {
            assertThat(SHELF.<Object>get(path)).as(path).isNull();
        }
        assertThat(SHELF.getString("no")).isNull();
        assertThat(SHELF.getList("no")).isNull();
        assertThat(SHELF.getMap("boxes[1].inside")).isNull();
        assertThatThrownBy(() -> SHELF.getInt("boxes[0].no"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("boxes[0].no")
                .hasMessageContaining("A shelf");
    }

    @Test
    void aNameOfAListIsThatOfEachElement() {
        assertThat(SHELF.getList("boxes.key")).containsExactly("first", "second", "third");
        assertThat(SHELF.getList("boxes.note")).containsExactly(null, null, "on the left");
        assertThat(SHELF.getList("boxes.items")).containsExactly(List.of(1, 2, 3), List.of(), List.of(4));
        assertThat(SHELF.getList("boxes.inside.depth")).containsExactly(4);
        assertThat(SHELF.getInt("boxes.size()")).isEqualTo(3);
        assertThat(SHELF.getInt("boxes[0].items.size()")).isEqualTo(3);
    }

    @Test
    void elementsAreFoundByWhatTheyHave() {
        assertThat(SHELF.getString("boxes.find { it.colour == 'red' }.key")).isEqualTo("first");
        assertThat(SHELF.<Object>get("boxes.find { it.colour == 'green' }?.key"))
                .isNull();
        assertThat(chosen("it.colour == 'red'")).containsExactly("first", "third");
        assertThat(chosen("it.colour != 'red'")).containsExactly("second");
        assertThat(chosen("it.colour == 'red' && it.items[0] == 4")).containsExactly("third");
        assertThat(chosen("it.note == null")).containsExactly("first", "second");
        assertThat(chosen("it.note != null && it.held == 0")).containsExactly("third");
        assertThat(chosen("it.open")).containsExactly("first");
        assertThat(chosen("it.open == false")).containsExactly("second");
        assertThat(chosen("it.held >= it.places")).containsExactly("first");
        assertThat(chosen("it.held < it.places")).containsExactly("second", "third");
        assertThat(chosen("it.places > 1.0")).containsExactly("first", "second");
        assertThat(chosen("it.places == 2.0")).containsExactly("first");
        assertThat(chosen("it.held <= -1")).isEmpty();
        assertThat(chosen("it.key.startsWith('s')")).containsExactly("second");
        assertThat(chosen("it.note.contains('the left')")).containsExactly("third");
        assertThat(SHELF.getInt("boxes.findAll { it.colour == 'red' }.size()")).isEqualTo(2);
        assertThat(Json.from("[{\"a\":1,\"b\":2},{\"a\":1,\"b\":3}]")
                        .getList("findAll { it.a == 1 }.findAll { it.b == 3 }.b"))
                .containsExactly(3);
        assertThat(Json.from("[]").getList("findAll { it.a == 1 && it.b }.b")).isEmpty();
        assertThat(SHELF.under("boxes.find { it.key == 'second' }").getString("colour"))
                .isEqualTo("blue");
    }

    private static List<String> chosen(String condition) {
        return SHELF.getList("boxes.findAll { " + condition + " }.key");
    }

    @Test
    void numbersAreWhatTheyAreWrittenAs() {
        assertThat(SHELF.getList("numbers")).containsExactly(2147483648L, BigInteger.TWO.pow(63), 0.1);
        assertThat(SHELF.<Object>get("boxes[0].held")).isEqualTo(2);
        assertThat(SHELF.getDouble("boxes[0].held")).isEqualTo(2.0);
        assertThat(SHELF.getLong("boxes[0].held")).isEqualTo(2L);
        assertThat(SHELF.getList("boxes.places", Double.class)).containsExactly(2.0, 2.5, 1.0);
        assertThat(SHELF.getBoolean("full")).isFalse();
        assertThat(SHELF.getString("width")).isEqualTo("2.5");
        assertThatThrownBy(() -> SHELF.getInt("width")).hasMessageContaining("no Integer, but 2.5");
        assertThatThrownBy(() -> SHELF.getList("boxes.places", Integer.class)).hasMessageContaining("2.5");
        assertThatThrownBy(() -> SHELF.getBoolean("name")).hasMessageContaining("no Boolean, but A shelf");
        assertThatThrownBy(() -> SHELF.getList("name")).hasMessageContaining("no list is at name, but A shelf");
        assertThatThrownBy(() -> SHELF.getMap("boxes")).hasMessageContaining("no object is at boxes");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "boxes[",
                "boxes[one]",
                "boxes..key",
                "boxes.key.",
                ".boxes",
                "boxes key",
                "boxes.collect { it.key }",
                "boxes.find { it.key = 'first' }",
                "boxes.find { it.key == 'first' || it.open }",
                "boxes.find { it.key }",
                "boxes.find { it.key == 'first'",
                "boxes.find { it.key == first }",
                "boxes.size(1)",
                "boxes.sum()",
                "name.first",
                "name[0]",
                "name.size()",
                "name.find { it.x }",
                "no.find { it.x }",
                "boxes.find { it.key < 2 }",
                "no.size()"
            })
    void whatCannotBeAskedIsRefused(String path) {
        assertThatThrownBy(() -> SHELF.get(path)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void whatIsNoJsonIsRefused() {
        for (String text : List.of("", "{", "<html>", "{} {}")) {
            assertThatThrownBy(() -> Json.from(text)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void theDocumentIsWrittenAsItWasRead() {
        assertThat(Json.from(SHELF.toString()).<Object>get("")).isEqualTo(SHELF.<Object>get(""));
        assertThat(Json.from(SHELF.prettify()).<Object>get("")).isEqualTo(SHELF.<Object>get(""));
        assertThat(SHELF.prettify()).contains("\n").contains("\"width\" : 2.5");
        assertThat(Json.from("{\"a\":[1,null]}")).hasToString("{\"a\":[1,null]}");
        assertThat(Json.from("{\"a\":null}").getMap(""))
                .isEqualTo(Collections.singletonMap("a", null))
                .isNotEqualTo(Map.of());
        assertThat(Json.from("[null]").getList("", String.class))
                .isEqualTo(new ArrayList<>(Collections.singleton(null)));
    }
}
