package traytally.ledger;

/**
 * Something in the book, with the batch that recorded it.
 *
 * @param id its number among its kind, in the order recorded
 * @param batch the batch's number
 */
public record Recorded<T>(long id, long batch, T what) {}
