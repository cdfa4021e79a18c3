package traytally.sheet;

import java.io.IOException;
import java.nio.file.Path;

/** The sheet within a sound .xlsx: what packing would hide from the fuzzer. */
public final class SheetPartFuzz {
  private static final Path FOLDER = ReaderFuzz.folder();

  private SheetPartFuzz() {}

  /** Called by the fuzzer with each input. */
  public static void fuzzerTestOneInput(byte[] content) throws IOException {
    FuzzTarget.sheetPart(FOLDER, content);
  }
}
