package traytally.render;

import java.io.IOException;
import java.io.Writer;
import traytally.report.Report;

/** Writes reports in one format that is text. */
interface TextRenderer {
  void render(Report report, Look look, Writer out) throws IOException;
}
