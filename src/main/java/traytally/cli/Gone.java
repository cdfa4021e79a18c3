package traytally.cli;

import java.util.Optional;
import traytally.ledger.MovementKind;
import traytally.trip.LossCause;

/** How pieces came or went: the kind of movement, and the cause if it is a loss with one. */
record Gone(MovementKind kind, Optional<LossCause> how) {}
