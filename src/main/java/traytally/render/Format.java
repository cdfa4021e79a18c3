package traytally.render;

import traytally.plastic.Worded;

/** A form a report can take. */
public enum Format implements Worded {
  TABLE,
  CSV,
  JSON,
  XLSX,
  HTML,
  PDF;

  /** The ending of a file in this format, without the point: {@code txt}, {@code csv}. */
  public String extension() {
    return this == TABLE ? "txt" : word();
  }

  /** Whether it is text that can go to a terminal, rather than bytes for a file. */
  public boolean isText() {
    return switch (this) {
      case TABLE, CSV, JSON, HTML -> true;
      case XLSX, PDF -> false;
    };
  }
}
