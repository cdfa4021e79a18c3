package traytally.performance;

/** What is judged together. */
public enum Grain {
  /** A colour in whatever body and length. */
  COLOUR,
  /** One plastic. */
  PLASTIC,
  /** A body style in whatever colour and length. */
  BODY
}
