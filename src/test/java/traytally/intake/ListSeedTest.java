package traytally.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Text lists of every layout, sound and spoilt: taken or refused, each row told, once only. */
class ListSeedTest {
  private static final List<Path> FOLDERS =
      List.of(Path.of("src/test/resources/fuzz/text"), Path.of("src/test/resources/golden"));

  static List<Path> seeds() throws IOException {
    List<Path> seeds = new ArrayList<>();
    for (Path folder : FOLDERS) {
      try (Stream<Path> files = Files.walk(folder)) {
        files.filter(f -> f.toString().matches(".*\\.(csv|txt|tsv)")).sorted().forEach(seeds::add);
      }
    }
    return seeds;
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void everyListIsTakenOrRefusedHoweverSpoilt(Path seed) throws IOException {
    byte[] content = Files.readAllBytes(seed);
    ListFuzz.fuzzerTestOneInput(content);
    int step = Math.max(1, content.length / 3);
    for (int at = 0; at < content.length; at += step) {
      byte[] turned = content.clone();
      turned[at] ^= (byte) (1 << (at % 7));
      ListFuzz.fuzzerTestOneInput(turned);
      ListFuzz.fuzzerTestOneInput(Arrays.copyOf(content, at));
    }
  }
}
