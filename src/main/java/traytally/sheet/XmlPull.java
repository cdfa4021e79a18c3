package traytally.sheet;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import java.io.IOException;
import java.io.InputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The tags of one part of an .xlsx, one at a time. Names are taken without their prefix, since
 * programs choose their own and the strict form of the standard has other namespaces.
 */
final class XmlPull implements AutoCloseable {
  private static final XMLInputFactory FACTORY = factory();

  private final InputStream in;
  private final XMLStreamReader reader;
  private final StringBuilder text = new StringBuilder();

  XmlPull(InputStream in) throws XMLStreamException {
    this.in = in;
    this.reader = FACTORY.createXMLStreamReader(in);
  }

  private static XMLInputFactory factory() {
    // By name, whatever else lies on the class path.
    XMLInputFactory factory = new InputFactoryImpl();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    return factory;
  }

  /** Moves to the next opening or closing tag; false at the end. */
  boolean next() throws XMLStreamException {
    while (reader.hasNext()) {
      int event = reader.next();
      if (event == XMLStreamConstants.START_ELEMENT || event == XMLStreamConstants.END_ELEMENT) {
        return true;
      }
      refuseDefinitions(event);
    }
    return false;
  }

  boolean isStart() {
    return reader.isStartElement();
  }

  boolean isStart(String name) {
    return reader.isStartElement() && reader.getLocalName().equals(name);
  }

  boolean isEnd(String name) {
    return reader.isEndElement() && reader.getLocalName().equals(name);
  }

  String name() {
    return reader.getLocalName();
  }

  /** The attribute's value, or the given one where it is absent. */
  String attribute(String name, String otherwise) {
    for (int i = 0; i < reader.getAttributeCount(); i++) {
      if (reader.getAttributeLocalName(i).equals(name)) {
        return reader.getAttributeValue(i);
      }
    }
    return otherwise;
  }

  /** Whether an attribute of xsd:boolean is set. */
  boolean flag(String name) {
    String value = attribute(name, "0");
    return value.equals("1") || value.equals("true") || value.equals("on");
  }

  /** The text up to the closing tag of the element just opened; tags within are passed over. */
  String text(Limits limits) throws XMLStreamException {
    text.setLength(0);
    for (int depth = 1; depth > 0; ) {
      int event = reader.next();
      switch (event) {
        case XMLStreamConstants.START_ELEMENT -> depth++;
        case XMLStreamConstants.END_ELEMENT -> depth--;
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
          if (depth == 1) {
            RowBuilder.checkLength(text.length() + reader.getTextLength(), limits);
            text.append(reader.getTextCharacters(), reader.getTextStart(), reader.getTextLength());
          }
        }
        default -> refuseDefinitions(event);
      }
    }
    return text.toString();
  }

  /** Passes over the element just opened. */
  void skip() throws XMLStreamException {
    for (int depth = 1; depth > 0; ) {
      next();
      depth += reader.isStartElement() ? 1 : -1;
    }
  }

  private static void refuseDefinitions(int event) {
    // No spreadsheet program writes these; they serve to unfold one letter into billions, or to
    // fetch other files.
    if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
      throw new UnreadableSheetException(
          "This file was made to do harm or is badly damaged: it defines its own characters. "
              + RowBuilder.SAVE_AGAIN);
    }
  }

  @Override
  public void close() throws XMLStreamException, IOException {
    try (in) {
      reader.close();
    }
  }
}
