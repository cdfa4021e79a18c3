package traytally.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import traytally.intake.ListKind;
import traytally.performance.Grain;
import traytally.performance.Measure;
import traytally.performance.Standing;
import traytally.plastic.Name;
import traytally.plastic.Worded;
import traytally.render.Format;
import traytally.render.Template;
import traytally.trip.Clarity;

/**
 * Makes an option's value of its word. One class and a switch: as lambdas they would take a short
 * command a tenth of its time to be made ready.
 */
record Converter(Class<?> type) implements ITypeConverter<Object> {
  private static final List<Class<?>> TYPES =
      List.of(
          LocalDate.class,
          Path.class,
          Name.class,
          ListKind.class,
          Template.class,
          Format.class,
          Measure.class,
          Grain.class,
          Standing.class,
          Clarity.class,
          Integer.class,
          int.class,
          Long.class,
          Double.class,
          double.class,
          BigDecimal.class);

  /** Teaches picocli the types that options arrive as. */
  static void register(CommandLine commandLine) {
    for (Class<?> type : TYPES) {
      register(commandLine, type);
    }
  }

  @SuppressWarnings("unchecked") // what convert makes for a type is of that type
  private static <T> void register(CommandLine commandLine, Class<T> type) {
    commandLine.registerConverter(type, (ITypeConverter<T>) new Converter(type));
  }

  @Override
  public Object convert(String word) {
    return switch (type.getSimpleName()) {
      case "LocalDate" -> date(word);
      case "Path" -> Path.of(word);
      case "Name" -> Name.of(word);
      case "ListKind" -> word(ListKind.values(), word);
      case "Template" -> word(Template.values(), word);
      case "Format" -> word(Format.values(), word);
      case "Measure" -> word(Measure.values(), word);
      case "Grain" -> word(Grain.values(), word);
      case "Standing" -> word(Standing.values(), word);
      case "Clarity" -> word(Clarity.values(), word);
      default -> number(word);
    };
  }

  private static <T extends Enum<T> & Worded> T word(T[] all, String word) {
    List<String> known = Arrays.stream(all).map(Worded::word).toList();
    return Worded.parse(all, word)
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "\"%s\" is none of %s or %s."
                        .formatted(
                            word,
                            String.join(", ", known.subList(0, all.length - 1)),
                            known.get(all.length - 1))));
  }

  private Object number(String word) {
    try {
      return switch (type.getSimpleName()) {
        case "Integer", "int" -> Integer.valueOf(word);
        case "Long" -> Long.valueOf(word);
        case "Double", "double" -> Double.valueOf(withPoint(word));
        case "BigDecimal" -> new BigDecimal(withPoint(word));
        default -> throw new IllegalStateException("no option is a " + type);
      };
    } catch (NumberFormatException e) {
      throw new TypeConversionException("\"" + word + "\" is not a number that fits here.");
    }
  }

  /** A comma before the decimals is as good as a point; one before three digits could be either. */
  private static String withPoint(String word) {
    return word.matches("-?\\d*,\\d{1,2}") ? word.replace(',', '.') : word;
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new TypeConversionException(
          "\"" + text + "\" is not a date. Write the year first, as in 2026-05-01.");
    }
  }
}
