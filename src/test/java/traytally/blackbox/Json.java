package traytally.blackbox;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** An object of a JSON text: numbers as double, null as empty, rows as objects. */
public final class Json {
  private final Map<String, Object> values;

  private Json(Map<String, Object> values) {
    this.values = values;
  }

  public static Json parse(String text) {
    try (JsonParser parser = new JsonFactory().createParser(text)) {
      parser.nextToken();
      Json json = object(parser);
      if (parser.nextToken() != null) {
        throw new IllegalArgumentException("more than one value: " + text);
      }
      return json;
    } catch (IOException e) {
      throw new UncheckedIOException(text, e);
    }
  }

  private static Json object(JsonParser parser) throws IOException {
    Map<String, Object> values = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      parser.nextToken();
      values.put(key, value(parser));
    }
    return new Json(values);
  }

  private static Object value(JsonParser parser) throws IOException {
    return switch (parser.currentToken()) {
      case START_OBJECT -> object(parser);
      case START_ARRAY -> {
        List<Object> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          items.add(value(parser));
        }
        yield items;
      }
      case VALUE_STRING -> parser.getText();
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      default -> Optional.empty();
    };
  }

  List<String> keys() {
    return List.copyOf(values.keySet());
  }

  public List<Json> rows() {
    return rows("rows");
  }

  List<Json> rows(String key) {
    return ((List<?>) get(key)).stream().map(Json.class::cast).toList();
  }

  List<String> texts(String key) {
    return ((List<?>) get(key)).stream().map(String.class::cast).toList();
  }

  Json object(String key) {
    return (Json) get(key);
  }

  boolean has(String key) {
    return values.containsKey(key);
  }

  public String text(String key) {
    return (String) get(key);
  }

  public double number(String key) {
    return (Double) get(key);
  }

  double numberOr(String key, double other) {
    return isNull(key) ? other : number(key);
  }

  boolean yes(String key) {
    return (Boolean) get(key);
  }

  boolean isNull(String key) {
    return get(key).equals(Optional.empty());
  }

  private Object get(String key) {
    Object value = values.get(key);
    if (value == null) {
      throw new AssertionError("no " + key + " among " + values.keySet());
    }
    return value;
  }
}
