package traytally.render;

import com.openhtmltopdf.bidi.BidiReorderer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns a run of right-to-left text into the order in which its glyphs are set. */
final class PaperReorder implements BidiReorderer {
  private static final Pattern CLUSTER = Pattern.compile("\\X");
  private static final String MIRRORED = "()[]{}<>«»";

  @Override
  public String reorderRTLTextToLTR(String text) {
    List<String> clusters = new ArrayList<>();
    Matcher cluster = CLUSTER.matcher(text);
    while (cluster.find()) {
      clusters.add(mirrored(cluster.group()));
    }
    Collections.reverse(clusters);
    return String.join("", clusters);
  }

  private static String mirrored(String cluster) {
    int at = MIRRORED.indexOf(cluster);
    return cluster.length() == 1 && at >= 0 ? MIRRORED.charAt(at ^ 1) + "" : cluster;
  }

  @Override
  public String shapeText(String text) {
    return ArabicForms.shape(text);
  }

  @Override
  public String deshapeText(String text) {
    return text;
  }

  @Override
  public boolean isLiveImplementation() {
    return true;
  }
}
