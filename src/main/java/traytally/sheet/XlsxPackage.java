package traytally.sheet;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLStreamException;

/**
 * The parts inside an .xlsx and how they point at each other (ECMA-376 part 2, Open Packaging
 * Conventions). Read as a plain zip: POI's own package takes twice as long to reach the first cell.
 */
final class XlsxPackage implements AutoCloseable {
  private static final Pattern ESCAPES = Pattern.compile("(%[0-9A-Fa-f]{2})+");

  private final ZipFile zip;
  private final Limits limits;
  private final Ration unfolded;
  // Part names tell no capitals from small letters (part 2, 6.2.2.3).
  private final Map<String, ZipEntry> parts = new HashMap<>();

  XlsxPackage(Path file, Limits limits) throws IOException {
    this.zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
    this.limits = limits;
    this.unfolded = new Ration(limits.unfoldedBytes(), Refusal.TOO_LARGE);
    try {
      listParts();
    } catch (RuntimeException e) {
      zip.close();
      throw e;
    }
  }

  private void listParts() {
    if (zip.size() > limits.parts()) {
      throw new UnreadableSheetException(
          "This file is packed from more parts than any spreadsheet has. " + RowBuilder.SAVE_AGAIN);
    }
    zip.stream()
        .filter(entry -> !entry.isDirectory())
        .forEach(
            entry -> {
              if (parts.put(key(entry.getName()), entry) != null) {
                // Programs disagree on which of two to read, so what is shown may not be what
                // counts.
                throw new UnreadableSheetException(
                    "This file is damaged: it holds two parts of one name. "
                        + RowBuilder.SAVE_AGAIN);
              }
            });
  }

  private static String key(String name) {
    String slashes = name.replace('\\', '/');
    return (slashes.startsWith("/") ? slashes.substring(1) : slashes).toLowerCase(Locale.ROOT);
  }

  boolean has(String part) {
    return parts.containsKey(key(part));
  }

  /** Whether any part lies in a folder. */
  boolean hasFolder(String folder) {
    return parts.keySet().stream().anyMatch(name -> name.startsWith(key(folder)));
  }

  /** The bytes of a part, unpacked as they are read and stopped at the limit. */
  InputStream open(String part) throws IOException {
    ZipEntry entry = parts.get(key(part));
    if (entry == null) {
      throw new UnreadableSheetException(
          "This file is damaged: a part of it is missing. " + RowBuilder.SAVE_AGAIN);
    }
    return new Unfolding(zip.getInputStream(entry), entry.getCompressedSize(), key(part));
  }

  XmlPull xml(String part) throws IOException, XMLStreamException {
    return new XmlPull(open(part));
  }

  /** One arrow from a part to another. */
  record Link(String type, String target) {}

  /** The arrows that start at a part ("" for the package itself), by their names. */
  Map<String, Link> links(String part) throws IOException, XMLStreamException {
    int slash = part.lastIndexOf('/');
    String folder = part.substring(0, slash + 1);
    String listing = folder + "_rels/" + part.substring(slash + 1) + ".rels";
    Map<String, Link> links = new LinkedHashMap<>();
    if (!has(listing)) {
      return links;
    }
    try (XmlPull xml = xml(listing)) {
      while (xml.next()) {
        if (xml.isStart("Relationship")
            && !xml.attribute("TargetMode", "").equals("External")
            && links.size() < limits.parts()) {
          links.put(
              xml.attribute("Id", ""),
              new Link(xml.attribute("Type", ""), resolve(folder, xml.attribute("Target", ""))));
        }
      }
    }
    return links;
  }

  /**
   * The first part linked under a type, whose address differs in the strict form of the standard.
   */
  static Optional<String> target(Map<String, Link> links, String type) {
    return links.values().stream()
        .filter(link -> link.type().endsWith("/" + type))
        .map(Link::target)
        .findFirst();
  }

  private String resolve(String folder, String target) {
    String plain = target.replace('\\', '/');
    String path = plain.startsWith("/") ? plain : folder + plain;
    Deque<String> steps = new ArrayDeque<>();
    for (String step : path.split("/", -1)) {
      if (step.equals("..")) {
        steps.pollLast();
      } else if (!step.isEmpty() && !step.equals(".")) {
        steps.addLast(step);
      }
    }
    String joined = String.join("/", steps);
    // Percent escapes, where the zip itself spells the name without them.
    return has(joined) || joined.indexOf('%') < 0 ? joined : unescaped(joined);
  }

  /** The name with its percent escapes (RFC 3986, 2.1) as the UTF-8 they stand for. */
  private static String unescaped(String name) {
    Matcher run = ESCAPES.matcher(name);
    return run.replaceAll(
        escapes -> {
          byte[] bytes = HexFormat.of().parseHex(escapes.group().replace("%", ""));
          return Matcher.quoteReplacement(new String(bytes, StandardCharsets.UTF_8));
        });
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }

  /** Counts what a part unfolds to. */
  private final class Unfolding extends FilterInputStream {
    private final long packed;
    private final Ration.Meter meter;

    Unfolding(InputStream in, long packed, String part) {
      super(in);
      this.packed = Math.max(1, packed);
      this.meter = unfolded.meter(part);
    }

    @Override
    public int read() throws IOException {
      int one = super.read();
      count(one < 0 ? 0 : 1);
      return one;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
      int got = super.read(bytes, from, length);
      count(Math.max(0, got));
      return got;
    }

    private void count(int bytes) {
      meter.add(bytes);
      if (meter.used() > limits.unfoldFreely() && meter.used() / packed > limits.unfoldRatio()) {
        throw new UnreadableSheetException(Refusal.TOO_LARGE);
      }
    }
  }
}
