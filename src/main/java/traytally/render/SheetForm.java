package traytally.render;

import java.util.List;

/**
 * A sheet the angler fills in.
 *
 * @param name of the sheet
 * @param purpose what it is for and how to fill it in, a sentence or two each
 */
record SheetForm(String name, List<String> purpose, List<Heading> headings) {
  SheetForm {
    purpose = List.copyOf(purpose);
    headings = List.copyOf(headings);
  }
}
