package traytally.render;

/** A way to set the rows of a table on a page. */
interface RowLayout {
  /** Sets what stands above all rows. */
  void begin(Page page);

  /** Sets the rows {@code from} (inclusive) to {@code to} (exclusive). */
  void rows(int from, int to, Page page);
}
