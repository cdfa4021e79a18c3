package traytally.render;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The fonts that are packed with the program, since paper must show every name the same everywhere:
 * Latin, Greek, Cyrillic, Arabic, Hebrew, Han, kana and Hangul.
 */
final class PaperFonts {
  /** Stands for what no font here can draw; every font has it or the first one does. */
  static final String MISSING = "?";

  private static final int NORMAL = 400;
  private static final int BOLD = 700;

  /** One font file; the family is what the style sheet calls it. */
  record Face(String family, int weight, String file) {
    InputStream open() {
      InputStream stream = PaperFonts.class.getResourceAsStream("fonts/" + file);
      if (stream == null) {
        throw new IllegalStateException("not packed: " + file);
      }
      return stream;
    }
  }

  static final List<Face> FACES =
      List.of(
          new Face("Noto Sans", NORMAL, "NotoSans-Regular.ttf"),
          new Face("Noto Sans", BOLD, "NotoSans-Bold.ttf"),
          new Face("Noto Sans Arabic", NORMAL, "NotoSansArabic-Regular.ttf"),
          new Face("Noto Sans Hebrew", NORMAL, "NotoSansHebrew-Regular.ttf"),
          new Face("Droid Sans Fallback", NORMAL, "DroidSansFallback.ttf"));

  private final List<CmapLookup> glyphs = new ArrayList<>();

  PaperFonts() throws IOException {
    for (Face face : FACES) {
      try (InputStream stream = face.open()) {
        TrueTypeFont font =
            new TTFParser()
                .parse(new RandomAccessReadBuffer(new ByteArrayInputStream(stream.readAllBytes())));
        glyphs.add(font.getUnicodeCmapLookup());
      }
    }
  }

  /** Whether one of the fonts has a glyph for this code point. */
  boolean draws(int codePoint) {
    return glyphs.stream().anyMatch(font -> font.getGlyphId(codePoint) != 0);
  }
}
