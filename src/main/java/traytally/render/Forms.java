package traytally.render;

import static traytally.render.Heading.needed;
import static traytally.render.Heading.oneOf;
import static traytally.render.Heading.optional;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import traytally.plastic.Finish;
import traytally.report.Column.Kind;

/** What the four sheets to fill in ask for, in the angler's words. */
final class Forms {
  private static final List<String> YES_NO = List.of("yes", "no");
  private static final List<String> CLARITIES = List.of("clear", "stained", "cloudy", "dirty");
  private static final List<String> LOSSES = List.of("snagged", "bitten off", "torn", "cast off");

  static final SheetForm BOX =
      new SheetForm(
          "Box",
          List.of(
              "What lies in your trays: one row for each body style, colour and length.",
              "Count one tray an evening. Each time you hand the sheet in, it counts as what is"
                  + " there on that day; what changed since is worked out for you."),
          List.of(
              optional("Maker", Kind.TEXT, "Who made it. Leave it empty if you do not care."),
              needed("Body style", Kind.TEXT, "Its shape, in your own words: paddle tail."),
              needed("Colour", Kind.TEXT, "Its colour, in your own words: motor oil."),
              needed("Length (mm)", Kind.LENGTH, "In millimetres, or with its unit: 3 in."),
              needed("Pieces", Kind.WHOLE, "Loose and packed together: 12, or 2 packs + 3."),
              optional("Pack size", Kind.WHOLE, "Pieces in a pack as the shop sells it."),
              optional("Pack price", Kind.MONEY, "What a pack costs, without the currency."),
              optional("Tray", Kind.TEXT, "Where it lies: top left, blue box."),
              optional("Base swatch", Kind.TEXT, "Its colour as a hex code, if you like: #5b4a1e."),
              optional("Flake swatch", Kind.TEXT, "The same for its flakes."),
              oneOf(
                  "Finish",
                  Arrays.stream(Finish.values()).map(Finish::word).toList(),
                  "How the colour is laid on."),
              oneOf("Kept", YES_NO, "yes for one you will not be without, log or no log."),
              optional("Note", Kind.TEXT, "Anything you want to remember.")));

  /** The same with what the book says, so that reading it back takes only what was edited. */
  static final SheetForm TRAY =
      new SheetForm(
          BOX.name(),
          List.of(
              "What the book says lies in your trays. Change what is different, add rows for what is"
                  + " new, and import the file.",
              "Only what you change counts. Leave the column Book says as it is: it tells what you"
                  + " changed."),
          Stream.concat(
                  BOX.headings().stream(),
                  Stream.of(
                      optional(
                          "Book says", Kind.WHOLE, "What the book said; not for you to edit.")))
              .toList());

  static final SheetForm TRIPS =
      new SheetForm(
          "Trips",
          List.of(
              "What you tied on and what came of it: one row for each plastic on each trip, in the"
                  + " order you fished them.",
              "Write down the ones that caught nothing too: a blank is what the good ones are"
                  + " measured against."),
          List.of(
              needed("Date", Kind.DATE, "The day of the trip."),
              optional("Water", Kind.TEXT, "Where you fished."),
              optional("Species", Kind.TEXT, "The fish you were after."),
              oneOf("Clarity", CLARITIES, "How far you saw into the water."),
              optional("Maker", Kind.TEXT, "As on the box sheet."),
              needed("Body style", Kind.TEXT, "As on the box sheet."),
              needed("Colour", Kind.TEXT, "As on the box sheet."),
              optional("Length (mm)", Kind.LENGTH, "As on the box sheet."),
              optional("Minutes", Kind.WHOLE, "How long one rod fished it: 90, 1:30 or 1.5 h."),
              optional("Casts", Kind.WHOLE, "Casts, where you counted those and not minutes."),
              optional("Follows", Kind.WHOLE, "Fish that came after it and did not hit."),
              optional("Takes", Kind.WHOLE, "Fish that hit it, hooked or not."),
              optional("Hooked", Kind.WHOLE, "Takes that were hooked."),
              optional("Landed", Kind.WHOLE, "Hooked fish that you landed."),
              optional("Lost", Kind.WHOLE, "Pieces that did not come home."),
              oneOf("Lost how", LOSSES, "What took them."),
              optional("Worn", Kind.WHOLE, "Pieces thrown out as worn; take them home."),
              optional("Rods", Kind.WHOLE, "Rods that fished it at once; empty is one."),
              optional("Note", Kind.TEXT, "Anything you want to remember.")));

  static final SheetForm PLAN =
      new SheetForm(
          "Plan",
          List.of(
              "The trips to come: one row each.",
              "The shopping list looks ahead as far as this sheet does."),
          List.of(
              needed("Date", Kind.DATE, "The day of the trip."),
              optional("Water", Kind.TEXT, "Where you mean to fish."),
              optional("Species", Kind.TEXT, "The fish you will be after."),
              oneOf("Clarity", CLARITIES, "How you expect the water to be."),
              needed("Hours", Kind.DECIMAL, "Hours that the lines will be in the water."),
              optional("Rods", Kind.WHOLE, "Rods fishing from the box; empty is one."),
              optional("Note", Kind.TEXT, "Anything you want to remember.")));

  static final SheetForm PRICES =
      new SheetForm(
          "Prices",
          List.of(
              "What the shops ask: one row for each plastic at each shop.",
              "Postage, Free postage over and Delivery days belong to the shop: say them once, on"
                  + " any of its rows."),
          List.of(
              needed("Shop", Kind.TEXT, "The shop's name."),
              optional("Maker", Kind.TEXT, "As on the box sheet."),
              needed("Body style", Kind.TEXT, "As on the box sheet."),
              needed("Colour", Kind.TEXT, "As on the box sheet."),
              needed("Length (mm)", Kind.LENGTH, "As on the box sheet."),
              needed("Pack size", Kind.WHOLE, "Pieces in a pack."),
              needed("Pack price", Kind.MONEY, "What a pack costs, without the currency."),
              optional("Currency", Kind.TEXT, "Three letters, where it is not your own: EUR."),
              oneOf("In stock", YES_NO, "no if the shop has none now."),
              optional("Postage", Kind.MONEY, "What the shop asks to send a parcel."),
              optional("Free postage over", Kind.MONEY, "The sum from which it sends for free."),
              optional("Delivery days", Kind.WHOLE, "Days from order to tray.")));

  private Forms() {}
}
