package traytally.performance;

import traytally.plastic.Worded;

/** What is judged together. */
public enum Grain implements Worded {
  /** A colour in whatever body and length. */
  COLOUR,
  /** One plastic. */
  PLASTIC,
  /** A body style in whatever colour and length. */
  BODY;
}
