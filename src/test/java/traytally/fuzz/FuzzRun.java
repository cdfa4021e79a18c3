package traytally.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import traytally.intake.ListFuzz;
import traytally.sheet.ReaderFuzz;
import traytally.sheet.SheetPartFuzz;

/**
 * Lets Jazzer loose on the readers, each for some seconds, from the seeds of the tests. What it
 * finds lies in {@code target/fuzz} as {@code crash-…}; keep it among the seeds, where an ordinary
 * test reads it for ever.
 */
public final class FuzzRun {
  private static final Path SEEDS = Path.of("src/test/resources/fuzz");
  private static final Path FOUND = Path.of("target/fuzz");

  private FuzzRun() {}

  /** The seconds to spend on each target. */
  public static void main(String[] args) throws IOException, InterruptedException {
    int failed = 0;
    failed += run(args[0], ReaderFuzz.class, "text", "xls", "xlsx");
    failed += run(args[0], SheetPartFuzz.class, "part");
    failed += run(args[0], ListFuzz.class, "text", "../golden");
    if (failed > 0) {
      System.err.println(failed + " of the readers failed; see " + FOUND);
      System.exit(1);
    }
  }

  private static int run(String seconds, Class<?> target, String... seeds)
      throws IOException, InterruptedException {
    Path corpus = FOUND.resolve(target.getSimpleName());
    Files.createDirectories(corpus);
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.addAll(List.of("-Xmx1g", "-cp", System.getProperty("java.class.path")));
    words.add("com.code_intelligence.jazzer.Jazzer");
    words.add("--target_class=" + target.getName());
    words.add("--instrumentation_includes=traytally.**");
    words.add("--reproducer_path=" + FOUND);
    words.add("-artifact_prefix=" + FOUND + "/");
    words.addAll(List.of("-max_total_time=" + seconds, "-max_len=20000", "-timeout=20", "-seed=1"));
    words.add(corpus.toString());
    for (String folder : seeds) {
      words.add(SEEDS.resolve(folder).normalize().toString());
    }
    return new ProcessBuilder(words).inheritIO().start().waitFor() == 0 ? 0 : 1;
  }
}
