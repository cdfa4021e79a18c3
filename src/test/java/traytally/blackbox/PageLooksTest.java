package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Pages as a browser shows them and paper as it is printed. */
class PageLooksTest {
  private static final int[] WIDTHS = {360, 768, 1280};

  /** WCAG 2.2, 1.4.3: text of ordinary size against what is behind it. */
  private static final double READABLE = 4.5;

  /** WCAG 2.2, 2.5.8: the least size of what is to be touched, in CSS pixels. */
  private static final double TOUCHABLE = 24;

  /** Measures the page it is put into; the formulas are those of WCAG 2.2, "relative luminance". */
  private static final String MEASURE =
      """
      <script>
      addEventListener('load', () => {
        const lum = c => c.map(v => v / 255)
          .map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
          .reduce((s, v, i) => s + v * [0.2126, 0.7152, 0.0722][i], 0);
        const rgba = s => s.match(/[\\d.]+/g).map(Number);
        const behind = e => {
          for (; e; e = e.parentElement) {
            const c = rgba(getComputedStyle(e).backgroundColor);
            if (c.length < 4 || c[3] > 0) return c.slice(0, 3);
          }
          return [255, 255, 255];
        };
        let contrast = 21, cut = 0, texts = 0, touch = 999;
        const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        while (walk.nextNode()) {
          const e = walk.currentNode.parentElement;
          if (!walk.currentNode.data.trim() || e.tagName === 'SCRIPT') continue;
          const box = e.getBoundingClientRect();
          if (box.width === 0) continue;
          texts++;
          const a = lum(rgba(getComputedStyle(e).color).slice(0, 3)), b = lum(behind(e));
          contrast = Math.min(contrast, (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05));
          if (box.right > innerWidth + 0.5 || box.left < 0) cut++;
        }
        document.querySelectorAll('input').forEach(e => {
          const box = e.getBoundingClientRect();
          touch = Math.min(touch, box.width, box.height);
        });
        const root = document.documentElement;
        parent.postMessage(innerWidth + ' ' + root.scrollWidth + ' ' + contrast.toFixed(2) + ' '
          + cut + ' ' + texts + ' ' + touch, '*');
      });
      </script>
      """;

  /** ISO 216 and ANSI, in points. */
  private static final double A4_WIDTH = 595.3;

  private static final double LETTER_LENGTH = 792;

  @TempDir static Path folder;

  @BeforeAll
  static void importTheDemo() {
    Ran.importDemo(folder);
  }

  private Path written(String name, String... command) {
    Path file = folder.resolve(name);
    List<String> all = new ArrayList<>(List.of(command));
    all.addAll(List.of("--as-of", "2026-05-01", "--out", file.toString()));
    Ran ran = Ran.in(folder, all.toArray(String[]::new));
    assertEquals(0, ran.code(), ran.err());
    return file;
  }

  /** What each page says of itself in a window of each width, one start of the browser for all. */
  private List<double[]> measured(List<Path> pages) throws IOException, InterruptedException {
    StringBuilder frames = new StringBuilder("<html><body><pre id='said'></pre>");
    frames.append("<script>addEventListener('message', m => said.append(m.data + ';'))</script>");
    for (Path page : pages) {
      String name = "measuring-" + page.getFileName();
      String measuring =
          Files.readString(page)
              .replaceFirst("<meta http-equiv=[^>]*>", "")
              .replace("</body>", MEASURE + "</body>");
      Files.writeString(folder.resolve(name), measuring);
      for (int width : WIDTHS) {
        frames.append(
            "<iframe src='"
                + name
                + "' width='"
                + width
                + "' height='900' style='border:0'></iframe>");
      }
    }
    Path harness = folder.resolve("harness.html");
    Files.writeString(harness, frames.append("</body></html>"));
    String dom =
        Program.browser()
            .run(
                folder,
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--virtual-time-budget=5000",
                "--dump-dom",
                harness.toUri().toString());
    Matcher said = Pattern.compile("<pre id=\"said\">([^<]*)</pre>").matcher(dom);
    assertTrue(said.find(), dom);
    return Pattern.compile(";")
        .splitAsStream(said.group(1))
        .map(
            line ->
                Pattern.compile(" ").splitAsStream(line).mapToDouble(Double::parseDouble).toArray())
        .toList();
  }

  @Test
  void pagesFitAPhoneAndAWideWindowAndCanBeRead() throws IOException, InterruptedException {
    Program.browser();
    List<Path> pages = new ArrayList<>();
    for (String command : List.of("restock", "trips", "trust", "ledger")) {
      pages.add(written(command + ".html", command));
    }
    List<double[]> windows = measured(pages);
    assertEquals(pages.size() * WIDTHS.length, windows.size());
    for (double[] said : windows) {
      String where = "a page in " + said[0] + " pixels";
      assertTrue(said[1] <= said[0], where + " scrolls sideways: " + said[1]);
      assertTrue(said[2] >= READABLE, where + " has a contrast of " + said[2]);
      assertEquals(0, said[3], where + " is cut off");
      assertTrue(said[4] > 20, where + " shows hardly anything: " + said[4]);
      assertTrue(said[5] >= TOUCHABLE, where + " has a box to tick of " + said[5]);
    }
  }

  @Test
  void paperCutsNothingOff() throws IOException, InterruptedException {
    Program.named("pdftotext");
    PrintedPages.Sheet list = PrintedPages.whole(written("list.pdf", "restock")).get(0);
    assertEquals(A4_WIDTH, list.width(), 1);
    for (String words :
        List.of("Far Skerry Post", "kelp green", "1 × 8", "Goods 9.25,", "ask the authority")) {
      assertTrue(list.text().contains(words), words + " in " + list.text());
    }
    assertEquals(0, Ran.in(folder, "settings", "paper", "letter").code());
    PrintedPages.Sheet trust = PrintedPages.whole(written("trust.pdf", "trust")).get(0);
    assertEquals(LETTER_LENGTH, trust.width(), 1);
    assertTrue(trust.text().contains("motor oil"), trust.text());
  }
}
