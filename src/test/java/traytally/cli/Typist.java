package traytally.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** What a person types, waiting here and there until something is shown. */
final class Typist extends InputStream {
  /** Long enough for a busy machine; nobody waits for it if all is well. */
  private static final long PATIENCE_MS = 20_000;

  private final byte[] keys;
  private final ByteArrayOutputStream shown;
  private int next;
  private int seen;

  Typist(String keys, ByteArrayOutputStream shown) {
    this.keys = keys.getBytes(StandardCharsets.UTF_8);
    this.shown = shown;
  }

  @Override
  public int read() throws IOException {
    while (next < keys.length && keys[next] == 0) {
      int end = next + 1;
      while (keys[end] != 0) {
        end++;
      }
      await(new String(keys, next + 1, end - next - 1, StandardCharsets.UTF_8));
      next = end + 1;
    }
    return next < keys.length ? keys[next++] & 0xff : -1;
  }

  @Override
  public int read(byte[] into, int from, int length) throws IOException {
    int key = read();
    if (key < 0) {
      return -1;
    }
    into[from] = (byte) key;
    return 1;
  }

  private void await(String text) throws IOException {
    for (long waited = 0; waited < PATIENCE_MS; waited += 10) {
      String all = shown.toString(StandardCharsets.UTF_8);
      int at = all.indexOf(text, Math.min(seen, all.length()));
      if (at >= 0) {
        seen = at + text.length();
        return;
      }
      try {
        Thread.sleep(10);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IOException(e);
      }
    }
    throw new IOException("never shown: " + text);
  }
}
