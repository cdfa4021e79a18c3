package traytally.intake;

import java.util.Optional;
import java.util.function.Function;

/**
 * What a cell says: a value, nothing, or something that could not be read.
 *
 * @param value what it says, if it could be read
 * @param wrong what is wrong with it and what to write, empty if nothing is
 * @param assumed what was assumed in reading it, empty if nothing was
 * @param approximate whether the person wrote that the value is a guess
 */
record Told<T>(Optional<T> value, String wrong, String assumed, boolean approximate) {

  static <T> Told<T> nothing() {
    return new Told<>(Optional.empty(), "", "", false);
  }

  static <T> Told<T> of(T value) {
    return new Told<>(Optional.of(value), "", "", false);
  }

  static <T> Told<T> about(T value, String how) {
    return new Told<>(Optional.of(value), "", how, true);
  }

  static <T> Told<T> assuming(T value, String what) {
    return new Told<>(Optional.of(value), "", what, false);
  }

  /** Something unreadable; {@code why} goes on after the value: {@code is not a length. …}. */
  static <T> Told<T> wrong(String why) {
    return new Told<>(Optional.empty(), why, "", false);
  }

  boolean isWrong() {
    return !wrong.isEmpty();
  }

  <U> Told<U> map(Function<T, U> change) {
    return new Told<>(value.map(change), wrong, assumed, approximate);
  }
}
