package traytally.intake;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A resource of lines {@code meaning: word, word, …}; {@code #} begins a remark. */
record WordList(Map<String, List<String>> meanings) {

  /** Reads the resource of this package named {@code name}. */
  static WordList read(String name) {
    Map<String, List<String>> meanings = new LinkedHashMap<>();
    try (InputStream in = WordList.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its list " + name);
      }
      BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        add(line.strip(), meanings);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new WordList(meanings);
  }

  private static void add(String line, Map<String, List<String>> meanings) {
    if (line.isEmpty() || line.startsWith("#")) {
      return;
    }
    int colon = line.indexOf(':');
    List<String> words =
        meanings.computeIfAbsent(line.substring(0, colon).strip(), m -> new ArrayList<>());
    for (String word : line.substring(colon + 1).split(",", -1)) {
      if (!word.isBlank()) {
        words.add(fold(word));
      }
    }
  }

  /** The words under {@code meaning}, strongest first; empty if it has none. */
  List<String> words(String meaning) {
    return meanings.getOrDefault(meaning, List.of());
  }

  /** Small letters, digits and single blanks only: how headers and words are compared. */
  static String fold(String text) {
    return Numbers.plain(text)
        .toLowerCase(Locale.ROOT)
        .replace("&", " and ")
        .replaceAll("['’]", "")
        .replaceAll("[^\\p{L}\\p{N}#%\"$€£]+", " ")
        .strip();
  }
}
