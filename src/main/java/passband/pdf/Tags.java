package passband.pdf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.jspecify.annotations.Nullable;

/**
 * The structure of a tagged document (ISO 32000-1, 14.7 and 14.8). Elements are asked for by a path
 * such as {@code Sect:run-1}, {@code Table:lines}, {@code TR:7}; the part before the colon is the
 * standard structure type, and as much of the path as is the same as last time is the same element.
 *
 * <p>What asks the technician for something carries the identity of its item as its own ({@code ID}
 * and {@code IDTree}, 14.7.2).
 */
final class Tags {
  private final PDStructureTreeRoot root = new PDStructureTreeRoot();
  private final List<String> open = new ArrayList<>();
  private final List<PDStructureElement> elements = new ArrayList<>();
  private final PDStructureElement document;
  private final COSArray parents = new COSArray();
  private COSArray ofPage = new COSArray();
  private final Map<String, PDStructureElement> items = new TreeMap<>();

  /** The cells of the row that is open: it may go on over a page's end. */
  private final Map<String, PDStructureElement> cells = new HashMap<>();

  private int pages;
  private @Nullable PDPage page;

  Tags() {
    document = new PDStructureElement("Document", root);
    root.appendKid(document);
  }

  /** What follows is on this page. */
  void startPage(PDPage next) {
    page = next;
    page.setStructParents(pages);
    ofPage = new COSArray();
    parents.add(COSInteger.get(pages));
    parents.add(ofPage);
    pages++;
  }

  /** The element at a path, made as far as it is not there. */
  PDStructureElement at(List<String> path) {
    int same = 0;
    while (same < path.size() && same < open.size() && open.get(same).equals(path.get(same))) {
      same++;
    }
    while (open.size() > same) {
      open.remove(open.size() - 1);
      elements.remove(elements.size() - 1);
    }
    for (int i = same; i < path.size(); i++) {
      PDStructureElement parent = i == 0 ? document : elements.get(i - 1);
      elements.add(child(parent, path.get(i)));
      open.add(path.get(i));
    }
    return elements.get(elements.size() - 1);
  }

  private PDStructureElement child(PDStructureElement parent, String name) {
    boolean inRow = parent.getStructureType().equals("TR");
    PDStructureElement before = inRow ? cells.get(name) : null;
    if (before != null) {
      return before;
    }
    PDStructureElement made = new PDStructureElement(name.split(":")[0], parent);
    parent.appendKid(made);
    switch (made.getStructureType()) {
      case "TR" -> cells.clear();
      case "TH" -> scope(made, name.contains("row") ? "Row" : "Column");
      default -> {}
    }
    if (inRow) {
      cells.put(name, made);
    }
    return made;
  }

  private static void scope(PDStructureElement header, String scope) {
    table(header).setName("Scope", scope);
  }

  /** Says how many rows and columns of its table an element goes over. */
  static void spans(PDStructureElement cell, int rows, int columns) {
    if (rows > 1) {
      table(cell).setInt("RowSpan", rows);
    }
    if (columns > 1) {
      table(cell).setInt("ColSpan", columns);
    }
  }

  /** Says that an element asks for the item of this identity; no other element may. */
  void item(PDStructureElement element, String id) {
    if (items.put(id, element) != null) {
      throw new IllegalStateException("two elements ask for " + id);
    }
    element.setElementIdentifier(id);
  }

  private static COSDictionary table(PDStructureElement cell) {
    COSDictionary attributes = cell.getCOSObject().getCOSDictionary(COSName.A);
    if (attributes == null) {
      attributes = new COSDictionary();
      attributes.setName(COSName.O, "Table");
      cell.getCOSObject().setItem(COSName.A, attributes);
    }
    return attributes;
  }

  /** A number for content of the element on the current page. */
  int content(PDStructureElement element) {
    PDPage here = Objects.requireNonNull(page, "no page is begun");
    int number = ofPage.size();
    ofPage.add(element.getCOSObject());
    COSDictionary first = element.getCOSObject().getCOSDictionary(COSName.PG);
    if (first == null) {
      element.setPage(here);
    }
    if (first == null || first == here.getCOSObject()) {
      element.appendKid(number);
    } else {
      element.appendKid(reference(number, here));
    }
    return number;
  }

  /** To content on another page than the element's first (ISO 32000-1, 14.7.4.2). */
  private static PDMarkedContentReference reference(int number, PDPage here) {
    PDMarkedContentReference reference = new PDMarkedContentReference();
    reference.setPage(here);
    reference.setMCID(number);
    return reference;
  }

  /** Puts the structure into the document. */
  void finish(PDDocument into) {
    COSDictionary tree = new COSDictionary();
    tree.setItem(COSName.NUMS, parents);
    root.getCOSObject().setItem(COSName.PARENT_TREE, tree);
    root.setParentTreeNextKey(pages);
    root.getCOSObject().setItem(COSName.getPDFName("IDTree"), identities());
    into.getDocumentCatalog().setStructureTreeRoot(root);
  }

  /** A name tree of one node: identities in order, each with its element. */
  private COSDictionary identities() {
    COSArray names = new COSArray();
    items.forEach(
        (id, element) -> {
          names.add(new COSString(id));
          names.add(element.getCOSObject());
        });
    COSDictionary tree = new COSDictionary();
    tree.setItem(COSName.NAMES, names);
    return tree;
  }
}
