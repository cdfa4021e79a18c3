package traytally.restock;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import traytally.ledger.Offer;
import traytally.ledger.Shop;
import traytally.plastic.Money;
import traytally.plastic.Plastic;
import traytally.simulation.SimulatedAngler;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;

/**
 * Writes a simulated angler's four sheets as CSV.
 *
 * @param shift days later than the angler's own dates
 */
record SeasonSheets(Path folder, long shift) {

  Path box(SimulatedAngler angler) throws IOException {
    List<String> lines = new ArrayList<>(List.of("Body style,Colour,Length (mm),Pieces"));
    int[] pieces = angler.pieces();
    for (int p = 0; p < pieces.length; p++) {
      lines.add(name(angler.plastics().get(p)) + "," + pieces[p]);
    }
    return write("box.csv", lines);
  }

  Path trips(List<Stint> log) throws IOException {
    List<String> lines =
        new ArrayList<>(
            List.of("Date,Water,Body style,Colour,Length (mm),Minutes,Takes,Hooked,Landed,Lost"));
    for (Stint stint : log) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%s,%s,%s,%.0f,%d,0,0,%d",
              stint.trip().date().plusDays(shift),
              stint.trip().water(),
              name(stint.plastic()),
              Math.max(1, stint.minutes().orElseThrow()),
              stint.fish().takes(),
              stint.lost()));
    }
    return write("trips.csv", lines);
  }

  Path plan(List<PlannedTrip> plan) throws IOException {
    List<String> lines = new ArrayList<>(List.of("Date,Water,Hours"));
    for (PlannedTrip trip : plan) {
      lines.add(
          String.format(
              Locale.ROOT, "%s,%s,%.2f", trip.date().plusDays(shift), trip.water(), trip.hours()));
    }
    return write("plan.csv", lines);
  }

  Path prices(SeasonShops shops) throws IOException {
    List<String> lines =
        new ArrayList<>(
            List.of(
                "Shop,Body style,Colour,Length (mm),Pack size,Pack price,Currency,In stock,Postage,"
                    + "Free postage over,Delivery days"));
    for (Offer offer : shops.offers()) {
      Shop shop =
          shops.shops().stream()
              .filter(s -> s.name().equals(offer.shop()))
              .findFirst()
              .orElseThrow();
      lines.add(
          String.join(
              ",",
              offer.shop().text(),
              name(offer.plastic()),
              Integer.toString(offer.packSize()),
              offer.packPrice().amount(),
              "EUR",
              "yes",
              shop.postage().orElseThrow().amount(),
              shop.freePostageOver().map(Money::amount).orElse(""),
              Integer.toString(shop.deliveryDays().orElseThrow())));
    }
    return write("prices.csv", lines);
  }

  private static String name(Plastic plastic) {
    return plastic.body() + "," + plastic.colour() + "," + plastic.lengthMm();
  }

  private Path write(String name, List<String> lines) throws IOException {
    return Files.write(folder.resolve(name), lines);
  }
}
