package traytally.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The encoding of a text file and the length of the mark that names it. Without a mark, what is
 * valid UTF-8 from end to end is UTF-8, since other text hardly ever is by chance (RFC 3629, 1);
 * the rest is taken as Windows-1252. Detectors that count letters misread lists this short.
 */
record TextEncoding(Charset charset, int markBytes) {
  /** Enough to meet a NUL byte or a tag; a page's first tag may follow a long comment. */
  static final int HEAD_BYTES = 8192;

  /**
   * Of so many letters of a list all but one are Latin ones, blanks and figures (an assumption).
   */
  private static final int LATIN_SHARE = 4;

  private static final Charset WINDOWS = Charset.forName("windows-1252");

  /** The encoding a byte order mark names (Unicode standard, 23.8). */
  static Optional<TextEncoding> byMark(byte[] head) {
    if (startsWith(head, 0xEF, 0xBB, 0xBF)) {
      return Optional.of(new TextEncoding(StandardCharsets.UTF_8, 3));
    }
    if (startsWith(head, 0xFF, 0xFE, 0, 0)) {
      return Optional.of(new TextEncoding(Charset.forName("UTF-32LE"), 4));
    }
    if (startsWith(head, 0, 0, 0xFE, 0xFF)) {
      return Optional.of(new TextEncoding(Charset.forName("UTF-32BE"), 4));
    }
    if (startsWith(head, 0xFF, 0xFE)) {
      return Optional.of(new TextEncoding(StandardCharsets.UTF_16LE, 2));
    }
    if (startsWith(head, 0xFE, 0xFF)) {
      return Optional.of(new TextEncoding(StandardCharsets.UTF_16BE, 2));
    }
    return Optional.empty();
  }

  /** The encoding that the first bytes of a text tell: by a mark, or as two bytes a letter. */
  static Optional<TextEncoding> byHead(byte[] head) {
    return byMark(head)
        .or(() -> inPairs(head, StandardCharsets.UTF_16LE))
        .or(() -> inPairs(head, StandardCharsets.UTF_16BE));
  }

  /**
   * UTF-16 without a mark: whole words, most of them of letters below U+0100, and nothing in it
   * that no text holds.
   */
  private static Optional<TextEncoding> inPairs(byte[] head, Charset charset) {
    String text = new String(head, 0, head.length / 2 * 2, charset);
    long latin = text.chars().filter(c -> c < 0x100).count();
    boolean odd = text.chars().anyMatch(c -> c == 0xFFFD || (c < ' ' && "\t\r\n".indexOf(c) < 0));
    return latin * LATIN_SHARE > (LATIN_SHARE - 1L) * text.length() && !odd
        ? Optional.of(new TextEncoding(charset, 0))
        : Optional.empty();
  }

  static TextEncoding of(Path file, Optional<Charset> given) throws IOException {
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(HEAD_BYTES);
    }
    Optional<TextEncoding> marked = byHead(head);
    if (given.isPresent()) {
      boolean same = marked.isPresent() && marked.get().charset().equals(given.get());
      return new TextEncoding(given.get(), same ? marked.get().markBytes() : 0);
    }
    if (marked.isPresent()) {
      return marked.get();
    }
    return new TextEncoding(isUtf8(file) ? StandardCharsets.UTF_8 : WINDOWS, 0);
  }

  private static boolean startsWith(byte[] head, int... mark) {
    if (head.length < mark.length) {
      return false;
    }
    for (int i = 0; i < mark.length; i++) {
      if ((head[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }

  private static boolean isUtf8(Path file) throws IOException {
    CharsetDecoder strict =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer bytes = ByteBuffer.allocate(1 << 16);
    CharBuffer letters = CharBuffer.allocate(1 << 16);
    try (InputStream in = Files.newInputStream(file)) {
      for (boolean ended = false; !ended; ) {
        int got = in.read(bytes.array(), bytes.position(), bytes.remaining());
        ended = got < 0;
        bytes.position(bytes.position() + Math.max(0, got)).flip();
        letters.clear();
        if (strict.decode(bytes, letters, ended).isError()) {
          return false;
        }
        bytes.compact();
      }
    }
    return true;
  }
}
